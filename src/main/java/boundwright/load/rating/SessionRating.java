package boundwright.load.rating;

import java.time.LocalDate;

/**
 * How hard the athlete found a session.
 *
 * @param athleteId whose
 * @param date the day
 * @param rating 0 (rest) to 10 (as hard as can be)
 * @param minutes 1 to 600
 */
public record SessionRating(long athleteId, LocalDate date, double rating, double minutes) {
  /** Refuses what {@link SessionLoad#of} refuses. */
  public SessionRating {
    double checked = SessionLoad.of(rating, minutes);
    assert checked >= 0;
  }

  /** Rating x minutes. */
  public double load() {
    return SessionLoad.of(rating, minutes);
  }
}
