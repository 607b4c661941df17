package boundwright.card;

import boundwright.flight.Forecast;
import boundwright.flight.Forecasts;
import boundwright.footfall.Sequence;
import boundwright.quantity.Estimate;
import boundwright.runway.MarkAdvice;
import boundwright.runway.MarkSettings;
import boundwright.runway.Opener;
import boundwright.runway.Window;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Hand-made advice for the tests of this room; round numbers, no athlete stands behind them. */
final class Fixtures {
  private Fixtures() {}

  static MarkAdvice advice(String letters, int steps) {
    return advice(letters, steps, 0.03);
  }

  /** The mark half way between last contact and landing; the window from the two 95 % points, null if they cross. */
  static MarkAdvice advice(String letters, int steps, double relativeSd) {
    Sequence sequence = Sequence.parse(letters);
    Forecast forecast = Forecasts.plausible(sequence, steps, relativeSd);
    int n = sequence.size();
    double mark = (forecast.mean(n) + forecast.mean(n + 1)) / 2;
    double least = forecast.mean(n) + 0.3 + 1.2816 * forecast.sd(n);
    double most = forecast.mean(n + 1) - 0.3 - 1.2816 * forecast.sd(n + 1);
    @Nullable Window window = least <= most ? new Window(least, most) : null;
    double chance = window == null ? 0.71 : 0.95;
    Estimate start = steps == 0 ? new Estimate(0, 0, 0) : Estimate.normal(1.45 * steps - 0.6, 0.15);
    Estimate speed = steps == 0 ? new Estimate(0, 0, 0) : Estimate.normal(3 + 0.5 * steps, 0.3);
    List<Opener> openers =
        window != null ? List.of() : List.of(new Opener(Opener.Way.FEWER_CONTACTS, "With 4 contacts the window is 0.4 m wide."));
    List<String> warnings =
        window != null
            ? List.of()
            : List.of("No mark reaches 90 %: the landing spreads wider than the last flight is long. The best mark gives 71 %.");
    return new MarkAdvice(
        forecast, MarkSettings.DEFAULT, mark, chance, chance + 0.02 > 1 ? 1 : chance + 0.02, window, start, steps == 0 ? 0 : 2, speed,
        mark + start.p95(), forecast.landing().p95() + start.p95(), openers, "From 12 reps, 8 of them measured.",
        "Fairly sure: the landing to ± 30 cm, nine times in ten.", warnings);
  }
}
