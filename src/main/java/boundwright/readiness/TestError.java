package boundwright.readiness;

import boundwright.evidence.Source;
import boundwright.evidence.Sources;
import boundwright.quantity.Interval;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/**
 * The error that is held against a change in a test: from the squad's own repeats when there are enough, otherwise the upper end
 * of what is published, otherwise none. Values are in the unit of the test.
 *
 * @param kind which test
 * @param te typical error
 * @param smallestWorthwhile 0.2 of the spread between athletes, or null with fewer than three athletes
 * @param pairs the squad's own repeats found, whether they were enough or not
 * @param own whether {@code te} comes from them
 * @param source where {@code te} comes from
 */
public record TestError(TestKind kind, double te, @Nullable Double smallestWorthwhile, int pairs, boolean own, Source source) {
  /** Own repeats from which the squad's own error is taken (judgement: the interval is then about 0.6 to 2.9 times it). */
  public static final int ENOUGH_PAIRS = 5;
  /** Most days between two repeats, so that training cannot have changed the athlete much (judgement). */
  public static final int MAX_DAYS = 14;

  /** Minimal detectable change at 95 % between two scores. */
  public double detectableChange() {
    return Interval.Z975 * Math.sqrt(2) * te;
  }

  /**
   * The latest two comparable scores of each athlete that lie 1 to {@value #MAX_DAYS} days apart. Two entries of one day are tries
   * of one test, not a repeat.
   *
   * @param scores of any athletes and tests
   */
  public static List<TypicalError.Pair> repeats(List<TestScore> scores, TestKind kind, int steps) {
    Map<Long, List<TestScore>> byAthlete = new TreeMap<>();
    scores.stream()
        .filter(s -> s.kind() == kind && s.approachSteps() == steps)
        .sorted(Comparator.comparing(TestScore::date).thenComparing(TestScore::id))
        .forEach(s -> byAthlete.computeIfAbsent(s.athleteId(), k -> new ArrayList<>()).add(s));
    List<TypicalError.Pair> pairs = new ArrayList<>();
    byAthlete.values().forEach(list -> latestPair(list).ifPresent(pairs::add));
    return List.copyOf(pairs);
  }

  private static Optional<TypicalError.Pair> latestPair(List<TestScore> byDate) {
    for (int later = byDate.size() - 1; later > 0; later--) {
      for (int earlier = later - 1; earlier >= 0; earlier--) {
        TestScore a = byDate.get(earlier);
        TestScore b = byDate.get(later);
        long days = ChronoUnit.DAYS.between(a.date(), b.date());
        if (days >= 1 && days <= MAX_DAYS && a.comparableWith(b)) {
          return Optional.of(new TypicalError.Pair(a.value(), b.value()));
        }
      }
    }
    return Optional.empty();
  }

  /**
   * The error of a test in this squad.
   *
   * @param scores of the squad
   * @param steps approach steps; 0 from standing
   * @param elevenToThirteen whether the published error of 11 to 13 year-olds is to be used
   * @return empty when there are neither repeats nor a published error, or no score at all
   */
  public static Optional<TestError> of(List<TestScore> scores, TestKind kind, int steps, boolean elevenToThirteen) {
    List<TypicalError.Pair> pairs = repeats(scores, kind, steps);
    Optional<TestNorm> norm = TestNorm.of(kind, elevenToThirteen);
    if (pairs.size() >= ENOUGH_PAIRS || (norm.isEmpty() && pairs.size() >= 2)) {
      TypicalError error = TypicalError.ofPairs(pairs);
      if (error.te() > 0) {
        return Optional.of(new TestError(kind, error.te(), pairs.size() < 3 ? null : error.smallestWorthwhile(), pairs.size(), true, Sources.OWN_REPEATS));
      }
    }
    List<Double> latest = latestScores(scores, kind, steps);
    if (norm.isEmpty() || latest.isEmpty()) {
      return Optional.empty();
    }
    double mean = latest.stream().mapToDouble(Double::doubleValue).average().orElseThrow();
    double te = mean * norm.get().highPercent() / 100;
    return Optional.of(new TestError(kind, te, worthwhile(latest, mean, te), pairs.size(), false, norm.get().source()));
  }

  private static @Nullable Double worthwhile(List<Double> latest, double mean, double te) {
    if (latest.size() < 3) {
      return null;
    }
    double squares = latest.stream().mapToDouble(v -> (v - mean) * (v - mean)).sum();
    return TypicalError.WORTHWHILE * Math.sqrt(Math.max(0, squares / (latest.size() - 1) - te * te));
  }

  private static List<Double> latestScores(List<TestScore> scores, TestKind kind, int steps) {
    Map<Long, TestScore> latest = new TreeMap<>();
    for (TestScore s : scores) {
      if (s.kind() == kind && s.approachSteps() == steps) {
        latest.merge(s.athleteId(), s, (a, b) -> later(a, b) ? a : b);
      }
    }
    return latest.values().stream().map(TestScore::value).toList();
  }

  private static boolean later(TestScore a, TestScore b) {
    LocalDate day = b.date();
    return a.date().isAfter(day) || (a.date().equals(day) && a.id() > b.id());
  }

  /** Where the error comes from, in a sentence. */
  public String inWords() {
    if (own) {
      return "From " + pairs + " athletes of this squad who did it twice within " + MAX_DAYS + " days"
          + (pairs < 10 ? "; with so few it is only roughly known." : ".");
    }
    int missing = ENOUGH_PAIRS - pairs;
    return "From the literature, upper end: " + source.line() + ". "
        + (missing > 0
            ? "Repeat the test within " + MAX_DAYS + " days with " + missing + (missing == 1 ? " more athlete" : " more athletes") + " to have your own."
            : "The squad's own repeats were all alike to the last figure: measure more finely to have your own.");
  }
}
