package boundwright.season.solve;

import boundwright.season.Climb;
import boundwright.season.Done;
import boundwright.season.Member;
import boundwright.season.PlannedDay;
import boundwright.season.SeasonInput;
import boundwright.season.SeasonPlan;
import boundwright.season.Session;
import boundwright.season.check.GuardCheck;
import boundwright.season.weeks.WantedWeek;
import boundwright.season.weeks.WantedWeeks;
import boundwright.season.year.Choice;
import boundwright.season.year.YearLine;
import boundwright.season.year.YearProblem;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.SplittableRandom;
import org.jspecify.annotations.Nullable;

/** Plans a season from its input: weeks, choices, search, and the guard's own word on every day at the end. */
public final class SeasonPlanner {
  /** How often days and climbs are fitted to one another. */
  private static final int MOST_ROUNDS = 8;

  private static final int SETTLE_WIDTH = 12;

  private final SeasonInput input;
  private final Done done;
  private final @Nullable SeasonPlan published;
  private final List<List<Climb>> climbs;
  private final @Nullable Reclimb reclimb;
  private final List<List<WantedWeek>> wanted;
  private final List<YearProblem> problems;
  private final SeasonSolver solver;
  private final long seed;

  /**
   * For a season.
   *
   * @param climbs expected approaches, for each athlete of the squad one for each family
   * @param published what holds now and should change little, or null
   */
  public SeasonPlanner(SeasonInput input, List<List<Climb>> climbs, @Nullable SeasonPlan published, long seed) {
    this(input, climbs, null, published, Done.nothing(input), seed);
  }

  /**
   * For a season that has begun.
   *
   * @param climbs expected approaches, for each athlete of the squad one for each family
   * @param reclimb told the days of the plan, so that no approach is left before the least stay there is over; null to trust the climbs
   * @param published what holds now and should change little, or null
   * @param done what happened so far
   */
  public SeasonPlanner(
      SeasonInput input, List<List<Climb>> climbs, @Nullable Reclimb reclimb, @Nullable SeasonPlan published, Done done, long seed) {
    this.input = input;
    this.done = done;
    this.published = published;
    this.climbs = new ArrayList<>(climbs);
    this.reclimb = reclimb;
    this.seed = seed;
    WantedWeeks weeks = new WantedWeeks(input);
    this.wanted = input.squad().stream().map(weeks::of).toList();
    this.problems = new ArrayList<>(YearProblem.all(input, climbs, wanted, published, done));
    this.solver = new SeasonSolver(problems, input.venues(), seed);
  }

  /** Each athlete's season as numbers, in the order of the squad. */
  public List<YearProblem> problems() {
    return problems;
  }

  /** What is wanted of each athlete, week by week. */
  public List<List<WantedWeek>> wanted() {
    return wanted;
  }

  /** Ends a search that goes on in another thread. */
  public void stop() {
    solver.stop();
  }

  /**
   * Plans.
   *
   * @param time how long to make the first plan better
   */
  public Planned plan(Duration time, SeasonSolver.Listener listener) {
    Joint joint = solver.first();
    listener.better(joint.total());
    settle(joint);
    // days move in the search, and climbs with them: twice, so that what is put off at the end is little
    for (int half = 0; half < 2; half++) {
      joint = solver.better(joint, time.dividedBy(2), listener);
      settle(joint);
    }
    return planned(joint);
  }

  private void settle(Joint joint) {
    for (int a = 0; a < joint.athletes(); a++) {
      settle(joint, a);
    }
  }

  /** Looks at the climbs of an athlete on the days of the plan, and has days from a new approach planned later where they came too early. */
  private void settle(Joint joint, int a) {
    Reclimb r = reclimb;
    Member m = input.squad().get(a);
    for (int round = 0; r != null && round <= MOST_ROUNDS; round++) {
      SeasonPlan.Year year = year(joint, a);
      if (r.kept(m, year)) {
        return;
      }
      climbs.set(a, round == MOST_ROUNDS ? standing(climbs.get(a)) : later(climbs.get(a), r.on(m, year)));
      YearProblem p = YearProblem.of(input, a, climbs.get(a), wanted.get(a), published, done);
      problems.set(a, p);
      joint.replace(a, like(p, joint.line(a)));
      YearLine better = new Beam(joint, SETTLE_WIDTH, new SplittableRandom(seed), 0).search(a, 0, input.days() - 1);
      if (better != null) {
        joint.replace(a, better);
      }
    }
  }

  /** The later of two climbs, family by family: no stage begins before it does in both. */
  private static List<Climb> later(List<Climb> a, List<Climb> b) {
    List<Climb> out = new ArrayList<>();
    for (Climb one : a) {
      Climb other = b.stream().filter(c -> c.family() == one.family()).findFirst().orElse(one);
      out.add(isLater(other, one) ? other : one);
    }
    return out;
  }

  private static boolean isLater(Climb a, Climb b) {
    return a.stages().stream().allMatch(s -> b.stepsOn(s.from()) >= s.steps());
  }

  /** No longer approach than that of the beginning: what is left when the days never settle. */
  private static List<Climb> standing(List<Climb> climbs) {
    return climbs.stream().map(c -> new Climb(c.family(), List.of(c.stages().get(0)), List.of())).toList();
  }

  /** The same kinds of sessions at the same places with about as much load. */
  private static YearLine like(YearProblem p, YearLine old) {
    YearLine line = new YearLine(p);
    for (int t = 0; t < p.days(); t++) {
      int day = t;
      Choice was = old.chosen(t);
      Session session = was.session();
      if (session != null) {
        p.choices(t).stream()
            .filter(c -> c.session() != null && c.session().kind() == session.kind() && c.venue() == was.venue())
            .min(Comparator.comparingInt(c -> Math.abs(c.right() + c.left() - was.right() - was.left())))
            .ifPresent(c -> line.choose(day, c));
      }
    }
    return line;
  }

  /** The plan that lines stand for, with the guard's word on it. */
  public Planned planned(Joint joint) {
    SeasonPlan plan = plan(joint);
    return new Planned(plan, joint, new GuardCheck(input).refused(plan, done));
  }

  /**
   * What came out.
   *
   * @param plan not published yet
   * @param joint the same as numbers
   * @param refused what the guard itself refuses; a plan with any is never published
   */
  public record Planned(SeasonPlan plan, Joint joint, List<GuardCheck.Judged> refused) {}

  /** Days that are over stay in the plan as they were published; what was really done stands in the log. */
  private List<PlannedDay> over(long athleteId) {
    SeasonPlan before = published;
    return before == null
        ? List.of()
        : before.of(athleteId).stream().flatMap(y -> y.days().stream()).filter(d -> d.date().isBefore(done.today())).toList();
  }

  /** The lines of the published plan, wherever it can still be chosen; rest elsewhere. */
  public Joint published() {
    Joint joint = new Joint(problems, input.venues());
    for (int a = 0; a < joint.athletes(); a++) {
      joint.replace(a, YearLine.published(problems.get(a)));
    }
    return joint;
  }

  /** The plan that lines stand for. */
  public SeasonPlan plan(Joint joint) {
    List<SeasonPlan.Year> years = new ArrayList<>();
    for (int a = 0; a < joint.athletes(); a++) {
      years.add(year(joint, a));
    }
    return new SeasonPlan(input.name(), 0, years);
  }

  private SeasonPlan.Year year(Joint joint, int a) {
    YearLine line = joint.line(a);
    List<PlannedDay> days = new ArrayList<>(over(input.squad().get(a).id()));
    for (int t = 0; t < input.days(); t++) {
      Session session = line.chosen(t).session();
      if (session != null && !input.day(t).isBefore(done.today())) {
        days.add(new PlannedDay(input.day(t), session));
      }
    }
    return new SeasonPlan.Year(
        input.squad().get(a).id(), input.squad().get(a).name(), days, climbs.get(a), wanted.get(a).stream().map(WantedWeek::units).toList());
  }

  /** Knows when an athlete may go on to a longer approach, on the days of a plan. */
  public interface Reclimb {
    /** The climbs of an athlete on the days of a plan. */
    List<Climb> on(Member m, SeasonPlan.Year year);

    /** Whether no approach is left before the least stay there is over. */
    boolean kept(Member m, SeasonPlan.Year year);
  }
}
