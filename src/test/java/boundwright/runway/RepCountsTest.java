package boundwright.runway;

import static org.assertj.core.api.Assertions.assertThat;

import boundwright.flight.Forecast;
import boundwright.flight.Forecasts;
import boundwright.footfall.Sequence;
import java.util.Random;
import org.junit.jupiter.api.Test;

/**
 * What is promised of a rep against counting reps of a process that knows nothing of the model: a last contact is drawn, then
 * a last flight, and the rep counts if the landing is in the sand and the last contact before it, each by its margin.
 */
class RepCountsTest {
  private static final Sequence RRL = Sequence.parse("RRL");
  private static final int REPS = 40_000;

  @Test
  void whatIsAskedIsKeptAtEveryMarkThatWorks() {
    MarkSettings asked = new MarkSettings(0.9, 0.3, 0.3);
    long seed = 12;
    Random r = new Random(seed);
    int works = 0;
    for (double flight = 1.2; flight <= 2.6; flight += 0.05) {
      double lastSd = 0.1 + 0.3 * r.nextDouble();
      double flightSd = 0.1 + 0.2 * r.nextDouble();
      MarkChances c = MarkChances.of(forecast(6, lastSd, flight, flightSd), asked);
      if (c.window().isPresent()) {
        works++;
        Window w = c.window().get();
        for (double mark : new double[] {w.min_m(), w.max_m(), c.best()}) {
          double kept = kept(mark, 6, lastSd, flight, flightSd, asked, r);
          assertThat(kept)
              .as("seed %s: last contact 6 +- %.2f, last flight %.2f +- %.2f, mark %.3f", seed, lastSd, flight, flightSd, mark)
              .isGreaterThan(0.9 - 4 * Math.sqrt(0.09 / REPS));
        }
      }
    }
    assertThat(works).isGreaterThan(10);
  }

  private static Forecast forecast(double last, double lastSd, double flight, double flightSd) {
    double landingSd = Math.hypot(lastSd, flightSd);
    return Forecasts.of(
        RRL, 4, new double[] {last / 2, last, last + flight}, new double[] {lastSd, lastSd, landingSd}, 12);
  }

  private static double kept(double mark, double last, double lastSd, double flight, double flightSd, MarkSettings s, Random r) {
    int counts = 0;
    for (int i = 0; i < REPS; i++) {
      double contact = last + lastSd * r.nextGaussian();
      double landing = contact + flight + flightSd * r.nextGaussian();
      counts += landing >= mark + s.sandMargin_m() && contact <= mark - s.clearMargin_m() ? 1 : 0;
    }
    return counts / (double) REPS;
  }
}
