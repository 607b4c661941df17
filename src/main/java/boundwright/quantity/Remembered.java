package boundwright.quantity;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/**
 * Remembers what was worked out, each by a key with all that it depends on; those asked for last are kept, and in memory only. Safe for many
 * threads: two may work out the same at once, and both are given the first that is done.
 *
 * @param <K> the key; two that are equal have one answer
 * @param <V> the answer, never changed once it is made
 */
public final class Remembered<K, V> {
  private final int most;
  private final Map<K, V> known = new LinkedHashMap<>(16, 0.75f, true);

  /** @param most answers that are kept, 1 or more */
  public Remembered(int most) {
    this.most = most;
  }

  /** The answer by this key, worked out only if it is not remembered. */
  public V of(K key, Function<K, V> work) {
    V there = known(key);
    return there != null ? there : kept(key, work.apply(key));
  }

  private @Nullable V known(K key) {
    synchronized (known) {
      return known.get(key);
    }
  }

  private V kept(K key, V fresh) {
    synchronized (known) {
      V first = known.putIfAbsent(key, fresh);
      if (known.size() > most) {
        known.remove(known.keySet().iterator().next());
      }
      return first != null ? first : fresh;
    }
  }
}
