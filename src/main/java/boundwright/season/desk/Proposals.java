package boundwright.season.desk;

import boundwright.quantity.RefusedException;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.atomic.AtomicLong;

/** The newest proposal of each season, in memory alone. Safe to use from many threads. */
public final class Proposals {
  private final Map<Long, Proposal> newest = new ConcurrentHashMap<>();
  private final AtomicLong last = new AtomicLong();

  /** A number that no other proposal has. */
  public long number() {
    return last.incrementAndGet();
  }

  /** Puts a proposal in the place of the one before. */
  public void offer(Proposal p) {
    newest.put(p.season(), p);
  }

  /** The newest of a season. */
  public Optional<Proposal> of(long season) {
    return Optional.ofNullable(newest.get(season));
  }

  /** The proposal of this number; refused if it was dropped, published or replaced. */
  public Proposal asked(long season, long number) {
    return of(season)
        .filter(p -> p.number() == number)
        .orElseThrow(() -> new RefusedException("That proposal is not there any more: it was published, dropped or replaced. Look at what stands here now."));
  }

  /** Takes a proposal away, if it is still the newest. */
  public void drop(long season, long number) {
    newest.computeIfPresent(season, (id, p) -> p.number() == number ? null : p);
  }
}
