/**
 * What a coach looks for in a bound and what goes wrong. This room answers: where do I look, what do I tick when I saw it
 * fail, what do I say and do about it, is it becoming rarer, and would another observer have seen the same? It knows no
 * athlete but by number and judges nobody.
 */
@NullMarked
package boundwright.technique;

import org.jspecify.annotations.NullMarked;

