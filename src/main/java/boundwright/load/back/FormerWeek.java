package boundwright.load.back;

import boundwright.footfall.Foot;
import boundwright.load.account.ContactWeights;
import boundwright.load.account.DayLoad;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * What a leg carried before its days off, from the log: the mean week of the four up to its last day with a jump contact.
 *
 * @param last that day
 * @param units a week [standing-bound contacts]
 * @param weeks how many weeks it rests on, 1 to {@value #WEEKS}
 */
public record FormerWeek(LocalDate last, double units, int weeks) {
  /** Weeks that are looked at. */
  public static final int WEEKS = 4;

  /**
   * From the log; empty when it has no contact of this leg before.
   *
   * @param days with work
   * @param before the first day off, or the day on which it is asked; days from it on are passed over
   * @param first first day of the whole log
   */
  public static Optional<FormerWeek> of(List<DayLoad> days, Foot leg, LocalDate before, LocalDate first, ContactWeights weights) {
    return days.stream()
        .filter(d -> d.date().isBefore(before) && d.contacts(leg) > 0)
        .map(DayLoad::date)
        .max(Comparator.naturalOrder())
        .map(
            last -> {
              long known = ChronoUnit.DAYS.between(first, last) + 1;
              int weeks = (int) Math.max(1, Math.min(WEEKS, known / 7));
              LocalDate from = last.minusDays(7L * weeks);
              double sum =
                  days.stream()
                      .filter(d -> d.date().isAfter(from) && !d.date().isAfter(last))
                      .mapToDouble(d -> weights.of(d).units(leg))
                      .sum();
              return new FormerWeek(last, sum / weeks, weeks);
            });
  }
}
