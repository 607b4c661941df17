/** Tests of what is seen and printed. */
@NullMarked
package boundwright.card;

import org.jspecify.annotations.NullMarked;

