/**
 * What a coach looks for in a bound and what goes wrong. This room answers: where do I look, and what do I tick when I
 * saw it fail? It knows no athlete and judges nobody.
 */
@NullMarked
package boundwright.technique;

import org.jspecify.annotations.NullMarked;
