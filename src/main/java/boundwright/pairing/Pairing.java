package boundwright.pairing;

import boundwright.quantity.PlainText;
import boundwright.quantity.RefusedException;
import boundwright.quantity.Secrets;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import java.util.random.RandomGenerator;

/**
 * Lets phones in: hands out codes that one phone can use once within ten minutes, and knows the phones by a secret that only they
 * have. Codes and secrets have 128 bits, so a fast hash is enough: nobody can try them all.
 */
public final class Pairing {
  /** How long a code waits for its phone. */
  public static final Duration CODE_LASTS = Duration.ofMinutes(10);
  /** How finely it is kept when a phone was last seen: a write for each request would hold up those who log. */
  public static final Duration SEEN_STEP = Duration.ofMinutes(5);
  /** Longest name of a phone, in characters. */
  public static final int LONGEST_NAME = 60;

  private final PhoneRepository phones;
  private final Clock clock;
  private final RandomGenerator random;

  /** @param random a generator that cannot be guessed */
  public Pairing(PhoneRepository phones, Clock clock, RandomGenerator random) {
    this.phones = phones;
    this.clock = clock;
    this.random = random;
  }

  /**
   * A code that waits for a phone.
   *
   * @param text 32 hexadecimal digits
   * @param rights what the phone that uses it may do
   * @param until when it ends
   */
  public record Code(String text, PhoneRights rights, Instant until) {}

  /** A phone that was just let in and the secret that it must send from now on. */
  public record LetIn(Phone phone, String secret) {}

  /** A new code for the machine's own club. */
  public Code offer(PhoneRights rights) {
    return offer(rights, Owner.MACHINE);
  }

  /** A new code. */
  public Code offer(PhoneRights rights, Owner owner) {
    Instant now = clock.instant();
    Code code = new Code(Secrets.fresh(random), rights, now.plus(CODE_LASTS));
    phones.offer(Secrets.hash(code.text()), rights, owner, now, code.until());
    return code;
  }

  /** The rights that a code gives now; empty if it is wrong, used, withdrawn or ended. Uses nothing up: cameras open addresses by themselves. */
  public Optional<PhoneRights> offered(String code) {
    return Secrets.looksLike(code) ? phones.offered(Secrets.hash(code), clock.instant()) : Optional.empty();
  }

  /**
   * Uses a code up and lets the phone in; empty if the code is wrong, used, withdrawn or ended.
   *
   * @param sealed whether nobody on the network could read along
   * @throws RefusedException if the name is empty or too long; the code still waits then
   */
  public Optional<LetIn> pair(String code, String name, boolean sealed) {
    String called = PlainText.checked(name.strip());
    if (called.isEmpty() || called.codePointCount(0, called.length()) > LONGEST_NAME || called.chars().anyMatch(Character::isISOControl)) {
      throw new RefusedException(
          "The name of this phone has " + called.codePointCount(0, called.length()) + " characters; 1 to " + LONGEST_NAME
              + " are taken. Write whose phone it is.");
    }
    if (!Secrets.looksLike(code)) {
      return Optional.empty();
    }
    String secret = Secrets.fresh(random);
    return phones.take(Secrets.hash(code), clock.instant(), called, Secrets.hash(secret), sealed).map(p -> new LetIn(p, secret));
  }

  /** The phone with this secret, if it is still let in. */
  public Optional<Phone> known(String secret, boolean sealed) {
    if (!Secrets.looksLike(secret)) {
      return Optional.empty();
    }
    Optional<Phone> found = phones.bySecret(Secrets.hash(secret)).filter(p -> p.sealed() || !sealed);
    Instant now = clock.instant();
    found.filter(p -> Duration.between(p.lastSeen(), now).abs().compareTo(SEEN_STEP) >= 0).ifPresent(p -> phones.seen(p.id(), now));
    return found;
  }
}
