package boundwright.load;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Session ratings laid out over the days up to today, a day without a rating as rest: a description, never a gate. The figures are
 * those of {@link SessionLoad}.
 *
 * @param ratings oldest first
 * @param week the seven days up to today
 * @param lately weighted mean over 7 days
 * @param longer weighted mean over 28 days
 */
public record RatedDays(List<SessionRating> ratings, SessionLoad.Week week, double lately, double longer) {
  /** Days that the weighted mean of the longer kind looks over. */
  public static final int LONGER = 28;
  /** Days that the other looks over. */
  public static final int LATELY = 7;

  /** From ratings up to {@code today}, oldest first; empty when there are none. The means begin at the first rated day. */
  public static Optional<RatedDays> of(List<SessionRating> ratings, LocalDate today) {
    Map<LocalDate, Double> loads = new HashMap<>();
    List<SessionRating> known = ratings.stream().filter(r -> !r.date().isAfter(today)).toList();
    if (known.isEmpty()) {
      return Optional.empty();
    }
    known.forEach(r -> loads.merge(r.date(), r.load(), Double::sum));
    List<Double> days = new ArrayList<>();
    for (LocalDate d = known.get(0).date(); !d.isAfter(today); d = d.plusDays(1)) {
      days.add(loads.getOrDefault(d, 0.0));
    }
    List<Double> week = new ArrayList<>();
    for (LocalDate d = today.minusDays(6); !d.isAfter(today); d = d.plusDays(1)) {
      week.add(loads.getOrDefault(d, 0.0));
    }
    return Optional.of(
        new RatedDays(
            known, SessionLoad.week(week), SessionLoad.weightedMean(days, LATELY), SessionLoad.weightedMean(days, LONGER)));
  }
}
