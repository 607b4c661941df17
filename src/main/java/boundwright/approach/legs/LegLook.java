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
import java.util.function.ToDoubleFunction;
import org.jspecify.annotations.Nullable;

/**
 * One measure off the right leg against the left: the difference at the same run-up and place in the rep on the same day. What both
 * legs win over the weeks, by growing or by training, is taken out as a straight line over the days, and so are the steps of the run-up
 * and the place in the rep. The values of one day and leg are one point, their mean, since they are not independent. Description, no
 * test of a leg.
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
  /** Fewest days on each leg (judgement). */
  public static final int FEWEST = 3;

  private static final double DAYS = 30;

  private record Day(LocalDate date, Foot foot) {}

  /**
   * Of one measure.
   *
   * @param what is looked at
   * @param all values of any measure
   */
  public static LegLook of(Measure what, List<OffLeg> all) {
    Map<Day, List<OffLeg>> days = new LinkedHashMap<>();
    all.stream().filter(o -> o.what() == what).forEach(o -> days.computeIfAbsent(new Day(o.date(), o.foot()), d -> new ArrayList<>()).add(o));
    int right = values(days, Foot.RIGHT);
    int left = values(days, Foot.LEFT);
    long rightDays = days.keySet().stream().filter(d -> d.foot() == Foot.RIGHT).count();
    long leftDays = days.size() - rightDays;
    if (rightDays < FEWEST || leftDays < FEWEST) {
      return new LegLook(
          what, right, left, null, null,
          "It needs at least " + FEWEST + " days on each leg; there are " + rightDays + " off the right and " + leftDays + " off the left.");
    }
    LinearBelief b = fitted(days);
    Estimate difference = b.estimate(new double[] {0, 1, 0, 0, 0});
    return new LegLook(what, right, left, difference, b.estimate(new double[] {0, 0, 1, 0, 0}), difference.told() ? null : "The legs cannot be told apart.");
  }

  private static int values(Map<Day, List<OffLeg>> days, Foot foot) {
    return days.entrySet().stream().filter(e -> e.getKey().foot() == foot).mapToInt(e -> e.getValue().size()).sum();
  }

  /** Wide first guesses in shares of the mean: leg 20 %, 30 days 10 %, a step 10 %, a place 10 %, noise 5 % worth three points (judgement). */
  private static LinearBelief fitted(Map<Day, List<OffLeg>> days) {
    double mean = average(days, o -> o.value());
    double day = average(days, o -> o.date().toEpochDay());
    double steps = average(days, o -> o.steps());
    double place = average(days, o -> o.place());
    LinearBelief b = new LinearBelief(new double[] {mean, 0, 0, 0, 0}, new double[] {mean, .2 * mean, .1 * mean, .1 * mean, .1 * mean}, .05 * mean, 3);
    days.forEach(
        (d, all) ->
            b.tell(
                new double[] {
                  1, d.foot() == Foot.RIGHT ? 0.5 : -0.5, (d.date().toEpochDay() - day) / DAYS, mean(all, o -> o.steps()) - steps, mean(all, o -> o.place()) - place
                },
                mean(all, o -> o.value()),
                1));
    return b;
  }

  private static double average(Map<Day, List<OffLeg>> days, ToDoubleFunction<OffLeg> what) {
    return days.values().stream().mapToDouble(all -> mean(all, what)).average().orElseThrow();
  }

  private static double mean(List<OffLeg> all, ToDoubleFunction<OffLeg> what) {
    return all.stream().mapToDouble(what).average().orElseThrow();
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
