package boundwright.runway;

import boundwright.quantity.LengthUnit;
import boundwright.runway.Tapes.Wish;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Supplier;

/**
 * Remembers where the tape of a group of wishes was best laid, and the chances of each advice: after a tap one athlete's marks are new, and the
 * groups without them stay where they were. Advice is told apart as an object, because whoever keeps it hands the same one out again. Safe for
 * many threads; two may work out the same at once.
 */
final class TapeMemory {
  /** More than six hundred athletes have in two plans: fewer would be forgotten in the order in which they are asked for again. */
  private static final int MOST_CHANCES = 8_000;
  private static final int MOST_PLACES = 300;

  private final Map<Same, MarkChances> chances = new LinkedHashMap<>(16, 0.75f, true);
  private final Map<Group, Double> places = new LinkedHashMap<>(16, 0.75f, true);

  private record Group(List<Same> wishes, LengthUnit unit) {
    static Group of(List<Wish> wishes, LengthUnit unit) {
      return new Group(wishes.stream().map(w -> new Same(w.advice())).toList(), unit);
    }
  }

  private static final class Same {
    private final MarkAdvice advice;

    Same(MarkAdvice advice) {
      this.advice = advice;
    }

    @Override
    @SuppressWarnings("ReferenceEquality") // one object is meant; a record's own equality goes through every figure
    public boolean equals(Object other) {
      return other instanceof Same same && same.advice == advice;
    }

    @Override
    public int hashCode() {
      return System.identityHashCode(advice);
    }
  }

  MarkChances chances(MarkAdvice advice, Supplier<MarkChances> work) {
    return remembered(chances, new Same(advice), work, MOST_CHANCES);
  }

  double place(List<Wish> group, LengthUnit unit, Supplier<Double> work) {
    return remembered(places, Group.of(group, unit), work, MOST_PLACES);
  }

  private static <K, V> V remembered(Map<K, V> known, K key, Supplier<V> work, int most) {
    synchronized (known) {
      V there = known.get(key);
      if (there != null) {
        return there;
      }
    }
    V fresh = work.get();
    synchronized (known) {
      known.put(key, fresh);
      if (known.size() > most) {
        known.remove(known.keySet().iterator().next());
      }
    }
    return fresh;
  }
}
