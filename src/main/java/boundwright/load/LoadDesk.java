package boundwright.load;

import boundwright.athlete.Athlete;
import boundwright.flight.RepStore;
import boundwright.load.Finding.Rule;
import boundwright.quantity.RefusedException;
import java.time.Clock;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;

/** Asks the guard about an athlete's day from what was logged, and keeps what a coach decides otherwise. */
public final class LoadDesk {
  private static final int LOOK_BACK_DAYS = 42;

  private final RepStore reps;
  private final CareRepository care;
  private final Clock clock;

  /** Works on these. */
  public LoadDesk(RepStore reps, CareRepository care, Clock clock) {
    this.reps = reps;
    this.care = care;
    this.clock = clock;
  }

  /**
   * The guard's answer for today: what was logged today with what is still planned.
   *
   * @param planned work to come today; empty for what was done so far
   */
  public Verdict today(Athlete athlete, List<Work> planned) {
    LocalDate today = LocalDate.now(clock);
    List<DayLoad> days = recent(athlete.id(), today);
    List<Work> work = new ArrayList<>();
    days.stream().filter(d -> d.date().equals(today)).forEach(d -> work.addAll(d.work()));
    work.addAll(planned);
    GuardSettings settings = care.guard();
    return new Guard(settings.limits(), settings.season())
        .judge(athlete.level(), care.care(athlete.id(), today), days, new DayLoad(today, work));
  }

  /** What was logged today, in order. */
  public List<Work> done(Athlete athlete) {
    LocalDate today = LocalDate.now(clock);
    return DayLoad.byDay(reps.since(athlete.id(), today)).stream()
        .filter(d -> d.date().equals(today))
        .flatMap(d -> d.work().stream())
        .toList();
  }

  /** Days with work in the six weeks up to today, oldest first. */
  public List<DayLoad> recent(long athleteId, LocalDate today) {
    return DayLoad.byDay(reps.since(athleteId, today.minusDays(LOOK_BACK_DAYS)));
  }

  /**
   * Goes on against what the guard said.
   *
   * @param rule one of the verdict's concerns
   * @param reason the coach's words
   * @throws RefusedException if the guard has no such concern today, or it cannot be overridden
   */
  public void override(Athlete athlete, List<Work> planned, Rule rule, String reason) {
    Verdict verdict = today(athlete, planned);
    if (verdict.held() && rule != Rule.MEDICAL_HOLD && rule != Rule.REFER) {
      throw new RefusedException(
          "A " + verdict.findings().get(0).rule().label() + " stands: nothing can be overridden until a named clinician has ended it, with a date.");
    }
    Finding finding =
        verdict.concerns().stream()
            .filter(f -> f.rule() == rule)
            .findFirst()
            .orElseThrow(
                () -> new RefusedException("The guard has no concern about " + rule.label() + " today: there is nothing to override."));
    care.keep(new GuardOverride(0, athlete.id(), LocalDate.now(clock), rule, finding.answer(), finding.said(), reason));
  }

  /** The concerns of a verdict that no override of today answers. */
  public List<Finding> open(Athlete athlete, Verdict verdict) {
    LocalDate today = LocalDate.now(clock);
    List<GuardOverride> kept =
        care.overrides(athlete.id(), 50).stream().filter(o -> o.date().equals(today)).toList();
    return verdict.concerns().stream()
        .filter(f -> kept.stream().noneMatch(o -> o.rule() == f.rule() && o.answer().compareTo(f.answer()) >= 0))
        .toList();
  }
}
