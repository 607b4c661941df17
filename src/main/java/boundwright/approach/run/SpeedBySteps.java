package boundwright.approach.run;

import boundwright.athlete.Athlete;
import boundwright.athlete.MeasuredRunUp;
import boundwright.flight.SprintCurve;
import boundwright.inference.LinearBelief;
import boundwright.quantity.Estimate;
import boundwright.quantity.Limits;
import boundwright.quantity.RefusedException;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.function.IntFunction;

/**
 * Speed at the board by the number of steps, and its inverse: how many steps a speed needs. It grows ever less with the
 * steps (Beres et al. 2014; read): {@code v = full - rest exp(-steps / c)}, Bayesian in {@code full} and {@code rest}, the
 * {@code c} that makes this athlete's measured speeds likeliest. The first guess is judgement.
 */
public final class SpeedBySteps {
  private static final double FULL = 8.8;
  private static final double FULL_SD = 1.0;
  private static final double REST = 5.0;
  private static final double REST_SD = 1.2;
  private static final double NOISE = 0.15;
  private static final double NOISE_WORTH = 4;

  private final IntFunction<Estimate> speed;
  private final int measured;

  private SpeedBySteps(IntFunction<Estimate> speed, int measured) {
    this.speed = speed;
    this.measured = measured;
  }

  /** Learned from timed run-ups; those without a speed are passed over. */
  public static SpeedBySteps of(List<MeasuredRunUp> runUps) {
    LinearBelief best = null;
    double bestC = 5;
    double most = Double.NEGATIVE_INFINITY;
    int timed = 0;
    for (double c = 3; c <= 8; c += 0.5) {
      LinearBelief b =
          new LinearBelief(new double[] {FULL, REST}, new double[] {FULL_SD, REST_SD}, NOISE, NOISE_WORTH);
      // a mild pull to 5 steps (judgement)
      double fit = -(c - 5) * (c - 5) / 4.5;
      timed = 0;
      for (MeasuredRunUp r : runUps) {
        Double v = r.speed_mps();
        if (v != null) {
          double[] x = design(r.steps(), c);
          fit += b.logPredictive(x, v, 1);
          b.tell(x, v, 1);
          timed++;
        }
      }
      if (fit > most) {
        most = fit;
        best = b;
        bestC = c;
      }
    }
    LinearBelief chosen = Objects.requireNonNull(best);
    double c = bestC;
    return new SpeedBySteps(n -> chosen.estimate(design(n, c)), timed);
  }

  /**
   * From a fitted sprint: its speed where the steps end. The curve serves for speeds only; the lengths come from the
   * athlete's steps. Its own error is not known, so the interval is that of the length alone.
   */
  public static SpeedBySteps ofSprint(SprintCurve sprint, StepModel steps) {
    return new SpeedBySteps(
        n -> {
          if (n == 0) {
            return new Estimate(0, 0, 0);
          }
          Estimate l = steps.length(n);
          return new Estimate(sprint.speedAt(Math.max(l.p05(), 0)), sprint.speedAt(Math.max(l.p50(), 0)), sprint.speedAt(Math.max(l.p95(), 0)));
        },
        0);
  }

  private static double[] design(int steps, double c) {
    return new double[] {1, -Math.exp(-steps / c)};
  }

  /** Speed at the board after so many steps [m/s], 0 to 26. */
  public Estimate at(int steps) {
    return speed.apply(Athlete.checkSteps(steps));
  }

  /** How many timed run-ups it was learned from. */
  public int measured() {
    return measured;
  }

  /**
   * The fewest steps whose middle speed reaches what is wanted.
   *
   * @param wanted speed at the board [m/s], 2 to 12
   * @throws RefusedException if 26 steps do not reach it
   */
  public int stepsFor(double wanted) {
    Limits.within("board speed", wanted, 2, 12, "m/s", "Women's and men's finals are run at 9 to 10.5.");
    for (int n = 1; n <= Athlete.MAX_STEPS; n++) {
      if (at(n).p50() >= wanted) {
        return n;
      }
    }
    throw new RefusedException(
        String.format(
            Locale.ROOT,
            "%.2f m/s is more than this athlete reaches: %d steps give about %.2f m/s (%.2f to %.2f). Ask for less, or time more run-ups.",
            wanted, Athlete.MAX_STEPS, at(26).p50(), at(26).p05(), at(26).p95()));
  }
}
