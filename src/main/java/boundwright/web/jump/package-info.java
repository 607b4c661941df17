/** The jump itself: shares and metres, the full run-up, the aim at the board. */
@NullMarked
package boundwright.web.jump;

import org.jspecify.annotations.NullMarked;

