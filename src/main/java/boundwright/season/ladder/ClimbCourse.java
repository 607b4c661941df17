package boundwright.season.ladder;

import boundwright.load.account.DayLoad;
import boundwright.load.account.Work;
import boundwright.readiness.DrillFamily;
import boundwright.readiness.GateRules;
import boundwright.season.Climb;
import boundwright.season.Done;
import boundwright.season.Member;
import boundwright.season.SeasonInput;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.TreeSet;

/**
 * The climbs of one athlete as a plan has them, counted in days of the season, with what was done before: what simulated seasons start
 * from. Immutable; one {@link DrawnClimb} is walked for each season.
 */
public final class ClimbCourse {
  static final int FAMILIES = DrillFamily.values().length;
  /** Approaches of a climb are looked up by their steps. */
  static final int STEPS = ClimbRules.TOP + 3;

  final GateRules.Stay rules;
  final ClimbRules looks;
  final int rung;
  /** The first day that is still open. */
  final int open;
  final int[] startSteps = new int[FAMILIES];
  final int[] spent = new int[FAMILIES];
  /** Whether it is decided already, as planned, and the longer approach has not begun. */
  final boolean[] goes = new boolean[FAMILIES];
  /** By family and steps: the day of the decision to leave them, -1 for none. */
  final int[][] decided = new int[FAMILIES][STEPS];
  final int[][] nextLook = new int[FAMILIES][STEPS];
  /** By family and steps: the first day from there, -1 for never. */
  final int[][] begins = new int[FAMILIES][STEPS];
  /** Days on which something new may begin. */
  final boolean[] fresh;
  /** What was done before, by family and steps: first and last day of the last stretch, how many stretches, whether one was whole. */
  final Stretch[][] before = new Stretch[FAMILIES][STEPS];

  /**
   * Of an athlete.
   *
   * @param climbs as planned, one for each family
   * @param own stays of theirs in the log; may be empty
   * @param done what was done in the season; its first open day is where the walk begins
   */
  public ClimbCourse(SeasonInput input, Member m, List<Climb> climbs, List<SquadStay> own, Done done, GateRules.Stay rules) {
    this.rules = rules;
    this.looks = ClimbRules.usual(rules);
    this.rung = m.athlete().rung();
    this.open = input.number(done.today());
    this.fresh = new boolean[input.days()];
    for (int t = 0; t < fresh.length; t++) {
      fresh[t] = OfferedDays.fresh(input, m, input.day(t));
    }
    ClimbPlanner.Past past = ClimbPlanner.Past.of(m, own, done.today());
    for (DrillFamily f : DrillFamily.values()) {
      Climb climb = climbs.stream().filter(c -> c.family() == f).findFirst().orElseThrow();
      int at = at(f);
      Arrays.fill(decided[at], -1);
      Arrays.fill(begins[at], -1);
      climb.decisions().stream().filter(d -> d.stays() < STEPS).forEach(d -> decision(input, at, d));
      climb.stages().stream().filter(s -> s.steps() < STEPS).forEach(s -> begins[at][s.steps()] = input.number(s.from()));
      startSteps[at] = past.steps(f, climb.stepsOn(done.today()));
      int next = startSteps[at] + 2;
      boolean logged = past.steps(f, -1) >= 0;
      goes[at] = !logged && next < STEPS && decided[at][startSteps[at]] >= 0 && decided[at][startSteps[at]] < open && begins[at][next] >= open;
      spent[at] = Math.max(past.spent(f, startSteps[at]), worked(done.of(m.id()), f, startSteps[at]));
      for (int s = 0; s < STEPS; s++) {
        Stretch stretch = new Stretch();
        TreeSet<LocalDate> days = past.from(f, s);
        for (DayLoad d : done.of(m.id())) {
          if (farthest(d, f, true) >= s) {
            days.add(d.date());
          }
        }
        int steps = s;
        days.headSet(done.today()).forEach(d -> stretch.tell(input.number(d), rules.days(steps), rules.breakDays()));
        before[at][s] = stretch;
      }
    }
  }

  /** The place of a family in arrays, and its bit. */
  public static int at(DrillFamily family) {
    return switch (family) {
      case ALTERNATE -> 0;
      case SINGLE_LEG -> 1;
      case COMBINATION -> 2;
    };
  }

  private void decision(SeasonInput input, int family, Climb.DecisionDay d) {
    decided[family][d.stays()] = input.number(d.date());
    nextLook[family][d.stays()] = input.number(d.nextLook());
  }

  private static int worked(List<DayLoad> days, DrillFamily f, int steps) {
    return (int) days.stream().filter(d -> farthest(d, f, false) == steps).count();
  }

  /** The longest approach of a family on a day, or of one that loads each leg at least as much; -1 for none. */
  private static int farthest(DayLoad day, DrillFamily f, boolean covering) {
    int most = -1;
    for (Work w : day.work()) {
      DrillFamily g = DrillFamily.of(w.sequence());
      if (w.kind() == Work.Kind.BOUNDING && (covering ? g.covers(f) : g == f)) {
        most = Math.max(most, w.approachSteps());
      }
    }
    return most;
  }

  /** Days at an approach without a break, as {@link boundwright.readiness.TimeHere} counts them. Mutable. */
  static final class Stretch {
    private int start = Integer.MIN_VALUE;
    private int last;
    private int stretches;
    private boolean whole;

    void copy(Stretch from) {
      start = from.start;
      last = from.last;
      stretches = from.stretches;
      whole = from.whole;
    }

    void tell(int day, int asked, int breakDays) {
      if (start == Integer.MIN_VALUE || day - last > breakDays) {
        start = day;
        stretches++;
      }
      last = day;
      whole |= day - start >= asked;
    }

    /** Whether the least stay is over. */
    boolean over(int day, int asked, int breakDays, boolean knownBefore) {
      if (start == Integer.MIN_VALUE) {
        return knownBefore || asked == 0;
      }
      int needed = knownBefore || whole ? (asked + 1) / 2 : asked;
      if (day - last > breakDays) {
        return needed == 0;
      }
      return day - start >= needed || (knownBefore && stretches == 1);
    }
  }
}
