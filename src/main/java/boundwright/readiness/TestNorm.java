package boundwright.readiness;

import boundwright.evidence.Source;
import boundwright.evidence.Sources;
import java.util.Optional;

/**
 * What is published of the error of a test. There are no norms here of how far an athlete of some age should get: none was found
 * that could be quoted, and the squad's own scores serve better.
 *
 * @param lowPercent lower end of the error, share of the score [%]
 * @param highPercent upper end [%]
 * @param source where from, with its standing
 */
public record TestNorm(double lowPercent, double highPercent, Source source) {
  /**
   * The published error of a test; empty where there is none (timed run-ups).
   *
   * @param elevenToThirteen whether the athlete is 11 to 13 years old, where single-leg tests scatter far more
   */
  public static Optional<TestNorm> of(TestKind kind, boolean elevenToThirteen) {
    return switch (kind) {
      case STANDING_TRIPLE -> Optional.of(new TestNorm(2.4, 4.6, Sources.REPEATABILITY));
      case STANDING_FIVE, STANDING_TEN -> Optional.of(new TestNorm(2.4, 4.6, Sources.REPEATABILITY_CARRIED_OVER));
      case SINGLE_LEG_RIGHT, SINGLE_LEG_LEFT ->
          Optional.of(elevenToThirteen ? new TestNorm(18, 36, Sources.HOP_ERROR) : new TestNorm(7, 11, Sources.HOP_ERROR));
      case TIMED_RUN_UP -> Optional.empty();
    };
  }
}
