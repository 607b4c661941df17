package boundwright.takeoffs;

import boundwright.athlete.Athlete;
import boundwright.athlete.Surface;
import boundwright.flight.FlightModel;
import boundwright.flight.Forecast;
import boundwright.flight.RunUp;
import boundwright.footfall.Foot;
import boundwright.footfall.Sequence;
import java.time.LocalDate;
import java.util.List;
import java.util.function.IntFunction;

/**
 * The first guess of an athlete's lengths, on which their own are learned as deviations: flights from what is known of their last
 * flight off a short run, running steps from their run-up. Standing: judgement; nothing but the first guess rests on it.
 */
final class Lengths {
  /** Beyond this many steps a run-up is no short one, and jumps in a row no longer gain by it (judgement). */
  private static final int MOST_STEPS = 12;
  /** A flight that lands upright on one foot, of one that ends in the sand at full stretch (judgement). */
  private static final double ON_ONE_FOOT = 0.75;
  /** Running steps after a landing, of those of the run-up (judgement). */
  private static final double AFTER_LANDING = 0.92;

  private final double[] sand = new double[MOST_STEPS + 1];
  private final double[] placement = new double[MOST_STEPS + 1];
  private final double[] step = new double[MOST_STEPS + 2];
  private final double sandSd;

  /**
   * @param model what is known of the athlete's flights; asked for the day after {@code date}, so that today's form is not taken for theirs
   * @param runUp their run-up for a number of steps
   */
  Lengths(FlightModel model, IntFunction<RunUp> runUp, LocalDate date) {
    Sequence one = Sequence.of(List.of(Foot.RIGHT));
    double sd = 0;
    double before = 0;
    for (int s = 0; s <= MOST_STEPS; s++) {
      Forecast f = model.forecast(one, s, Surface.TRACK, date.plusDays(1));
      sand[s] = f.mean(2);
      placement[s] = f.sd(1);
      sd = s == RunJumpShape.USUAL_STEPS ? f.sd(2) / f.mean(2) : sd;
      double run = runUp.apply(s + 1).length().p50();
      step[s + 1] = run - before;
      before = run;
    }
    sandSd = sd;
  }

  /** Of the run-up's steps those that the i-th take-off is worth: one take-off costs about what one running step wins (judgement). */
  private static int worth(int steps, int running, int jump) {
    return Math.min(MOST_STEPS, Athlete.checkSteps(steps) + (jump - 1) * (running - 1));
  }

  /** A flight that ends in the sand [m]. */
  double sand(int steps, int running, int jump) {
    return sand[worth(steps, running, jump)];
  }

  /** A flight that lands on the free leg [m]. */
  double flight(int steps, int running, int jump) {
    return ON_ONE_FOOT * sand(steps, running, jump);
  }

  /** A running step after that flight, 1 for the first [m]. */
  double step(int steps, int running, int jump, int place) {
    return AFTER_LANDING * step[Math.min(MOST_STEPS, worth(steps, running, jump) + place)];
  }

  /** How far the first contact falls from its mark, standard deviation [m]. */
  double placement(int steps) {
    return placement[Math.min(MOST_STEPS, steps)];
  }

  /** How well the flight into the sand is known before any rep of this kind, as a part of it. */
  double sandSd() {
    return sandSd;
  }
}
