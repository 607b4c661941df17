package boundwright.season.calendar;

import boundwright.quantity.Secrets;
import boundwright.season.SeasonRepository;
import boundwright.season.SeasonRepository.CalendarKey;
import java.time.Clock;
import java.util.Optional;
import java.util.random.RandomGenerator;
import org.jspecify.annotations.Nullable;

/**
 * The secret addresses of calendars: who knows one may read that calendar and nothing else. A secret has 128 bits, so a fast hash is enough,
 * and only the hash is kept: the address is shown once, when it is made. Making it anew shuts the one before.
 */
public final class CalendarAddresses {
  private final SeasonRepository seasons;
  private final Clock clock;
  private final RandomGenerator random;

  /** @param random a generator that cannot be guessed */
  public CalendarAddresses(SeasonRepository seasons, Clock clock, RandomGenerator random) {
    this.seasons = seasons;
    this.clock = clock;
    this.random = random;
  }

  /**
   * A new secret; the one before opens nothing from now on.
   *
   * @param athleteId whose calendar, or null: the squad's
   * @return 32 hexadecimal digits, kept nowhere
   */
  public String renew(long seasonId, @Nullable Long athleteId) {
    String secret = Secrets.fresh(random);
    seasons.keepSecret(Secrets.hash(secret), new CalendarKey(seasonId, athleteId, clock.instant()));
    return secret;
  }

  /** Whose calendar a secret opens now. It is looked for by its hash, so how long that takes says nothing of the secret. */
  public static Optional<CalendarKey> opens(SeasonRepository seasons, String secret) {
    return Secrets.looksLike(secret) ? seasons.bySecret(Secrets.hash(secret)) : Optional.empty();
  }
}
