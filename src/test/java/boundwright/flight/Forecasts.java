package boundwright.flight;

import boundwright.footfall.Flight;
import boundwright.footfall.Sequence;

/** Hand-made forecasts for the tests of other rooms; round numbers, no athlete stands behind them. */
public final class Forecasts {
  private Forecasts() {}

  /**
   * A forecast with these means and standard deviations [m] of contacts 2, 3, ... and the landing; the last flight scatters by
   * itself, so the landing moves with the last contact.
   */
  public static Forecast of(Sequence sequence, int steps, double[] mean, double[] sd, int repsAtRung) {
    int n = sequence.size();
    double together = n == 1 ? 0.08 * 0.08 : sd[n - 2] * sd[n - 2];
    return new Forecast(sequence, steps, mean, sd, together, 0.08, repsAtRung);
  }

  /** Hops of 2.0 m, bounds of 1.7 m and a jump of 2.2 m from standing, 0.1 m more for every step, spread 7 % shared. */
  public static Forecast plausible(Sequence sequence, int steps, double relativeSd) {
    double[] mean = new double[sequence.size()];
    double[] sd = new double[sequence.size()];
    double at = 0;
    for (Flight flight : sequence.flights()) {
      at += 0.1 * steps + switch (flight.kind()) {
        case HOP -> 2.0;
        case BOUND -> 1.7;
        case JUMP -> 2.2;
      };
      mean[flight.order() - 1] = at;
      sd[flight.order() - 1] = Math.hypot(0.08, relativeSd * at);
    }
    return of(sequence, steps, mean, sd, steps == 0 ? 12 : 0);
  }

  /**
   * What would be told of an athlete whose last contact is at {@code last} and last flight {@code flight} long [m], each known
   * to a variance [m2] of its own and scattered from rep to rep by another.
   */
  public static Inquiry inquiry(
      double last, double lastVar, double flight, double flightVar, double lastScatter, double flightScatter) {
    double lastLearned = lastVar * lastScatter / (lastVar + lastScatter);
    double flightLearned = flightVar * flightScatter / (flightVar + flightScatter);
    return new Inquiry(
        last,
        last + flight,
        new double[] {lastVar, lastVar, lastVar + flightVar},
        new double[] {lastScatter, lastScatter, lastScatter + flightScatter},
        sharpness(lastLearned + lastScatter, flightLearned + flightScatter),
        sharpness(lastLearned + lastScatter, flightVar + flightScatter),
        sharpness(lastVar + lastScatter, flightVar + flightScatter));
  }

  private static Sharpness sharpness(double last, double flight) {
    return new Sharpness(Math.sqrt(last), Math.sqrt(last + flight), last);
  }
}
