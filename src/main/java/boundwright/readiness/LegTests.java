package boundwright.readiness;

import boundwright.footfall.Foot;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/**
 * The single-leg tests of one athlete: both legs side by side, and each against its own history.
 *
 * @param symmetry of the last day on which both legs were tested alike, or null
 * @param changes each leg that has an earlier comparable score; right first
 */
public record LegTests(@Nullable LimbSymmetry symmetry, List<LegChange> changes) {
  /**
   * Reads the tests of one athlete.
   *
   * @param scores of this athlete, any tests
   * @param error of the single-leg test, the same for both legs
   */
  public static LegTests of(List<TestScore> scores, TestError error) {
    return read(scores, kind -> Optional.of(error));
  }

  /**
   * Reads the tests of one athlete, each leg with the error of its own test in the squad; a leg without a known error is not
   * compared.
   *
   * @param scores of this athlete, any tests
   * @param squad scores of the squad in both single-leg tests
   */
  public static LegTests of(List<TestScore> scores, List<TestScore> squad) {
    return read(scores, kind -> TestError.of(squad, kind, 0, false));
  }

  private static LegTests read(List<TestScore> scores, Function<TestKind, Optional<TestError>> errors) {
    List<LegChange> changes = new ArrayList<>();
    for (TestKind kind : new TestKind[] {TestKind.SINGLE_LEG_RIGHT, TestKind.SINGLE_LEG_LEFT}) {
      List<TestScore> own = byDate(scores, kind);
      Optional<TestError> error = errors.apply(kind);
      if (!own.isEmpty() && error.isPresent()) {
        TestScore latest = own.get(own.size() - 1);
        List<Double> history =
            own.subList(0, own.size() - 1).stream()
                .filter(s -> s.comparableWith(latest) && s.date().isBefore(latest.date()))
                .map(TestScore::value)
                .toList();
        Foot foot = kind.leg().orElseThrow();
        if (!history.isEmpty()) {
          changes.add(LegChange.of(foot, history, latest.value(), error.get().te()));
        }
      }
    }
    return new LegTests(latestBoth(scores).orElse(null), List.copyOf(changes));
  }

  private static Optional<LimbSymmetry> latestBoth(List<TestScore> scores) {
    List<TestScore> right = byDate(scores, TestKind.SINGLE_LEG_RIGHT);
    List<TestScore> left = byDate(scores, TestKind.SINGLE_LEG_LEFT);
    for (int i = right.size() - 1; i >= 0; i--) {
      for (int j = left.size() - 1; j >= 0; j--) {
        TestScore r = right.get(i);
        TestScore l = left.get(j);
        if (r.date().equals(l.date()) && r.protocol().comparableWith(l.protocol())) {
          return Optional.of(new LimbSymmetry(r.value(), l.value()));
        }
      }
    }
    return Optional.empty();
  }

  private static List<TestScore> byDate(List<TestScore> scores, TestKind kind) {
    return scores.stream().filter(s -> s.kind() == kind).sorted(Comparator.comparing(TestScore::date).thenComparing(TestScore::id)).toList();
  }
}
