package boundwright.approach.board;

import boundwright.jump.JumpLimits;
import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/**
 * One attempt at the board, in training or in a meet.
 *
 * @param date the day
 * @param meet the meet's name, or null in training
 * @param gap_m board gap as measured [m], or null when it was not
 * @param foul whether it was over the line
 * @param startShift_m how far the start mark stood from the planned one [m], + back
 * @param distance_m official distance [m], or null
 */
public record BoardSeen(
    LocalDate date, @Nullable String meet, @Nullable Double gap_m, boolean foul, double startShift_m, @Nullable Double distance_m) {
  /** Where the foot would have fallen from the planned start mark [m], or null when the gap was not measured. */
  public @Nullable Double atPlan_m() {
    return gap_m == null ? null : Double.valueOf(gap_m - startShift_m);
  }

  /** Whether it tells about the board: a measured gap within the limits, or a foul of unknown size. */
  public boolean tells() {
    Double at = atPlan_m();
    return at == null ? foul : at >= JumpLimits.MIN_GAP_M && at <= JumpLimits.MAX_GAP_M;
  }
}
