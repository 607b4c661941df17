/** The entry point: wiring by hand, no logic. */
@NullMarked
package boundwright;

import org.jspecify.annotations.NullMarked;

