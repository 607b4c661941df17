package boundwright.runway;

import boundwright.athlete.Athlete;
import boundwright.flight.Logbook;
import boundwright.footfall.Sequence;
import java.time.Clock;
import java.util.List;

/** Answers where the tapes go. (Implementation follows.) */
public final class MarkAdvisor {
  private final Logbook logbook;
  private final Clock clock;

  /** Reads what was learned from {@code logbook}; {@code clock} tells which day it is. */
  public MarkAdvisor(Logbook logbook, Clock clock) {
    this.logbook = logbook;
    this.clock = clock;
  }

  /** The marks for this athlete, sequence and approach steps at the coach's settings. */
  public MarkAdvice advise(Athlete athlete, Sequence sequence, int approachSteps, CoachSettings settings) {
    throw new UnsupportedOperationException(logbook + "" + clock);
  }

  /** The fewest tapes for these athletes and the plan's drills that end in sand. */
  public Tapes tapes(List<Athlete> athletes, DayPlan plan, CoachSettings settings) {
    throw new UnsupportedOperationException();
  }
}
