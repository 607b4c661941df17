package boundwright.readiness;

import boundwright.flight.Rep;
import boundwright.footfall.Sequence;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
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

  /** What a landing is compared within. */
  private record Same(LocalDate date, Sequence drill) {}

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
    // a drill comes again and again: its family is looked up once
    Map<Sequence, DrillFamily> families = new HashMap<>();
    List<Rep> mine = new ArrayList<>();
    Set<LocalDate> exposed = new HashSet<>();
    for (Rep r : log) {
      if (!r.date().isAfter(today)) {
        DrillFamily its = families.computeIfAbsent(r.sequence(), DrillFamily::of);
        if (its == family) {
          mine.add(r);
        }
        if (r.approachSteps() >= rung && its.covers(family)) {
          exposed.add(r.date());
        }
      }
    }
    TimeHere time = TimeHere.of(exposed, rung, rung < highest, rules.stay(), today);
    LocalDate from = today.minusDays(SPEED_DAYS);
    SpeedUse speed =
        rung == 0 ? null : SameDayGain.of(mine.stream().filter(r -> r.date().isAfter(from)).toList(), rung, rules.speed());
    return new GateCase(family, rung, looked(mine.stream().filter(r -> r.approachSteps() == rung).toList()), time, speed, load, today);
  }

  /** The ones looked at, each landing over the mean of the same drill on the same day. */
  private static List<GateRep> looked(List<Rep> reps) {
    Map<Same, double[]> sums = new HashMap<>();
    for (Rep r : reps) {
      if (r.landing_m() != null) {
        double[] sum = sums.computeIfAbsent(new Same(r.date(), r.sequence()), k -> new double[2]);
        sum[0] += r.landing_m();
        sum[1]++;
      }
    }
    return reps.stream()
        .filter(Rep::judged)
        .map(
            r -> {
              double[] sum = sums.get(new Same(r.date(), r.sequence()));
              Double landing = r.landing_m();
              double length = landing == null || sum == null ? Double.NaN : landing / (sum[0] / sum[1]);
              return new GateRep(r.date(), r.faults().isEmpty(), length, LegLoading.any(r.faults()));
            })
        .toList();
  }
}
