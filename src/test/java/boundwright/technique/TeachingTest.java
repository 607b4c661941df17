package boundwright.technique;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import boundwright.evidence.Standing;
import boundwright.quantity.RefusedException;
import java.util.List;
import org.junit.jupiter.api.Test;

/** What the coach teaches where schools differ, and the words that must not mislead (cues of the trade; common practice and memory). */
class TeachingTest {
  @Test
  void theHeelLeadsUntilTheCoachChoosesAnApproach() {
    assertThat(Teaching.DEFAULT.at(26)).isEqualTo(FootContact.HEEL_ROLLS);
    Teaching fromEight = new Teaching(8);
    assertThat(fromEight.at(6)).isEqualTo(FootContact.HEEL_ROLLS);
    assertThat(fromEight.at(8)).isEqualTo(FootContact.WHOLE_FOOT);
    assertThat(fromEight.anywhere()).isEqualTo(FootContact.AS_TAUGHT);
    assertThat(new Teaching(0).anywhere()).isEqualTo(FootContact.WHOLE_FOOT);
    assertThatThrownBy(() -> new Teaching(27)).isInstanceOf(RefusedException.class).hasMessageContaining("27");
  }

  @Test
  void cardsAndTicksSayWhatIsTaught() {
    assertThat(Teaching.DEFAULT.lookFor()).contains("Heel leads, foot rolls to the toe");
    assertThat(new Teaching(0).lookFor()).contains("Whole foot lands at once, ankle set");
    assertThat(new Teaching(8).lookFor()).contains("Heel, roll to the toe; whole foot from 8 steps");
    for (Teaching teaching : List.of(Teaching.DEFAULT, new Teaching(0), new Teaching(26))) {
      assertThat(teaching.lookFor()).hasSize(TeachingPoint.values().length).allMatch(w -> w.length() <= 48);
    }
    for (FootContact taught : FootContact.values()) {
      FaultAdvice advice = new FaultCatalogue(List.of(), taught).byKey("heel-rolls").orElseThrow();
      assertThat(advice.label()).isEqualTo(taught.wentWrong()).hasSizeLessThanOrEqualTo(20);
      assertThat(advice.say()).hasSizeLessThan(50);
      assertThat(advice.looksLike()).hasSizeLessThan(120);
      assertThat(advice.next()).hasSizeLessThan(140);
    }
    FaultAdvice whole = FaultCatalogue.of(TeachingPoint.HEEL_ROLLS, FootContact.WHOLE_FOOT);
    assertThat(whole.say()).doesNotContain("Heel leads");
    assertThat(whole.source().standing()).isEqualTo(Standing.MEMORY);
  }

  @Test
  void underTheBodyIsACueAndTheRunUpKeepsItsRhythm() {
    assertThat(TeachingPoint.FOOT_UNDER.lookFor()).contains("ahead").contains("under the body");
    assertThat(FaultCatalogue.of(TeachingPoint.FOOT_UNDER).looksLike()).contains("a little ahead it always is");
    assertThat(FaultCatalogue.of(TeachingPoint.FOOT_UNDER).say()).contains("under yourself");
    assertThat(FaultCatalogue.of(TeachingPoint.HIPS_TALL).next()).contains("Keep the rhythm", "do not stretch").doesNotContain("Shorten");
  }
}
