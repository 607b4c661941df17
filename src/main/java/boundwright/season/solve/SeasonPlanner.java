package boundwright.season.solve;

import boundwright.season.Climb;
import boundwright.season.Done;
import boundwright.season.PlannedDay;
import boundwright.season.SeasonInput;
import boundwright.season.SeasonPlan;
import boundwright.season.Session;
import boundwright.season.check.GuardCheck;
import boundwright.season.weeks.WantedWeek;
import boundwright.season.weeks.WantedWeeks;
import boundwright.season.year.YearLine;
import boundwright.season.year.YearProblem;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Plans a season from its input: weeks, choices, search, and the guard's own word on every day at the end. */
public final class SeasonPlanner {
  private final SeasonInput input;
  private final Done done;
  private final @Nullable SeasonPlan published;
  private final List<List<Climb>> climbs;
  private final List<List<WantedWeek>> wanted;
  private final List<YearProblem> problems;
  private final SeasonSolver solver;

  /**
   * For a season.
   *
   * @param climbs expected approaches, for each athlete of the squad one for each family
   * @param published what holds now and should change little, or null
   */
  public SeasonPlanner(SeasonInput input, List<List<Climb>> climbs, @Nullable SeasonPlan published, long seed) {
    this(input, climbs, published, Done.nothing(input), seed);
  }

  /**
   * For a season that has begun.
   *
   * @param climbs expected approaches, for each athlete of the squad one for each family
   * @param published what holds now and should change little, or null
   * @param done what happened so far
   */
  public SeasonPlanner(SeasonInput input, List<List<Climb>> climbs, @Nullable SeasonPlan published, Done done, long seed) {
    this.input = input;
    this.done = done;
    this.published = published;
    this.climbs = List.copyOf(climbs);
    WantedWeeks weeks = new WantedWeeks(input);
    this.wanted = input.squad().stream().map(weeks::of).toList();
    this.problems = YearProblem.all(input, climbs, wanted, published, done);
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
    Joint first = solver.first();
    listener.better(first.total());
    return planned(solver.better(first, time, listener));
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

  /** The plan that lines stand for. */
  public SeasonPlan plan(Joint joint) {
    List<SeasonPlan.Year> years = new ArrayList<>();
    for (int a = 0; a < joint.athletes(); a++) {
      YearLine line = joint.line(a);
      List<PlannedDay> days = new ArrayList<>(over(input.squad().get(a).id()));
      for (int t = 0; t < input.days(); t++) {
        Session session = line.chosen(t).session();
        if (session != null && !input.day(t).isBefore(done.today())) {
          days.add(new PlannedDay(input.day(t), session));
        }
      }
      years.add(
          new SeasonPlan.Year(
              input.squad().get(a).id(), input.squad().get(a).name(), days, climbs.get(a), wanted.get(a).stream().map(WantedWeek::units).toList()));
    }
    return new SeasonPlan(input.name(), 0, years);
  }
}
