package boundwright.runway;

import boundwright.athlete.Surface;
import boundwright.flight.FlightModel;
import boundwright.flight.RunUp;
import boundwright.footfall.Sequence;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;

/**
 * Remembers advice by everything that it depends on, the model's every figure included, so that a squad's page need not work
 * out sixty windows again when nobody has jumped. What was learned, measured or set since gives another key: nothing has to be
 * forgotten on purpose. Safe for many threads; two may work out the same advice at once.
 */
final class AdviceMemory {
  private final int most;
  private final Map<Key, MarkAdvice> known = new LinkedHashMap<>(16, 0.75f, true);

  /** Keeps the {@code most} advices that were asked for last. */
  AdviceMemory(int most) {
    this.most = most;
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
    Key key = new Key(model, runUp, sequence, steps, surface, settings, date, first);
    synchronized (known) {
      MarkAdvice advice = known.get(key);
      if (advice != null) {
        return advice;
      }
    }
    MarkAdvice advice = work.get();
    synchronized (known) {
      known.put(key, advice);
      if (known.size() > most) {
        known.remove(known.keySet().iterator().next());
      }
    }
    return advice;
  }
}
