/** Tests of this room. */
@NullMarked
package boundwright.athlete;

import org.jspecify.annotations.NullMarked;

