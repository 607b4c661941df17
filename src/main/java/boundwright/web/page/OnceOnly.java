package boundwright.web.page;

import boundwright.store.Workbench;
import java.util.Optional;
import java.util.function.LongSupplier;

/**
 * Takes a form once, however often it is sent. Every rendered form carries a token; the second sending is told that it was done, also
 * after the program was started anew. A refused form may be sent again.
 */
public final class OnceOnly {
  private final Workbench bench;

  /** Remembers in this data folder. */
  public OnceOnly(Workbench bench) {
    this.bench = bench;
  }

  /** Does the work and answers its number, or empty when this token's work was done before. */
  public Optional<Long> once(String token, LongSupplier work) {
    return bench.once(token, work);
  }
}
