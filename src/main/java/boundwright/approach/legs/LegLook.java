package boundwright.approach.legs;

import boundwright.footfall.Foot;
import boundwright.inference.LinearBelief;
import boundwright.quantity.Estimate;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * One measure off the right leg against the left: the difference at the same run-up on the same day. What both legs win over the weeks,
 * by growing or by training, is taken out as a straight line over the days, and what more run-up steps give as a straight line over the
 * steps. Values of one day, leg and run-up are one point, since they are not independent. Description, no test of a leg.
 *
 * @param what is measured
 * @param right values off the right
 * @param left values off the left
 * @param rightLess_left difference right less left, in the measure's unit; null with too few days on a leg
 * @param per30Days what both win in 30 days, in the same unit; null with {@code rightLess_left}
 * @param cannotTell why no difference is told, a sentence; null when it is
 */
public record LegLook(
    Measure what, int right, int left, @Nullable Estimate rightLess_left, @Nullable Estimate per30Days, @Nullable String cannotTell) {
  /** Fewest days (with one run-up each) on each leg (judgement). */
  public static final int FEWEST = 3;

  private static final double DAYS = 30;

  private record Cell(LocalDate date, Foot foot, int steps) {}

  /**
   * Of one measure.
   *
   * @param what is looked at
   * @param all values of any measure
   */
  public static LegLook of(Measure what, List<OffLeg> all) {
    Map<Cell, List<Double>> cells = new LinkedHashMap<>();
    int right = 0;
    int left = 0;
    for (OffLeg o : all) {
      if (o.what() == what) {
        cells.computeIfAbsent(new Cell(o.date(), o.foot(), o.steps()), c -> new ArrayList<>()).add(o.value());
        right += o.foot() == Foot.RIGHT ? 1 : 0;
        left += o.foot() == Foot.LEFT ? 1 : 0;
      }
    }
    long rightDays = cells.keySet().stream().filter(c -> c.foot() == Foot.RIGHT).count();
    long leftDays = cells.size() - rightDays;
    if (rightDays < FEWEST || leftDays < FEWEST) {
      return new LegLook(
          what, right, left, null, null,
          "It needs at least " + FEWEST + " days on each leg; there are " + rightDays + " off the right and " + leftDays + " off the left.");
    }
    LinearBelief b = fitted(cells);
    Estimate difference = b.estimate(new double[] {0, 1, 0, 0});
    boolean told = difference.p05() > 0 || difference.p95() < 0;
    return new LegLook(
        what, right, left, difference, b.estimate(new double[] {0, 0, 1, 0}), told ? null : "The legs cannot be told apart.");
  }

  /** Wide first guesses in shares of the mean: leg 20 %, 30 days 10 %, a step 10 %, noise 5 % worth three points (judgement). */
  private static LinearBelief fitted(Map<Cell, List<Double>> cells) {
    double mean = 0;
    double day = 0;
    double steps = 0;
    for (Map.Entry<Cell, List<Double>> e : cells.entrySet()) {
      mean += average(e.getValue()) / cells.size();
      day += e.getKey().date().toEpochDay() / (double) cells.size();
      steps += e.getKey().steps() / (double) cells.size();
    }
    LinearBelief b = new LinearBelief(new double[] {mean, 0, 0, 0}, new double[] {mean, .2 * mean, .1 * mean, .1 * mean}, .05 * mean, 3);
    for (Map.Entry<Cell, List<Double>> e : cells.entrySet()) {
      Cell c = e.getKey();
      double side = c.foot() == Foot.RIGHT ? 0.5 : -0.5;
      b.tell(new double[] {1, side, (c.date().toEpochDay() - day) / DAYS, c.steps() - steps}, average(e.getValue()), 1);
    }
    return b;
  }

  private static double average(List<Double> values) {
    return values.stream().mapToDouble(Double::doubleValue).average().orElseThrow();
  }

  /** Whether the difference lies on one side of 0. */
  public boolean told() {
    return cannotTell == null;
  }

  /** The sentence for the coach. */
  public String words() {
    Estimate d = rightLess_left;
    String what = what().label();
    if (d == null) {
      return what + ": the data cannot tell. " + cannotTell;
    }
    String range = String.format(Locale.ROOT, "%+.2f %s (%+.2f to %+.2f)", d.p50(), what().unit(), d.p05(), d.p95());
    return told() ? what + ": right less left " + range + "." : what + ": the data cannot tell; right less left " + range + ".";
  }
}
