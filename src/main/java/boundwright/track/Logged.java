package boundwright.track;

import boundwright.flight.Rep;
import boundwright.runway.MarkAdvice;
import boundwright.runway.MarkMove;
import org.jspecify.annotations.Nullable;

/**
 * What became of a tap, or of taking a rep back.
 *
 * @param rep as it is kept, or as it was
 * @param again whether the same tap was logged before and nothing was done now; then there is no move
 * @param repsOfDay how many reps the athlete has on the day of the rep now
 * @param move of the advised mark, or null where no mark can be advised
 * @param next the mark for the same drill now, or null
 * @param noNext why there is no mark, or null
 */
public record Logged(
    Rep rep, boolean again, int repsOfDay, @Nullable MarkMove move, @Nullable MarkAdvice next, @Nullable String noNext) {}
