/** Tests of this room. */
@NullMarked
package boundwright.cli;

import org.jspecify.annotations.NullMarked;

