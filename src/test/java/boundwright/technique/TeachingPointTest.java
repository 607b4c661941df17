package boundwright.technique;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import org.junit.jupiter.api.Test;

class TeachingPointTest {
  /** Keys are kept in reps for good: changing one would orphan what was logged. */
  @Test
  void keysAreStableAndDifferent() {
    assertThat(Arrays.stream(TeachingPoint.values()).map(TeachingPoint::key))
        .containsExactly(
            "upright", "knee-up", "heel-to-seat", "toe-up", "hold-then-strike", "foot-under", "heel-rolls", "hips-tall",
            "speed-through", "arms-balance");
  }

  @Test
  void aKeyIsFoundAgainAndAnUnknownOneIsNot() {
    for (TeachingPoint point : TeachingPoint.values()) {
      assertThat(TeachingPoint.byKey(point.key())).contains(point);
    }
    assertThat(TeachingPoint.byKey("no-such-point")).isEmpty();
  }

  @Test
  void wordsAreShortEnoughForACardAndAThumb() {
    assertThat(TeachingPoint.values()).allMatch(p -> p.lookFor().length() <= 48).allMatch(p -> p.wentWrong().length() <= 20);
  }
}
