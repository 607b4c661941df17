package boundwright.runway;

import boundwright.quantity.LengthUnit;
import boundwright.quantity.Remembered;
import boundwright.runway.Tapes.Wish;
import java.util.List;
import java.util.function.Supplier;

/**
 * Remembers where the tape of a group of wishes was best laid, and the chances of each advice: after a tap one athlete's marks are new, and the
 * groups without them stay where they were.
 */
final class TapeMemory {
  /** More than six hundred athletes have in two plans: fewer would be forgotten in the order in which they are asked for again. */
  private static final int MOST_CHANCES = 8_000;
  private static final int MOST_PLACES = 300;

  private final Remembered<SameAdvice, MarkChances> chances = new Remembered<>(MOST_CHANCES);
  private final Remembered<Group, Double> places = new Remembered<>(MOST_PLACES);

  private record Group(List<SameAdvice> wishes, LengthUnit unit) {}

  MarkChances chances(MarkAdvice advice, Supplier<MarkChances> work) {
    return chances.of(new SameAdvice(advice), k -> work.get());
  }

  double place(List<Wish> group, LengthUnit unit, Supplier<Double> work) {
    return places.of(new Group(group.stream().map(w -> new SameAdvice(w.advice())).toList(), unit), k -> work.get());
  }
}
