package boundwright.readiness;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.List;

/**
 * The trend of one test in a squad, by calendar: time in weeks from the first score.
 *
 * @param kind which test
 * @param steps approach steps, 0 from standing
 * @param start day of the first score: week 0
 * @param model the fitted lines; slopes in units of the test per week
 */
public record TestTrend(TestKind kind, int steps, LocalDate start, TrendModel model) {
  /**
   * Fits the scores of one test.
   *
   * @param scores of any athletes and tests; only this one is used, by any protocol
   * @throws boundwright.quantity.RefusedException as {@link TrendModel#fit}
   */
  public static TestTrend of(List<TestScore> scores, TestKind kind, int steps) {
    List<TestScore> mine = scores.stream().filter(s -> s.kind() == kind && s.approachSteps() == steps).toList();
    LocalDate start = mine.stream().map(TestScore::date).min(LocalDate::compareTo).orElse(LocalDate.EPOCH);
    List<TrendModel.Observation> data =
        mine.stream().map(s -> new TrendModel.Observation(s.athleteId(), weeks(start, s.date()), s.value())).toList();
    return new TestTrend(kind, steps, start, TrendModel.fit(data));
  }

  /** Weeks from the first score to this day. */
  public double weeksTo(LocalDate day) {
    return weeks(start, day);
  }

  private static double weeks(LocalDate start, LocalDate day) {
    return ChronoUnit.DAYS.between(start, day) / 7.0;
  }
}
