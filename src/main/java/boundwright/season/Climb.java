package boundwright.season;

import boundwright.quantity.RefusedException;
import boundwright.readiness.DrillFamily;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * From how many steps an athlete is expected to work in a family of drills, and when that is decided.
 *
 * @param family of drills
 * @param stages by day, the first from the season's first day on
 * @param decisions days on which the coach decides, in order
 */
public record Climb(DrillFamily family, List<Stage> stages, List<DecisionDay> decisions) {
  /** Takes copies; refuses a climb without a beginning. */
  public Climb {
    stages = stages.stream().sorted(Comparator.comparing(Stage::from)).toList();
    decisions = decisions.stream().sorted(Comparator.comparing(DecisionDay::date)).toList();
    if (stages.isEmpty()) {
      throw new RefusedException("The approach of the family " + family.label() + " is not known. Enter the steps that the athlete masters.");
    }
  }

  /**
   * An approach, from a day on.
   *
   * @param steps of the approach
   * @param from first day on which it is expected
   */
  public record Stage(int steps, LocalDate from) {}

  /**
   * If ready by this day, more steps; else stay.
   *
   * @param date the day of the decision
   * @param stays steps if not ready
   * @param goesTo steps if ready
   * @param chance that the athlete is ready by then, 0 to 1
   * @param nextLook when it is decided again if not ready
   */
  public record DecisionDay(LocalDate date, int stays, int goesTo, double chance, LocalDate nextLook) {}

  /** The approach that is expected on a day; before the first stage the first. */
  public int stepsOn(LocalDate day) {
    int steps = stages.get(0).steps();
    for (Stage s : stages) {
      if (!s.from().isAfter(day)) {
        steps = s.steps();
      }
    }
    return steps;
  }

  /** The day on which a longer approach begins, if one begins in these days. */
  public Optional<LocalDate> newIn(Span span) {
    return stages.stream().skip(1).map(Stage::from).filter(span::holds).findFirst();
  }
}
