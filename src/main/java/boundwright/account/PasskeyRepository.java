package boundwright.account;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** Keeps passkeys and what their devices are asked to sign. */
public interface PasskeyRepository {
  /** Keeps a challenge and forgets those that ended. */
  void ask(String challenge, @Nullable Long account, Instant now, Instant until);

  /** Uses a challenge up; whether it was kept for this account (null: to log in) and runs. */
  boolean answered(String challenge, @Nullable Long account, Instant now);

  /** Keeps a passkey; refuses one that is kept already. */
  void add(Passkey passkey);

  /** The passkey with this number. */
  Optional<Passkey> byCredential(String credential);

  /** Passkeys of an account, oldest first. */
  List<Passkey> of(long account);

  /** Keeps how often it was used. */
  void used(String credential, long counter);

  /** Forgets a passkey of an account; whether there was one. */
  boolean remove(long account, String credential);
}
