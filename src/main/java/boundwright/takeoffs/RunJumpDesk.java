package boundwright.takeoffs;

import boundwright.athlete.Athlete;
import boundwright.flight.Logbook;
import boundwright.footfall.RunJumps;
import boundwright.runway.CoachSettings;
import java.time.Clock;
import java.time.LocalDate;
import java.util.List;
import java.util.Objects;

/** Answers where the take-offs of an athlete fall when they are repeated down the runway. */
public final class RunJumpDesk {
  private final RunJumpLog log;
  private final Logbook logbook;
  private final Clock clock;

  /** Works on these reps; what is known of flights and run-ups comes from {@code logbook}. */
  public RunJumpDesk(RunJumpLog log, Logbook logbook, Clock clock) {
    this.log = log;
    this.logbook = logbook;
    this.clock = clock;
  }

  /**
   * The marks today.
   *
   * @param steps of the run-up, 0 to 26
   * @param inSand whether the last take-off ends in the sand
   */
  public RunJumpMarks marks(Athlete athlete, RunJumps pattern, int steps, boolean inSand, CoachSettings settings) {
    Athlete.checkSteps(steps);
    LocalDate today = LocalDate.now(clock);
    Logbook.Known known = Objects.requireNonNull(logbook.known(List.of(athlete)).get(athlete.id()));
    Lengths lengths = new Lengths(known.flights(), known::runUp, today);
    RunJumpModel model = new RunJumpModel(lengths, log.runJumps(athlete.id()), today);
    return RunJumpMarks.of(model, pattern, steps, inSand, known.runUp(steps), settings);
  }
}
