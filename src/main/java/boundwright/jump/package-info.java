/**
 * How a triple jump was shared out: its phases, the athlete's own contact line, the best shares that line allows,
 * and where the metres are. Knows no run-up, no board and no meet.
 */
@NullMarked
package boundwright.jump;

import org.jspecify.annotations.NullMarked;

