package boundwright.web.door;

import boundwright.account.AccountRepository;
import boundwright.account.Accounts;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.List;

/**
 * Stops whoever tries out codes of phones and links: after {@link #MOST} wrong ones within {@link #WAIT} an address waits. They are counted in
 * the store, beside wrong passwords, so several servers count together and none forgets when it is opened anew.
 */
public final class WrongCodes {
  /** Wrong codes that are answered as such. */
  public static final int MOST = 5;
  /** How far back they are counted. */
  public static final Duration WAIT = Accounts.WAIT;

  private final AccountRepository kept;
  private final Clock clock;

  public WrongCodes(AccountRepository kept, Clock clock) {
    this.kept = kept;
    this.clock = clock;
  }

  /** Whether this address must wait. */
  public boolean mustWait(String address) {
    return kept.wrongSince(by(address), since(), clock.instant()) >= MOST;
  }

  /** Counts a wrong code. */
  public void count(String address) {
    kept.wrong(List.of(by(address)), clock.instant(), since());
  }

  /** Forgets what an address has tried, because it was let in. */
  public void forget(String address) {
    kept.forgive(by(address));
  }

  private Instant since() {
    return clock.instant().minus(WAIT);
  }

  private static String by(String address) {
    return "code from " + address;
  }
}
