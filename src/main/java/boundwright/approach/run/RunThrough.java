package boundwright.approach.run;

import boundwright.athlete.Athlete;
import boundwright.jump.JumpLimits;
import boundwright.quantity.Limits;
import boundwright.quantity.RefusedException;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * One run down the runway, with or without the jump, as measured.
 *
 * @param steps run, 1 to 26; the last one is the take-off
 * @param startMark_m start mark to take-off line [m], 0 to 55
 * @param toBoard_m toe to take-off line of each step in order [m], + behind the line, one per step; {@link Double#NaN}
 *     where not seen; the last is the board gap
 * @param wind tail wind + [m/s], -8 to 12, or null
 * @param tiredness how tired the athlete was, 0 fresh to 10, as the coach rates it, or null
 */
public record RunThrough(
    int steps, double startMark_m, List<Double> toBoard_m, @Nullable Double wind, @Nullable Double tiredness) {
  /** Shortest and longest single step that is taken [m] (sanity limits; judgement). */
  public static final double MIN_STEP_M = 0.3;

  public static final double MAX_STEP_M = 3.2;

  /** Refuses what nobody runs. */
  public RunThrough {
    Athlete.checkSteps(steps);
    toBoard_m = Collections.unmodifiableList(new ArrayList<>(toBoard_m));
    RunLimits.runUp("start mark", startMark_m);
    if (steps < 1 || toBoard_m.size() != steps) {
      throw new RefusedException(
          "A run-through of " + steps + " steps has " + toBoard_m.size() + " positions; it needs one per step. Leave a step empty if it was not seen.");
    }
    double before = startMark_m;
    int since = 1;
    for (int i = 0; i < steps; i++) {
      double at = toBoard_m.get(i);
      if (Double.isNaN(at)) {
        since++;
        continue;
      }
      if (i == steps - 1) {
        JumpLimits.gap(at);
      }
      double each = (before - at) / since;
      if (!(each >= MIN_STEP_M && each <= MAX_STEP_M)) {
        throw new RefusedException(
            "Step " + (i + 1) + " at " + at + " m from the board makes " + Math.round(each * 100) / 100.0 + " m a step; " + MIN_STEP_M + " to "
                + MAX_STEP_M + " m is taken. Check the positions: they shrink towards the board.");
      }
      before = at;
      since = 1;
    }
    if (wind != null) {
      RunLimits.wind(wind);
    }
    if (tiredness != null) {
      Limits.within("tiredness", tiredness, 0, 10, "", "0 is fresh.");
    }
  }

  /** A run of which only the board gap was measured; null for a foul of unknown size. */
  public static RunThrough toGap(
      int steps, double startMark_m, @Nullable Double gap_m, @Nullable Double wind, @Nullable Double tiredness) {
    List<Double> at = new ArrayList<>(Collections.nCopies(Math.max(steps, 0), Double.NaN));
    if (gap_m != null && !at.isEmpty()) {
      at.set(at.size() - 1, gap_m);
    }
    return new RunThrough(steps, startMark_m, at, wind, tiredness);
  }

  /** Board gap [m], or NaN when not measured. */
  public double gap_m() {
    return toBoard_m.get(steps - 1);
  }

  /** Toe to take-off line so many steps out [m]; 0 is the board; NaN when not seen. */
  public double out_m(int stepsOut) {
    return toBoard_m.get(steps - 1 - stepsOut);
  }
}
