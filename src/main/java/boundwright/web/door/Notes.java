package boundwright.web.door;

import boundwright.account.Account;
import boundwright.account.AccountRepository;
import boundwright.account.Noted;
import boundwright.account.Session;
import boundwright.pairing.Phone;
import java.time.Clock;
import org.jspecify.annotations.Nullable;

/** Keeps what was done, by whom, for good. */
public final class Notes {
  private final AccountRepository kept;
  private final Clock clock;

  public Notes(AccountRepository kept, Clock clock) {
    this.kept = kept;
    this.clock = clock;
  }

  /**
   * Adds a line.
   *
   * @param what in words
   * @param about of whom or what, by number, never by name: the line outlives whoever is erased
   */
  public void keep(Caller by, String what, String about) {
    kept.note(new Noted(clock.instant(), by.club(), account(by), by.said(), what, about));
  }

  /** Adds a line about somebody who just came in, with which account. */
  public void came(Account account, long club, String what) {
    kept.note(new Noted(clock.instant(), club, account.id(), account.login(), what, ""));
  }

  private static @Nullable Long account(Caller by) {
    Session with = by.session();
    Phone phone = by.phone();
    return with != null ? (Long) with.account().id() : phone == null ? null : phone.owner().account();
  }
}
