package boundwright.technique;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import boundwright.quantity.RefusedException;
import boundwright.technique.Agreement.Disagreement;
import boundwright.technique.Agreement.OnFault;
import boundwright.technique.Agreement.TwiceJudged;
import boundwright.technique.Agreement.Who;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class AgreementTest {
  private static TwiceJudged rep(long id, String first, String second) {
    return new TwiceJudged(id, ticks(first), ticks(second));
  }

  private static List<FaultTick> ticks(String text) {
    return text.isEmpty() ? List.of() : FaultTick.parseAll(List.of(text.split(" ")));
  }

  /** Cells 20, 5, 10, 15 of 50: agreement .70, by chance .50, kappa .40 (a common textbook table; result worked). */
  @Test
  void agreementOnOneFault() {
    List<TwiceJudged> reps = new ArrayList<>();
    for (int i = 0; i < 50; i++) {
      boolean first = i < 25;
      boolean second = i < 20 || (i >= 25 && i < 35);
      reps.add(rep(i, first ? "toe-up" : "", second ? "toe-up" : ""));
    }
    Agreement agreement = Agreement.of(reps);
    OnFault toe = agreement.on("toe-up").orElseThrow();
    assertThat(List.of(toe.both(), toe.onlyFirst(), toe.onlySecond(), toe.neither())).containsExactly(20, 5, 10, 15);
    assertThat(toe.kappa()).isNotNull();
    assertThat(Kappa.of(new int[][] {{20, 5}, {10, 15}})).isEqualTo(toe.kappa());
    assertThat(Kappa.of(new int[][] {{20, 5}, {10, 15}}).value()).isCloseTo(.40, within(1e-12));
    assertThat(agreement.clean().both()).isEqualTo(15);
    assertThat(agreement.counts()).isNotNull();
    assertThat(agreement.disagreements()).hasSize(15);
  }

  @Test
  void saysWhereTheyDiffer() {
    Agreement agreement =
        Agreement.of(
            List.of(
                rep(1, "toe-up@3 knee-up", "toe-up@4"),
                rep(2, "", "upright"),
                rep(3, "toe-up", "toe-up@5"),
                rep(4, "knee-up@2", "knee-up@2")));
    assertThat(agreement.disagreements())
        .containsExactly(
            new Disagreement(1, "knee-up", Who.ONLY_FIRST),
            new Disagreement(1, "toe-up", Who.OTHER_CONTACT),
            new Disagreement(2, "upright", Who.ONLY_SECOND));
    assertThat(agreement.on("heel-rolls")).isEmpty();
  }

  @Test
  void alwaysTheSameIsNotCalledAgreementBeyondChance() {
    Agreement agreement = Agreement.of(List.of(rep(1, "", ""), rep(2, "", "")));
    assertThat(agreement.clean().kappa()).isNull();
    assertThat(agreement.clean().inWords()).contains("all 2 reps", "chance alone");
    assertThat(agreement.counts()).isNull();
    assertThat(agreement.disagreements()).isEmpty();
  }

  @Test
  void refusals() {
    assertThatThrownBy(() -> Agreement.of(List.of())).isInstanceOf(RefusedException.class).hasMessageContaining("No rep");
    assertThatThrownBy(() -> Agreement.of(List.of(rep(1, "", ""), rep(1, "", "")))).isInstanceOf(RefusedException.class).hasMessageContaining("Rep 1");
  }
}
