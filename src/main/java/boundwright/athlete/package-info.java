/**
 * The people and the place: athletes with their level, tests and measured run-ups; the runway, the pit and the
 * surfaces. This room answers: who is jumping, what is known of them before the first rep, and where?
 */
@NullMarked
package boundwright.athlete;

import org.jspecify.annotations.NullMarked;

