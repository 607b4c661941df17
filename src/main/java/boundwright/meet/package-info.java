/**
 * The jump and the meet: the three phases and what each contact costs this athlete, which shares suit them and where
 * the metres are, the full run-up and its marks, where to aim at the board, and attempts, ranks and points. This room
 * answers: how was the distance made, where does the run-up start, and what is the next attempt for? It computes from
 * numbers handed in; it knows no clock, and every draw comes from a generator handed in.
 */
@NullMarked
package boundwright.meet;

import org.jspecify.annotations.NullMarked;

