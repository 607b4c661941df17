/**
 * What is seen and printed: the runway strip, the house's own picture of where the feet will fall, and the session card
 * for an athlete or the squad, on screen and as PDF. This room answers: what does the coach carry to the track? It reads
 * the rooms below and decides nothing that they decide.
 */
@NullMarked
package boundwright.card;

import org.jspecify.annotations.NullMarked;

