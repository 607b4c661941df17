package boundwright.season.ladder;

import boundwright.readiness.GateRules;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import org.jspecify.annotations.Nullable;

/**
 * When the least stay at an approach will be over, by the gate's own rule (see {@link boundwright.readiness.TimeHere}), told day by day:
 * first what was done, then what is offered. A stretch begins when one whole session of it is to be expected, so that a seldom offered
 * drill, or an athlete who comes seldom, begins later. Where the gate could ask less, this asks as much or more. Mutable.
 */
final class LeastStay {
  private static final double ALMOST = 1 - 1e-9;

  private final GateRules.Stay rules;
  private final int whole;
  private final boolean knownBefore;
  private boolean known;
  private int stretches;
  private @Nullable LocalDate start;
  private @Nullable LocalDate last;
  private double done;

  /**
   * @param knownBefore whether the coach had the athlete at a longer approach before
   * @param breaks breaks in what was done and offered from any approach before this one begins
   */
  LeastStay(GateRules.Stay rules, int steps, boolean knownBefore, int breaks) {
    this.rules = rules;
    this.whole = rules.days(steps);
    this.knownBefore = knownBefore;
    this.known = knownBefore;
    this.stretches = breaks;
  }

  /** A day with a rep from there or farther. */
  void done(LocalDate day) {
    tell(day, 1);
  }

  /** A day on which a share of a session from there or farther is expected. */
  void expected(LocalDate day, double share) {
    tell(day, share);
  }

  private void tell(LocalDate day, double share) {
    if (last == null || ChronoUnit.DAYS.between(last, day) > rules.breakDays()) {
      start = null;
      done = 0;
      stretches++;
    }
    last = day;
    done += share;
    if (start == null && done >= ALMOST) {
      start = day;
    }
    known |= start != null && ChronoUnit.DAYS.between(start, day) >= whole;
  }

  /** Whether it is over on a day, none earlier than the last that was told. */
  boolean over(LocalDate day) {
    if (start == null || last == null) {
      return whole == 0 || (knownBefore && stretches <= 1);
    }
    if (ChronoUnit.DAYS.between(last, day) > rules.breakDays()) {
      return false;
    }
    long days = ChronoUnit.DAYS.between(start, day);
    return days >= whole || (knownBefore && stretches <= 1) || days >= (known ? (whole + 1) / 2 : whole);
  }
}
