package boundwright.quantity;

import java.util.LinkedHashMap;
import java.util.Map;

/** Remembers what was asked about, so that the same entry sent a second time is taken. Kept in memory only; after a restart it asks again. */
public final class AskedOnce {
  private static final int MOST = 500;

  private final Map<String, Boolean> asked =
      new LinkedHashMap<>() {
        private static final long serialVersionUID = 1L;

        @Override
        protected boolean removeEldestEntry(Map.Entry<String, Boolean> eldest) {
          return size() > MOST;
        }
      };

  /** Whether it is to be asked about now: the first time of this entry. */
  public synchronized boolean first(String entry) {
    return asked.put(entry, true) == null;
  }
}
