package boundwright.runway;

import boundwright.athlete.Surface;
import boundwright.flight.FlightModel;
import boundwright.flight.RunUp;
import boundwright.footfall.Sequence;
import boundwright.quantity.Remembered;
import java.time.LocalDate;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;

/**
 * Remembers advice by everything that it depends on, the model's every figure included, so that a squad's page need not work
 * out sixty windows again when nobody has jumped. What was learned, measured or set since gives another key: nothing has to be
 * forgotten on purpose.
 */
final class AdviceMemory {
  private final Remembered<Key, MarkAdvice> known;

  /** Keeps the {@code most} advices that were asked for last. */
  AdviceMemory(int most) {
    this.known = new Remembered<>(most);
  }

  private record Key(
      FlightModel model, RunUp runUp, Sequence sequence, int steps, Surface surface, CoachSettings settings, LocalDate date,
      @Nullable Double first) {}

  /** The advice for these, worked out only if it is not remembered. */
  MarkAdvice advice(
      FlightModel model,
      RunUp runUp,
      Sequence sequence,
      int steps,
      Surface surface,
      CoachSettings settings,
      LocalDate date,
      @Nullable Double first,
      Supplier<MarkAdvice> work) {
    return known.of(new Key(model, runUp, sequence, steps, surface, settings, date, first), key -> work.get());
  }
}
