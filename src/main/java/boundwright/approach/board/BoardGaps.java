package boundwright.approach.board;

import boundwright.jump.JumpLimits;
import boundwright.quantity.Limits;
import java.util.Collections;
import java.util.List;

/**
 * A log of what the foot did at the board, all corrected to one start mark.
 *
 * @param measured_m gaps that were measured, toe to take-off line [m], + behind the line; a foul that was measured is
 *     negative
 * @param foulsBelow_m for each foul of unknown size the gap that it is known to be below [m]: 0, or less the shift of the
 *     start mark if it had been moved back for that attempt
 */
public record BoardGaps(List<Double> measured_m, List<Double> foulsBelow_m) {
  /** Takes copies; refuses gaps outside -0.60 to +2.00 m and limits beyond 5 m. */
  public BoardGaps {
    measured_m = List.copyOf(measured_m);
    foulsBelow_m = List.copyOf(foulsBelow_m);
    measured_m.forEach(JumpLimits::gap);
    foulsBelow_m.forEach(f -> Limits.within("foul's limit", f, -5, 5, "m", "0 without a shift of the start mark."));
  }

  /**
   * A log at one start mark.
   *
   * @param fouls attempts that fouled by an unknown amount, 0 to 10 000
   */
  public static BoardGaps of(List<Double> measured_m, int fouls) {
    Limits.count("Fouls", fouls, 0, 10_000, "Count the attempts that fouled.");
    return new BoardGaps(measured_m, Collections.nCopies(fouls, 0.0));
  }

  /** Attempts in the log. */
  public int attempts() {
    return measured_m.size() + foulsBelow_m.size();
  }

  /** Part of the attempts that would foul at this start mark, as far as it is known; 0 without attempts. */
  public double foulShare() {
    long over = measured_m.stream().filter(g -> g < 0).count() + foulsBelow_m.size();
    return attempts() == 0 ? 0 : over / (double) attempts();
  }
}
