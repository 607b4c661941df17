package boundwright.account;

import java.time.Instant;
import java.util.Optional;

/** Keeps which login of a department is whose, and who is away to log in there. */
public interface BondRepository {
  /**
   * Keeps a visit and forgets those that ended.
   *
   * @param most how many are waited for at most
   * @return whether there was room for it
   */
  boolean send(Visit visit, Instant now, int most);

  /** Uses a visit up; empty if it is not waited for any more. */
  Optional<Visit> back(String stateHash, Instant now);

  /** Whose login this is. */
  Optional<Bond> of(Identity identity);

  /** The login of an account at this server. */
  Optional<Bond> of(long account, String issuer);

  /** Keeps a bond; refuses a login that is another account's, and a second one of the same account. */
  void add(Bond bond);

  /**
   * Uses a link up by which a password could be set, and keeps this login in its place, both or none; all that let the account in before is
   * gone.
   *
   * @return whose account it is; empty if the link does not hold
   */
  Optional<Long> accept(String linkHash, Identity identity, Instant now);

  /** Forgets the login of an account at this server; whether there was one. */
  boolean remove(long account, String issuer);
}
