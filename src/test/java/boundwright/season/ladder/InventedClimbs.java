package boundwright.season.ladder;

import boundwright.athlete.Athlete;
import boundwright.athlete.Level;
import boundwright.athlete.Surface;
import boundwright.footfall.Foot;
import boundwright.load.GuardSettings;
import boundwright.load.account.History;
import boundwright.readiness.DrillFamily;
import boundwright.readiness.GateRules;
import boundwright.season.Member;
import boundwright.season.Period;
import boundwright.season.SeasonInput;
import boundwright.season.SeasonRules;
import boundwright.season.Venue;
import boundwright.season.ladder.Learner.Went;
import boundwright.season.ladder.SquadStay.Beginning;
import boundwright.season.ladder.SquadStay.End;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** Invented squads with known stays, and what became of stays that were not over: the ground that expectations are held against. */
final class InventedClimbs {
  static final LocalDate TODAY = LocalDate.of(2026, 3, 1);
  private static final LocalDate NEVER = TODAY.plusDays(700);

  private InventedClimbs() {}

  /**
   * A stay whose end is still to come.
   *
   * @param learner whose
   * @param steps of the approach
   * @param spent days attended before today
   * @param ready the day on which the gate will let them up, or null: not in two years
   */
  record Case(Learner learner, int steps, List<LocalDate> spent, @Nullable LocalDate ready) {}

  /**
   * A squad on a day.
   *
   * @param stays what is known of it
   * @param cases what is to be expected
   */
  record Squad(List<SquadStay> stays, List<Case> cases) {}

  /**
   * A squad of which so many stays are known.
   *
   * @param pace times the usual sessions to learn
   * @param cases of athletes of whom nothing is known; all running stays of the others come on top
   * @param attendance lowest share; each athlete's lies between it and 1
   */
  static Squad squad(int known, int cases, double pace, double attendance, Random r) {
    List<SquadStay> stays = new ArrayList<>();
    List<Case> out = new ArrayList<>();
    long id = 1;
    while (stays.size() < known) {
      Learner l = learner(id++, pace, attendance, r);
      LocalDate from = TODAY.minusDays(28 + r.nextInt(200));
      int steps = 2 * r.nextInt(3);
      while (from.isBefore(TODAY) && stays.size() < known && steps < ClimbRules.TOP) {
        Went went = l.stay(steps, from, NEVER, r);
        LocalDate ready = went.ready();
        List<LocalDate> seen = went.sessions().stream().filter(d -> d.isBefore(TODAY)).toList();
        if (ready == null || !ready.isBefore(TODAY)) {
          stays.add(new SquadStay(l.id(), DrillFamily.ALTERNATE, steps, seen, null, Beginning.NEW, End.STILL_THERE));
          out.add(new Case(l, steps, seen, ready));
          break;
        }
        stays.add(new SquadStay(l.id(), DrillFamily.ALTERNATE, steps, seen, ready, Beginning.NEW, End.READY));
        from = ready.plusDays(1);
        steps += 2;
      }
    }
    for (int i = 0; i < cases; i++) {
      Learner l = learner(id++, pace, attendance, r);
      int steps = 2 * r.nextInt(6);
      out.add(new Case(l, steps, List.of(), l.stay(steps, TODAY.plusDays(1), NEVER, r).ready()));
    }
    return new Squad(stays, out);
  }

  private static Learner learner(long id, double pace, double attendance, Random r) {
    return Learner.any(id, pace, attendance + (1 - attendance) * r.nextDouble(), r);
  }

  /** What is expected of a case. */
  static StayForecast forecast(Case c, SquadPace pace) {
    Member m = member(c.learner().id(), c.steps(), Set.copyOf(c.learner().days()));
    List<SquadStay> own =
        c.spent().isEmpty()
            ? List.of()
            : List.of(new SquadStay(c.learner().id(), DrillFamily.ALTERNATE, c.steps(), c.spent(), null, Beginning.NEW, End.STILL_THERE));
    SeasonInput season = season(TODAY.plusDays(1), 364, List.of(m));
    // only the one stay that is asked for
    Map<DrillFamily, Integer> top = Map.of(DrillFamily.ALTERNATE, c.steps() + 2, DrillFamily.SINGLE_LEG, 0, DrillFamily.COMBINATION, 0);
    ClimbPlanner planner = new ClimbPlanner(season, new ClimbRules(GateRules.DEFAULT.stay(), top, 7, 28, PacePrior.USUAL));
    return of(DrillFamily.ALTERNATE, planner.climbs(m, TODAY.plusDays(1), own, pace, c.learner().attendance()))
        .stays()
        .get(0);
  }

  /** The climb of a family. */
  static PlannedClimb of(DrillFamily family, List<PlannedClimb> climbs) {
    return climbs.stream().filter(c -> c.climb().family() == family).findFirst().orElseThrow();
  }

  /** An athlete who trains on these days, from so many steps in all families. */
  static Member member(long id, int steps, Set<DayOfWeek> days) {
    Athlete a = new Athlete(id, "Athlete " + id, Level.INTERMEDIATE, Foot.RIGHT, steps);
    return new Member(a, false, null, Map.of(), 16, days, 300, null, List.of(), List.of(), List.of(), History.NONE);
  }

  /** A season on one free meadow with a pit, two sessions of each kind a week. */
  static SeasonInput season(LocalDate first, int days, List<Member> squad) {
    Map<DayOfWeek, Venue.Hours> hours = new EnumMap<>(DayOfWeek.class);
    for (DayOfWeek d : DayOfWeek.values()) {
      hours.put(d, new Venue.Hours(LocalTime.of(16, 0), LocalTime.of(20, 0)));
    }
    Map<Period.Kind, SeasonRules.Week> week = new EnumMap<>(Period.Kind.class);
    for (Period.Kind k : Period.Kind.values()) {
      week.put(k, new SeasonRules.Week(1, 2, 2, 0));
    }
    SeasonRules usual = SeasonRules.usual(GuardSettings.DEFAULT);
    SeasonRules rules =
        new SeasonRules(week, usual.lighterEvery(), usual.lighterShare(), usual.taper(), usual.testEvery(), usual.softContacts(),
            usual.noticeDays(), usual.spareShare(), usual.guard());
    return new SeasonInput("Invented", first, first.plusDays(days - 1L), List.of(), List.of(),
        List.of(new Venue("meadow", "Meadow", Surface.GRASS, true, 40, hours, List.of())), squad, rules);
  }

  /** What a forecast was worth. */
  static final class Score {
    private int n;
    private int unseen;
    private int inside;
    private int decided;
    private double chances;
    private int came;
    private double absolute;
    private double earliest;
    private final List<Double> squads = new ArrayList<>();
    private final List<Double> surprises = new ArrayList<>();
    private double surprise;
    private double squadSum;
    private int squadN;

    /** Adds a case. */
    void add(Case c, StayForecast f) {
      LocalDate ready = c.ready();
      if (ready == null || f.expected() == null || f.early() == null || f.late() == null || f.leastOver() == null) {
        unseen++;
        return;
      }
      double error = ChronoUnit.DAYS.between(ready, f.expected());
      n++;
      squadSum += error;
      squadN++;
      absolute += Math.abs(error);
      earliest += Math.abs(ChronoUnit.DAYS.between(ready, f.leastOver()));
      inside += !ready.isBefore(f.early()) && !ready.isAfter(f.late()) ? 1 : 0;
      if (f.decision() != null) {
        decided++;
        chances += f.decision().chance();
        int there = ready.isAfter(f.decision().date()) ? 0 : 1;
        came += there;
        surprise += there - f.decision().chance();
      }
    }

    /** Ends a squad: athletes of one squad err together. */
    void endSquad() {
      if (squadN > 0) {
        squads.add(squadSum / squadN);
        surprises.add(surprise / squadN);
      }
      surprise = 0;
      squadSum = 0;
      squadN = 0;
    }

    int cases() {
      return n;
    }

    int unseen() {
      return unseen;
    }

    /** Expected less true day, mean over squads [days]. */
    double bias() {
      return mean(squads);
    }

    /** Standard error of the bias, from squad to squad [days]. */
    double biasError() {
      return error(squads);
    }

    /** How many more were ready by the decision day than was said, as a share, and its standard error, from squad to squad. */
    double surprise() {
      return mean(surprises);
    }

    double surpriseError() {
      return error(surprises);
    }

    private static double mean(List<Double> x) {
      return x.stream().mapToDouble(Double::doubleValue).average().orElse(0);
    }

    private static double error(List<Double> x) {
      double mean = mean(x);
      double ss = x.stream().mapToDouble(b -> (b - mean) * (b - mean)).sum();
      return Math.sqrt(ss / (x.size() - 1.0) / x.size());
    }

    double absolute() {
      return absolute / n;
    }

    /** Mean distance of the earliest possible day from the true one [days]. */
    double earliest() {
      return earliest / n;
    }

    double coverage() {
      return inside / (double) n;
    }

    double chance() {
      return chances / decided;
    }

    double came() {
      return came / (double) decided;
    }
  }
}
