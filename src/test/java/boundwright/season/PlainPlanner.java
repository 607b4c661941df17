package boundwright.season;

import boundwright.athlete.Surface;
import boundwright.footfall.Sequence;
import boundwright.load.account.Work;
import boundwright.readiness.DrillFamily;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/** A planner for tests of what shows plans: it goes by weekday and part of the year, and keeps no limit. */
public final class PlainPlanner {
  /** A plan of the season. */
  public SeasonPlan plan(SeasonInput season, Optional<SeasonPlan> published) {
    return new SeasonPlan(season.name(), published.map(SeasonPlan::version).orElse(0), season.squad().stream().map(m -> year(season, m)).toList());
  }

  private static SeasonPlan.Year year(SeasonInput season, Member m) {
    int weeks = (season.days() + 6) / 7;
    List<Double> wanted = new ArrayList<>();
    List<PlannedDay> days = new ArrayList<>();
    List<Climb> climbs = Arrays.stream(DrillFamily.values()).map(f -> climb(season, m, f, weeks)).toList();
    for (int w = 0; w < weeks; w++) {
      Period.Kind part = season.period(season.first().plusWeeks(w));
      double share = season.rules().week(part).share() * (w % 4 == 3 ? 0.7 : 1) * Math.min(1, 0.55 + 0.03 * w);
      wanted.add(share * m.peakWeek());
      for (int d = 0; d < 7; d++) {
        LocalDate day = season.first().plusDays(7L * w + d);
        session(season, m, day, w, share, climbs.get(2)).ifPresent(s -> days.add(new PlannedDay(day, s)));
      }
    }
    return new SeasonPlan.Year(m.id(), m.name(), days, climbs, wanted);
  }

  private static Optional<Session> session(SeasonInput season, Member m, LocalDate day, int week, double share, Climb climb) {
    Optional<Away.Why> away = m.away(day);
    if (day.isAfter(season.last()) || away.filter(w -> w != Away.Why.SOFT).isPresent()) {
      return Optional.empty();
    }
    if (season.meets().stream().anyMatch(x -> x.date().equals(day) && m.entry(x).isPresent())) {
      Work jumps = Work.jump(Work.Kind.MEET_JUMP, m.athlete().takeOffFoot(), m.fullSteps(), Surface.TRACK, List.of());
      return Optional.of(new Session(SessionKind.MEET, null, List.of(new Block(new Work(jumps.sequence(), 6, m.fullSteps(), Surface.TRACK, Work.Kind.MEET_JUMP, List.of()), 1, true))));
    }
    Optional<Venue> venue = season.venues().stream().filter(v -> v.open(day)).findFirst();
    if (venue.isEmpty() || !m.days().contains(day.getDayOfWeek())) {
      return Optional.empty();
    }
    boolean test = week % 6 == 5 && m.days().stream().min(Enum::compareTo).orElseThrow() == day.getDayOfWeek();
    int reps = Math.max(2, (int) Math.round(10 * share));
    Block bounds = new Block(new Work(Sequence.parse("RL x5"), reps, 0, venue.get().surface()), 2, false);
    Block combinations = new Block(new Work(Sequence.parse("RRL RRL"), Math.max(2, reps / 2), Math.min(8, climb.stepsOn(day)), venue.get().surface()), 1, venue.get().sand());
    return Optional.of(
        new Session(test ? SessionKind.TEST : venue.get().sand() ? SessionKind.COMBINATIONS : SessionKind.BOUNDS, venue.get().key(), test ? List.of(bounds) : List.of(bounds, combinations)));
  }

  private static Climb climb(SeasonInput season, Member m, DrillFamily family, int weeks) {
    List<Climb.Stage> stages = new ArrayList<>(List.of(new Climb.Stage(m.steps(family), season.first())));
    List<Climb.DecisionDay> decisions = new ArrayList<>();
    for (int k = 1; k <= 2; k++) {
      LocalDate day = season.first().plusWeeks((long) weeks * k / 3).plusDays(family == DrillFamily.ALTERNATE ? 0 : 1);
      int steps = m.steps(family) + 2 * k;
      stages.add(new Climb.Stage(steps, day.plusDays(1)));
      decisions.add(new Climb.DecisionDay(day, steps - 2, steps, 0.7, day.plusWeeks(2)));
    }
    return new Climb(family, stages, decisions);
  }
}
