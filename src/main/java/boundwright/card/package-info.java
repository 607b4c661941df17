/**
 * What is printed: the session card of an athlete or the squad and the athlete's report, as pages and as PDF. This room answers: what
 * does the coach carry to the track? The pictures on it come from {@code picture}.
 */
@NullMarked
package boundwright.card;

import org.jspecify.annotations.NullMarked;

