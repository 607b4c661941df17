package boundwright.season.solve;

import boundwright.season.Climb;
import boundwright.season.SeasonInput;
import boundwright.season.SeasonPlan;
import boundwright.season.year.Choice;
import boundwright.season.year.Level;
import boundwright.season.year.YearProblem;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Random;

/** Lines drawn at random, with everything refused or nothing. */
public final class LinesForTests {
  private final SeasonInput input;
  private final SeasonPlanner planner;
  private final Joint joint;

  private LinesForTests(SeasonInput input, SeasonPlanner planner, Joint joint) {
    this.input = input;
    this.planner = planner;
    this.joint = joint;
  }

  /** Days drawn at random; if {@code kept}, those that a rule refuses are drawn again or left at rest. */
  public static LinesForTests drawn(SeasonInput input, List<List<Climb>> climbs, long seed, boolean kept) {
    SeasonPlanner planner = new SeasonPlanner(input, climbs, null, seed);
    Joint joint = new Joint(planner.problems(), input.venues());
    Random random = new Random(seed);
    for (int a = 0; a < joint.athletes(); a++) {
      YearProblem p = planner.problems().get(a);
      for (int t = 0; t < p.days(); t++) {
        List<Choice> choices = p.choices(t);
        for (int i = 0; i < 6 && choices.size() > 1 && random.nextInt(4) > 0; i++) {
          joint.choose(a, t, choices.get(random.nextInt(choices.size())));
          if (!kept || joint.total()[Level.REFUSED.at()] == 0) {
            break;
          }
          joint.choose(a, t, choices.get(0));
        }
      }
    }
    return new LinesForTests(input, planner, joint);
  }

  /** The score. */
  public long[] total() {
    return joint.total();
  }

  /** The same as a plan. */
  public SeasonPlan plan() {
    return planner.planned(joint).plan();
  }

  /** Whether a rule refuses a day. */
  public boolean refused(long athleteId, LocalDate day) {
    for (int a = 0; a < joint.athletes(); a++) {
      if (input.squad().get(a).id() == athleteId) {
        return joint.line(a).dayCost((int) ChronoUnit.DAYS.between(input.first(), day), Level.REFUSED) > 0;
      }
    }
    throw new IllegalArgumentException("no athlete " + athleteId);
  }
}
