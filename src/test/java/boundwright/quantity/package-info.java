/** Tests of this room. */
@NullMarked
package boundwright.quantity;

import org.jspecify.annotations.NullMarked;

