/** Tests of this room. */
@NullMarked
package boundwright.footfall;

import org.jspecify.annotations.NullMarked;

