package boundwright.pairing;

import org.jspecify.annotations.Nullable;

/**
 * For whom a phone is paired.
 *
 * @param account number of the account whose device it is; null for the machine itself
 * @param club number of the club whose squad it sees
 */
public record Owner(@Nullable Long account, long club) {
  /** The machine itself, in its own club. */
  public static final Owner MACHINE = new Owner(null, 1);
}
