package boundwright.season.ladder;

import boundwright.readiness.GateCase;
import boundwright.readiness.GateRules;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayDeque;
import java.util.Deque;
import org.jspecify.annotations.Nullable;

/**
 * When the least stay at an approach will be over, by the gate's own rule (see {@link boundwright.readiness.TimeHere}), told day by day:
 * first what was done, then what is offered. A stretch lasts as long as a whole session is to be expected within the days that the gate
 * takes for a break; so a seldom offered drill, or an athlete who comes seldom, begins later or not at all. Where the gate could ask less,
 * this asks as much or more. Mutable.
 */
final class LeastStay {
  private static final double ALMOST = 1 - 1e-9;

  private final GateRules.Stay rules;
  private final int whole;
  private final boolean knownBefore;
  private final Deque<Told> lately = new ArrayDeque<>();
  /** The last day that belonged to a stretch of a whole stay. */
  private @Nullable LocalDate known;
  private int stretches;
  private @Nullable LocalDate start;
  private @Nullable LocalDate last;
  private double sum;

  private record Told(LocalDate day, double share) {}

  /**
   * For one approach.
   *
   * @param knownBefore whether the coach had the athlete at a longer approach before
   */
  LeastStay(GateRules.Stay rules, int steps, boolean knownBefore) {
    this.rules = rules;
    this.whole = rules.days(steps);
    this.knownBefore = knownBefore;
  }

  /** A day on which a session from there or farther was done (1), or a share of one is expected; days in order. */
  void tell(LocalDate day, double share) {
    boolean gap = last != null && ChronoUnit.DAYS.between(last, day) > rules.breakDays();
    if (gap) {
      lately.clear();
      sum = 0;
    }
    while (!lately.isEmpty() && ChronoUnit.DAYS.between(lately.peekFirst().day(), day) >= rules.breakDays()) {
      sum -= lately.removeFirst().share();
    }
    lately.addLast(new Told(day, share));
    sum += share;
    boolean alive = sum >= ALMOST;
    if (gap || !alive) {
      stretches += start != null ? 1 : 0;
      start = null;
    }
    if (start == null && alive) {
      start = day;
    }
    last = day;
    if (start != null && ChronoUnit.DAYS.between(start, day) >= whole) {
      known = day;
    }
  }

  /** Whether it is over on a day, none earlier than the last that was told. */
  boolean over(LocalDate day) {
    boolean nothingAsked = whole == 0 || (knownBefore && stretches == 0);
    if (start == null || last == null) {
      return nothingAsked;
    }
    if (ChronoUnit.DAYS.between(last, day) > rules.breakDays()) {
      return false;
    }
    long days = ChronoUnit.DAYS.between(start, day);
    return nothingAsked || days >= (knownOn(day) ? (whole + 1) / 2 : whole);
  }

  /** Whether the gate still sees a whole stay: it looks back so far, and may meet the first day of it late by a break. */
  private boolean knownOn(LocalDate day) {
    return knownBefore || (known != null && ChronoUnit.DAYS.between(known, day) <= GateCase.LOOK_BACK_DAYS - whole - rules.breakDays());
  }
}
