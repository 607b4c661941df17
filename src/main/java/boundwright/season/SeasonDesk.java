package boundwright.season;

import boundwright.quantity.RefusedException;
import java.time.Clock;
import java.time.LocalDate;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import java.util.random.RandomGenerator;

/** Keeps seasons, plans and publishes them. */
public final class SeasonDesk {
  private static final int KEY_BYTES = 16;

  private final SeasonRepository seasons;
  private final Clock clock;
  private final RandomGenerator random;

  /** @param random draws what seasons are known by elsewhere */
  public SeasonDesk(SeasonRepository seasons, Clock clock, RandomGenerator random) {
    this.seasons = seasons;
    this.clock = clock;
    this.random = random;
  }

  /**
   * Keeps a season. One of the same name and first day is kept anew, and its published plans stay.
   *
   * @return its number
   */
  public long keep(SeasonInput season) {
    Optional<SeasonRepository.Kept> same =
        seasons.all().stream().filter(k -> k.name().equals(season.name()) && k.first().equals(season.first())).findFirst();
    if (same.isPresent()) {
      seasons.keep(same.get().id(), season);
      return same.get().id();
    }
    byte[] key = new byte[KEY_BYTES];
    random.nextBytes(key);
    return seasons.add(season, HexFormat.of().formatHex(key), clock.instant()).id();
  }

  /** The season of today, or else the next, or else the last that was. */
  public Optional<SeasonRepository.Kept> current() {
    LocalDate today = LocalDate.now(clock);
    List<SeasonRepository.Kept> all = seasons.all();
    return all.stream()
        .filter(k -> !k.first().isAfter(today) && !k.last().isBefore(today))
        .findFirst()
        .or(() -> all.stream().filter(k -> k.first().isAfter(today)).reduce((a, b) -> b.first().isBefore(a.first()) ? b : a))
        .or(() -> all.stream().findFirst());
  }

  /** A plan of a season that is kept; the plan itself is not. */
  public SeasonPlan plan(long id, Planner planner) {
    return planner.plan(input(id), seasons.published(id));
  }

  /** Publishes a plan as the next version. */
  public SeasonPlan publish(long id, SeasonPlan plan) {
    return seasons.publish(id, plan, clock.instant());
  }

  /** What a season is planned from. */
  public SeasonInput input(long id) {
    return seasons.input(id).orElseThrow(() -> new RefusedException("There is no season with the number " + id + " (any more). Load the page again."));
  }
}
