package boundwright.cli.season;

import boundwright.season.SeasonPlan;
import boundwright.season.check.GuardCheck;
import boundwright.season.mend.Difference;
import boundwright.season.solve.SeasonPlanner;
import boundwright.season.year.Level;
import boundwright.season.year.YearProblem;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/** Answers of the season's commands in JSON; names and units stand in {@code docs/formats-json.md}. */
public final class PlanAnswer {
  private PlanAnswer() {}

  /**
   * A plan in numbers.
   *
   * @param season name
   * @param athletes how many
   * @param days with work
   * @param firstPlan_s when the first plan stood [s]
   * @param wanted_standingBounds wanted of all weeks together
   * @param score what it is judged by, in order
   * @param refused what the guard refuses; with any, nothing is written
   */
  public record Planned(
      String season, int athletes, int days, double firstPlan_s, long wanted_standingBounds, List<Score> score, List<Refused> refused) {}

  /**
   * One level.
   *
   * @param level what is counted
   * @param unit of it
   * @param value how much
   */
  public record Score(String level, String unit, long value) {}

  /**
   * A refusal.
   *
   * @param athlete name
   * @param date as 2026-05-14
   * @param said what the guard says
   */
  public record Refused(String athlete, String date, String said) {}

  /**
   * A mended plan.
   *
   * @param differences days that are not as they were
   * @param refused what the guard refuses all the same
   * @param tapersMissed standing-bound contacts by which a taper is not reached
   */
  public record Mended(List<Changed> differences, List<Refused> refused, long tapersMissed) {}

  /**
   * A day that is not as it was.
   *
   * @param athlete name
   * @param date as 2026-05-14
   * @param before what was published, or null for rest
   * @param after what holds now, or null for rest
   */
  public record Changed(String athlete, String date, @Nullable String before, @Nullable String after) {}

  /**
   * Wishes that are not met, in JSON.
   *
   * @param unmet each with what stands against it
   */
  public record Unmet(List<Wish> unmet) {}

  /**
   * A wish in JSON.
   *
   * @param athlete whose
   * @param from its day, or the first of its week
   * @param wish in words
   * @param stands which rule stands against it
   * @param nearest the day on which it would cost least, or null
   * @param instead what would be done then, or null
   * @param cost in words, by level
   */
  public record Wish(String athlete, String from, String wish, String stands, @Nullable String nearest, @Nullable String instead, String cost) {}

  /**
   * A day in JSON.
   *
   * @param athlete whose
   * @param date which
   * @param session what is done, or null for rest
   * @param shaped what decided it
   */
  public record Day(String athlete, String date, @Nullable String session, List<String> shaped) {}

  static Planned of(SeasonPlanner planner, SeasonPlanner.Planned p, double first_s) {
    List<Score> score = new ArrayList<>();
    for (Level level : Level.values()) {
      score.add(new Score(level.label(), level.unit(), level.of(p.joint().total())));
    }
    long wanted = planner.problems().stream().mapToLong(YearProblem::wanted).sum() / 100;
    return new Planned(
        p.plan().name(), p.plan().years().size(), p.plan().years().stream().mapToInt(y -> y.days().size()).sum(), Math.round(10 * first_s) / 10.0, wanted, score,
        refused(p.plan(), p.refused()));
  }

  static List<Refused> refused(SeasonPlan plan, List<GuardCheck.Judged> judged) {
    return judged.stream().map(j -> new Refused(plan.of(j.athleteId()).map(SeasonPlan.Year::athlete).orElse(""), j.date().toString(), j.finding().said())).toList();
  }

  static List<Changed> changed(List<Difference> differences) {
    return differences.stream().map(d -> new Changed(d.athlete(), d.date().toString(), Told.session(d.before()), Told.session(d.after()))).toList();
  }

  static String said(Score s) {
    return String.format(Locale.ROOT, "%-22s %,d %s", s.level(), s.value(), s.unit());
  }
}
