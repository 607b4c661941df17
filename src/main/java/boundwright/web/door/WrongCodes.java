package boundwright.web.door;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * Stops whoever tries pairing codes out: after {@link #MOST} wrong ones an address waits {@link #WAIT}. A code has 128 bits and would not be
 * found anyway; this keeps the trying off the database.
 */
public final class WrongCodes {
  /** Wrong codes that are answered as such. */
  public static final int MOST = 5;
  /** How long an address waits then. */
  public static final Duration WAIT = Duration.ofMinutes(10);
  /** Addresses that are kept in mind; the one longest unheard of is forgotten first. */
  private static final int ADDRESSES = 1_000;

  private record Tries(int wrong, Instant last) {}

  private final Clock clock;
  private final Map<String, Tries> byAddress =
      new LinkedHashMap<>(16, 0.75f, true) {
        private static final long serialVersionUID = 1L;

        @Override
        protected boolean removeEldestEntry(Map.Entry<String, Tries> eldest) {
          return size() > ADDRESSES;
        }
      };

  public WrongCodes(Clock clock) {
    this.clock = clock;
  }

  /** Whether this address must wait. */
  public synchronized boolean mustWait(String address) {
    Tries tries = byAddress.get(address);
    return tries != null && tries.wrong() >= MOST && isRecent(tries);
  }

  /** Counts a wrong code. */
  public synchronized void count(String address) {
    Tries before = byAddress.get(address);
    int wrong = before == null || !isRecent(before) ? 0 : before.wrong();
    byAddress.put(address, new Tries(wrong + 1, clock.instant()));
  }

  /** Forgets what an address has tried, because it was let in. */
  public synchronized void forget(String address) {
    byAddress.remove(address);
  }

  private boolean isRecent(Tries tries) {
    return Duration.between(tries.last(), clock.instant()).abs().compareTo(WAIT) < 0;
  }
}
