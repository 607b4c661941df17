package boundwright.season;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** Where seasons and their published plans are kept. A published plan is never changed and never lost; the next one is put beside it. */
public interface SeasonRepository {
  /**
   * A season that is kept.
   *
   * @param id number in the store
   * @param key 32 hexadecimal digits, drawn once: what calendars elsewhere know its events by
   * @param name as the coach calls it
   * @param first first day
   * @param last last day
   * @param published newest version, 0 before the first
   * @param edition how often it was entered or changed, 1 the first time
   * @param planned the edition of which the newest version was made, 0 before the first
   */
  record Kept(long id, String key, String name, LocalDate first, LocalDate last, int published, int edition, int planned) {
    /** Whether it was changed since its newest version was made. */
    public boolean changedSince() {
      return published > 0 && planned < edition;
    }
  }

  /**
   * A plan and when it held.
   *
   * @param plan with its version
   * @param meets of the season when it was published
   * @param venues likewise
   * @param published from when
   * @param replaced when the next one was published, or null
   */
  record Version(SeasonPlan plan, List<Meet> meets, List<Venue> venues, Instant published, @Nullable Instant replaced) {}

  /**
   * Whose calendar a secret opens.
   *
   * @param seasonId of which season
   * @param athleteId of whom, or null: the squad's
   * @param made when the secret was
   */
  record CalendarKey(long seasonId, @Nullable Long athleteId, Instant made) {}

  /** Keeps a new season; its athletes have the store's numbers. */
  Kept add(SeasonInput season, String key, Instant made);

  /**
   * Keeps what a season is planned from anew, as one more edition; what it was before and plans that were published stay. Nothing is
   * kept if nothing is otherwise.
   */
  void keep(long id, SeasonInput season);

  /** All seasons with somebody in them, the latest first. */
  List<Kept> all();

  /** One of them. */
  Optional<Kept> byId(long id);

  /** What a season is planned from; athletes have the names of today. */
  Optional<SeasonInput> input(long id);

  /** What a season was planned from in an edition; without those who were erased since. */
  Optional<SeasonInput> input(long id, int edition);

  /** Publishes a plan as the next version: all of it or nothing, on disk when it returns. */
  SeasonPlan publish(long id, SeasonPlan plan, Instant at);

  /** The newest published plan. */
  Optional<SeasonPlan> published(long id);

  /** All published plans, oldest first. */
  List<Version> versions(long id);

  /** Takes a season away with all that was planned in it. */
  boolean remove(long id);

  /** Keeps the hash of a secret in place of the one before. */
  void keepSecret(String hash, CalendarKey key);

  /** Whose calendar it opens. */
  Optional<CalendarKey> bySecret(String hash);

  /** The calendars of a season that have a secret. */
  List<CalendarKey> secrets(long seasonId);

  /** Shuts a calendar: no address opens it. */
  void dropSecret(long seasonId, @Nullable Long athleteId);
}
