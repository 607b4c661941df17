package boundwright.load.rating;

import boundwright.load.account.DayLoad;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;

/**
 * Seven days of session ratings, described and never judged; see {@link SessionLoad} for sources and standing.
 *
 * @param last the last of the seven days
 * @param sessions days with logged work among them
 * @param rated days with a rating among them; with fewer than {@code sessions} the figures are too low
 * @param week sum, monotony and strain
 */
public record RatedWeek(LocalDate last, int sessions, int rated, SessionLoad.Week week) {
  /**
   * The newest {@code weeks} weeks, oldest first, counted back from {@code today} as {@link boundwright.load.account.LegWeek} does.
   *
   * @param ratings of one athlete
   * @param days with work of the same athlete
   * @param weeks at least 1
   */
  public static List<RatedWeek> of(List<SessionRating> ratings, List<DayLoad> days, LocalDate today, int weeks) {
    List<RatedWeek> out = new ArrayList<>();
    for (int w = weeks - 1; w >= 0; w--) {
      LocalDate last = today.minusDays(7L * w);
      List<Double> loads = daily(ratings, last.minusDays(6), last);
      int sessions = (int) days.stream().filter(d -> !d.date().isAfter(last) && d.date().isAfter(last.minusDays(7))).count();
      int rated = (int) ratings.stream().map(SessionRating::date).filter(d -> !d.isAfter(last) && d.isAfter(last.minusDays(7))).distinct().count();
      out.add(new RatedWeek(last, sessions, rated, SessionLoad.week(loads)));
    }
    return List.copyOf(out);
  }

  /**
   * The exponentially weighted mean of the daily load from the first rating up to {@code today}.
   *
   * @param n days, 7 or 28
   * @return empty without a rating
   */
  public static Optional<Double> weightedMean(List<SessionRating> ratings, LocalDate today, int n) {
    return ratings.stream()
        .map(SessionRating::date)
        .filter(d -> !d.isAfter(today))
        .min(LocalDate::compareTo)
        .map(first -> SessionLoad.weightedMean(daily(ratings, first, today), n));
  }

  /** Loads day by day; 0 on days of rest. */
  private static List<Double> daily(List<SessionRating> ratings, LocalDate from, LocalDate to) {
    List<Double> out = new ArrayList<>(Collections.nCopies((int) ChronoUnit.DAYS.between(from, to) + 1, 0.0));
    for (SessionRating r : ratings) {
      if (!r.date().isBefore(from) && !r.date().isAfter(to)) {
        int at = (int) ChronoUnit.DAYS.between(from, r.date());
        out.set(at, out.get(at) + r.load());
      }
    }
    return out;
  }
}
