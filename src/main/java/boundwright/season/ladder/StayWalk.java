package boundwright.season.ladder;

import boundwright.readiness.DrillFamily;
import boundwright.season.Climb;
import boundwright.season.Member;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.Arrays;
import java.util.List;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;

/** One stay, walked day by day: when the least stay is over, and how sure it is on each day that the gate has been passed. */
final class StayWalk {
  private static final double ALMOST = 1e-9;
  private static final double NONE_LEFT = 1e-4;
  /** More than this left at the end of what is looked at: the mean is not known. */
  private static final double TOO_MUCH_LEFT = 0.05;

  private final Member member;
  private final DrillFamily family;
  private final int steps;
  private final int at;
  private final int spent;
  private final OfferedDays offered;
  private final ClimbRules rules;
  private final Pace pace;
  private final double attendance;
  /** Other families that count for the least stay, in which the athlete works from as many steps already. */
  private final List<DrillFamily> elsewhere;
  /** Whether the least stay is over on a day. */
  private final boolean[] over;
  /** Chance that the gate has been passed by the end of a day. */
  private final double[] ready;

  StayWalk(
      Member member, DrillFamily family, int steps, int at, int spent, OfferedDays offered, ClimbPlanner.Past past, ClimbRules rules, Pace pace,
      double attendance) {
    this.member = member;
    this.family = family;
    this.steps = steps;
    this.at = at;
    this.spent = spent;
    this.offered = offered;
    this.rules = rules;
    this.pace = pace;
    this.attendance = Math.min(1, Math.max(0.01, attendance));
    this.elsewhere = Arrays.stream(DrillFamily.values()).filter(g -> g != family && g.covers(family) && member.steps(g) >= steps).toList();
    int n = offered.length();
    over = new boolean[n];
    ready = new double[n];
    walk(past);
  }

  private void walk(ClimbPlanner.Past past) {
    TreeSet<LocalDate> done = past.from(family, steps);
    LeastStay least = new LeastStay(rules.stay(), steps, steps < member.athlete().rung());
    done.headSet(offered.day(at)).forEach(day -> least.tell(day, 1));
    double[] within = pace.chances(spent, SessionsNeeded.MOST);
    double[] attended = new double[within.length];
    attended[0] = 1;
    int most = 0;
    double sum = 0;
    double passed = 0;
    for (int d = at; d < offered.length(); d++) {
      double share = offered.share(family, d);
      double there = attendance * (share + elsewhere(d));
      if (there > 0) {
        least.tell(offered.day(d), there);
      }
      over[d] = least.over(offered.day(d));
      // a session is offered on the day on which the shares add up to one
      boolean open = 1 - passed > NONE_LEFT;
      if (open && Math.floor(sum + share + ALMOST) > Math.floor(sum + ALMOST)) {
        most = Math.min(most + 1, attended.length - 1);
        attend(attended, most);
      }
      sum += share;
      if (open && share > 0 && over[d]) {
        passed = Math.max(passed, chance(attended, within, most));
      }
      ready[d] = passed;
    }
  }

  /** One more session offered, {@code most} so far: the chances of having attended 0, 1, 2 ... (Poisson binomial, by recursion). */
  private void attend(double[] attended, int most) {
    int last = attended.length - 1;
    double full = most == last ? attended[last] : 0;
    for (int n = most; n > 0; n--) {
      attended[n] = attended[n] * (1 - attendance) + attended[n - 1] * attendance;
    }
    attended[last] += full * attendance;
    attended[0] *= 1 - attendance;
  }

  private static double chance(double[] attended, double[] within, int most) {
    double sum = 0;
    for (int n = 0; n <= most; n++) {
      sum += attended[n] * within[n];
    }
    return sum;
  }

  /** Share of a session of those. */
  private double elsewhere(int d) {
    double sum = 0;
    for (DrillFamily g : elsewhere) {
      sum += offered.share(g, d);
    }
    return sum;
  }

  StayForecast forecast(boolean longer) {
    int expected = expected();
    int early = early(0.1);
    int late = late(0.9);
    Climb.DecisionDay decision = longer && expected >= 0 ? decision(expected) : null;
    double next = 0;
    if (decision != null && decision.chance() < 1) {
      int look = (int) ChronoUnit.DAYS.between(offered.day(0), decision.nextLook());
      next = (ready[look] - decision.chance()) / (1 - decision.chance());
    }
    return new StayForecast(
        steps, offered.day(at), spent, day(firstOver()), day(expected), day(early), day(late < 0 ? late : Math.max(early, late)), pace, decision, next);
  }

  private @Nullable LocalDate day(int d) {
    return d < 0 ? null : offered.day(d);
  }

  private int firstOver() {
    for (int d = at; d < over.length; d++) {
      if (over[d] && offered.share(family, d) > 0) {
        return d;
      }
    }
    return -1;
  }

  private int within(double share) {
    for (int d = at; d < ready.length; d++) {
      if (ready[d] >= share) {
        return d;
      }
    }
    return -1;
  }

  /** The session before which about this share is ready. */
  private int early(double share) {
    int d = within(share);
    double before = d <= at ? 0 : ready[d - 1];
    return d >= 0 && ready[d] - share < share - before ? next(d) : d;
  }

  /** The session by which about this share is ready. */
  private int late(double share) {
    int d = within(share);
    double before = d <= at ? 0 : ready[d - 1];
    return d >= 0 && share - before < ready[d] - share ? within(before) : d;
  }

  /** The first day after another on which more are ready. */
  private int next(int d) {
    int n = d;
    while (n < ready.length - 1 && ready[n] <= ready[d]) {
      n++;
    }
    return n;
  }

  /** The mean of the first day on which the gate is passed: each day counts with the chance that it has not been by then; or -1. */
  private int expected() {
    double sum = at;
    int d = at;
    while (d < ready.length && 1 - ready[d] > NONE_LEFT) {
      sum += 1 - ready[d];
      d++;
    }
    return d == ready.length && 1 - ready[d - 1] > TOO_MUCH_LEFT ? -1 : (int) Math.round(sum);
  }

  private Climb.@Nullable DecisionDay decision(int expected) {
    for (int d = expected; d < offered.days(); d++) {
      if (offered.fresh(family, d) && over[d]) {
        return new Climb.DecisionDay(offered.day(d), steps, steps + 2, ready[d], offered.day(nextLook(d)));
      }
    }
    return null;
  }

  /** The next fresh day on which those not ready on {@code d} are more likely ready than not, but neither too soon nor too late. */
  private int nextLook(int d) {
    for (int l = d + rules.soonestLook(); l < offered.length(); l++) {
      boolean likely = ready[l] - ready[d] >= 0.5 * (1 - ready[d]);
      if (offered.fresh(family, l) && (likely || l - d >= rules.latestLook())) {
        return l;
      }
    }
    return offered.length() - 1;
  }

  /** The first day of the longer approach after a decision, or -1. */
  int begins(LocalDate decided) {
    for (int d = (int) ChronoUnit.DAYS.between(offered.day(0), decided) + 1; d < offered.days(); d++) {
      if (offered.fresh(family, d)) {
        return d;
      }
    }
    return -1;
  }
}
