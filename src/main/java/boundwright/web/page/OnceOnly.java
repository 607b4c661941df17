package boundwright.web.page;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.function.LongSupplier;

/**
 * Logs a form once, however often it is sent. Every rendered form carries a token; the second sending waits for the
 * first and is told that it was done. A refused form may be sent again. Kept in memory for the last
 * {@value #MOST} forms.
 */
public final class OnceOnly {
  private static final int MOST = 2000;

  private final Map<String, Long> done =
      new LinkedHashMap<>() {
        private static final long serialVersionUID = 1L;

        @Override
        protected boolean removeEldestEntry(Map.Entry<String, Long> eldest) {
          return size() > MOST;
        }
      };

  /** Does the work and answers its number, or empty when this token's work was done before. */
  public synchronized Optional<Long> once(String token, LongSupplier work) {
    if (done.containsKey(token)) {
      return Optional.empty();
    }
    long number = work.getAsLong();
    done.put(token, number);
    return Optional.of(number);
  }
}
