package boundwright.pairing;

import java.time.Instant;
import java.util.List;
import java.util.Optional;

/** Keeps phones and the codes that wait for one. Codes and secrets come in as SHA-256, 64 hexadecimal digits. */
public interface PhoneRepository {
  /** Keeps a code and forgets those that ended before {@code made}. */
  void offer(String codeHash, PhoneRights rights, Owner owner, Instant made, Instant until);

  /** The rights that a code gives at this time, if it is kept and runs. */
  Optional<PhoneRights> offered(String codeHash, Instant now);

  /** Forgets all codes that wait. */
  int withdrawAll();

  /** Uses up a code and keeps the phone in one step; empty if the code is not kept or does not run, and nothing changed then. */
  Optional<Phone> take(String codeHash, Instant now, String name, String secretHash, boolean sealed);

  /** The phone with this secret. */
  Optional<Phone> bySecret(String secretHash);

  /** Keeps when a phone was last seen. */
  void seen(long id, Instant now);

  /** All phones, oldest first. */
  List<Phone> all();

  /** Changes what a phone may do; whether there is such a phone. */
  boolean allow(long id, PhoneRights rights);

  /** Shuts a phone out for good; whether there was such a phone. */
  boolean revoke(long id);

  /** Shuts all phones out and forgets all codes that wait; how many phones there were. */
  int revokeAll();
}
