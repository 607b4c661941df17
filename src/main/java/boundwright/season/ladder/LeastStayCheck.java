package boundwright.season.ladder;

import boundwright.load.account.DayLoad;
import boundwright.load.account.Work;
import boundwright.readiness.DrillFamily;
import boundwright.readiness.GateCase;
import boundwright.readiness.GateRules;
import boundwright.readiness.TimeHere;
import boundwright.season.Climb;
import boundwright.season.Member;
import boundwright.season.PlannedDay;
import boundwright.season.SeasonPlan;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;

/**
 * Asks the gate itself whether a planned season keeps the least stay: on each decision day its own count of the days at the approach,
 * over what was done and what is planned. For those who plan by the day; a plan may put the first session at a new approach later than
 * the climb expected.
 */
public final class LeastStayCheck {
  private LeastStayCheck() {}

  /**
   * A decision before its time.
   *
   * @param family of drills
   * @param decision too early
   * @param time what the gate counts on that day
   */
  public record Early(DrillFamily family, Climb.DecisionDay decision, TimeHere time) {}

  /** Decisions on days on which the gate would still ask for more days; empty where all is kept. */
  public static List<Early> of(Member m, SeasonPlan.Year year, GateRules.Stay rules) {
    List<DayLoad> days =
        Stream.concat(m.past().days().stream(), year.days().stream().map(LeastStayCheck::load)).toList();
    List<Early> out = new ArrayList<>();
    for (Climb c : year.climbs()) {
      for (Climb.DecisionDay d : c.decisions()) {
        TimeHere time = TimeHere.of(exposed(days, c.family(), d.stays(), d.date()), d.stays(), d.stays() < m.athlete().rung(), rules, d.date());
        if (!time.met()) {
          out.add(new Early(c.family(), d, time));
        }
      }
    }
    return out;
  }

  private static DayLoad load(PlannedDay d) {
    return d.session().on(d.date());
  }

  /** Days with work from as many steps or more in drills that load a leg at least as much, as far back as the gate looks. */
  private static Set<LocalDate> exposed(List<DayLoad> days, DrillFamily family, int steps, LocalDate today) {
    LocalDate since = today.minusDays(GateCase.LOOK_BACK_DAYS);
    Set<LocalDate> out = new TreeSet<>();
    for (DayLoad d : days) {
      if (!d.date().isBefore(since) && !d.date().isAfter(today) && d.work().stream().anyMatch(w -> counts(w, family, steps))) {
        out.add(d.date());
      }
    }
    return out;
  }

  private static boolean counts(Work w, DrillFamily family, int steps) {
    return w.kind() == Work.Kind.BOUNDING && w.approachSteps() >= steps && DrillFamily.of(w.sequence()).covers(family);
  }
}
