package boundwright.load;

import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * From this day on a part of the year holds, for one athlete or for the squad.
 *
 * @param athleteId whose, or null: everybody's who has none of their own
 * @param from first day
 * @param season the part of the year
 */
public record SeasonStart(@Nullable Long athleteId, LocalDate from, Season season) {
  /** The part of the year of an athlete on a day: the newest of their own, else the newest of the squad's, else not set. */
  public static Optional<Season> on(List<SeasonStart> all, long athleteId, LocalDate day) {
    return newest(all, athleteId, day).or(() -> newest(all, null, day)).map(SeasonStart::season);
  }

  /** The part of the year of the squad on a day, for everybody who has none of their own. */
  public static Optional<Season> ofSquad(List<SeasonStart> all, LocalDate day) {
    return newest(all, null, day).map(SeasonStart::season);
  }

  private static Optional<SeasonStart> newest(List<SeasonStart> all, @Nullable Long whose, LocalDate day) {
    return all.stream()
        .filter(s -> whose == null ? s.athleteId == null : whose.equals(s.athleteId))
        .filter(s -> !s.from.isAfter(day))
        .max(Comparator.comparing(SeasonStart::from));
  }
}
