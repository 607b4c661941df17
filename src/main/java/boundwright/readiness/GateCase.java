package boundwright.readiness;

import boundwright.flight.Rep;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * All that is known when it is asked whether an athlete may add speed in one family of drills.
 *
 * @param family of drills
 * @param rung approach steps they work from
 * @param reps looked at, of this family from this approach, in the order done, as far back as the log is read
 * @param time at this approach
 * @param speed what the log tells of the gain, or null from standing
 * @param load the load's answer for today
 * @param today the day of asking
 */
public record GateCase(
    DrillFamily family, int rung, List<GateRep> reps, TimeHere time, @Nullable SpeedUse speed, LoadAnswer load, LocalDate today) {
  /** How far back the log is read; an approach left longer ago is new again [days] (half a year; judgement). */
  public static final int LOOK_BACK_DAYS = 182;

  /** How far back reps are compared for the gain: a whole stay [days]. */
  private static final int SPEED_DAYS = 84;

  /** Takes a copy. */
  public GateCase {
    reps = List.copyOf(reps);
  }

  /**
   * From an athlete's log.
   *
   * @param log all reps of the last {@link #LOOK_BACK_DAYS} days, of all families and approaches, in the order done
   * @param highest the approach that the coach has set for the athlete in general; shorter ones are known to them
   */
  public static GateCase of(
      List<Rep> log, DrillFamily family, int rung, int highest, LoadAnswer load, GateRules rules, LocalDate today) {
    List<Rep> past = log.stream().filter(r -> !r.date().isAfter(today)).toList();
    List<Rep> mine = past.stream().filter(r -> DrillFamily.of(r.sequence()) == family).toList();
    List<LocalDate> exposed =
        past.stream()
            .filter(r -> r.approachSteps() >= rung && DrillFamily.of(r.sequence()).covers(family))
            .map(Rep::date)
            .distinct()
            .toList();
    TimeHere time = rung < highest ? TimeHere.known() : TimeHere.of(exposed, rung, rules.stay(), today);
    LocalDate from = today.minusDays(SPEED_DAYS);
    SpeedUse speed =
        rung == 0 ? null : SameDayGain.of(mine.stream().filter(r -> r.date().isAfter(from)).toList(), rung, rules.speed());
    return new GateCase(family, rung, looked(mine.stream().filter(r -> r.approachSteps() == rung).toList()), time, speed, load, today);
  }

  /** The ones looked at, each landing over the mean of the same drill on the same day. */
  private static List<GateRep> looked(List<Rep> reps) {
    Map<String, double[]> sums = new HashMap<>();
    for (Rep r : reps) {
      if (r.landing_m() != null) {
        double[] sum = sums.computeIfAbsent(r.date() + r.sequence().letters(), k -> new double[2]);
        sum[0] += r.landing_m();
        sum[1]++;
      }
    }
    return reps.stream()
        .filter(Rep::judged)
        .map(
            r -> {
              double[] sum = sums.get(r.date() + r.sequence().letters());
              Double landing = r.landing_m();
              double length = landing == null || sum == null ? Double.NaN : landing / (sum[0] / sum[1]);
              return new GateRep(r.date(), r.faults().isEmpty(), length, LegLoading.any(r.faults()));
            })
        .toList();
  }
}
