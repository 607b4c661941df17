package boundwright.store;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.Function;

/**
 * What texts were read as, so that a text that is asked for again is not read again; the newest are remembered. What it is read as must
 * depend on the text alone and never be changed. Safe to use from many threads.
 */
final class ReadOnce<T> {
  private final int most;
  private final Function<String, T> read;
  private final Map<String, T> known = new LinkedHashMap<>(16, 0.75f, true);

  /** @param most texts that are remembered */
  ReadOnce(int most, Function<String, T> read) {
    this.most = most;
    this.read = read;
  }

  T of(String text) {
    synchronized (known) {
      T there = known.get(text);
      if (there != null) {
        return there;
      }
    }
    T fresh = read.apply(text);
    synchronized (known) {
      known.put(text, fresh);
      while (known.size() > most) {
        known.remove(known.keySet().iterator().next());
      }
    }
    return fresh;
  }
}
