package boundwright.jump;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import boundwright.flight.Projectile;
import boundwright.quantity.RefusedException;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Three lengths and their class, against published jumps. */
class MeetPhasesTest {
  /**
   * Standing: first three press reports of the finals; the fourth's lengths memory, its shares press. Shares to the
   * printed hundredth of a percentage point; the class as the collection states it (rule: Hay 1992, memory).
   */
  @ParameterizedTest
  @CsvSource({
    "5.86, 3.82, 5.99, 37.40, 24.38, 38.23, 15.67, BALANCED",
    "5.65, 4.21, 5.55, 36.66, 27.32, 36.02, 15.41, BALANCED",
    "5.71, 4.03, 5.63, 37.15, 26.22, 36.63, 15.37, BALANCED",
    "6.05, 5.22, 7.02, 33.08, 28.54, 38.38, 18.29, JUMP_DOMINATED"
  })
  void publishedJumps(double hop, double step, double jump, double h, double s, double j, double total, PhaseClass expected) {
    Phases p = Phases.of(hop, step, jump);
    assertThat(p.total_m()).isCloseTo(total, within(1e-9));
    assertThat(100 * p.shares().hop()).isCloseTo(h, within(0.0051));
    assertThat(100 * p.shares().step()).isCloseTo(s, within(0.0051));
    assertThat(100 * p.shares().jump()).isCloseTo(j, within(0.0051));
    assertThat(p.shares().classify(Shares.DEFAULT_THRESHOLD)).isEqualTo(expected);
  }

  /** Ten women, Thessaloniki 2008, mean shares (Panoutsakopoulos and Kollias; read). */
  @Test
  void meanOfTenWomenIsHopDominated() {
    assertThat(new Shares(.365, .293, .342).classify(2)).isEqualTo(PhaseClass.HOP_DOMINATED);
    assertThat(ReferenceJump.ALL).extracting(r -> r.shares().classify(2)).containsExactly(
        PhaseClass.BALANCED, PhaseClass.BALANCED, PhaseClass.BALANCED, PhaseClass.JUMP_DOMINATED, PhaseClass.HOP_DOMINATED);
  }

  /** The rule's own edge: exactly 2 percentage points lead is dominated, a hair less is not; the threshold is a setting. */
  @Test
  void thresholdIsReachedAtItsEdge() {
    assertThat(new Shares(.37, .28, .35).classify(2)).isEqualTo(PhaseClass.HOP_DOMINATED);
    assertThat(new Shares(.3699, .28, .3501).classify(2)).isEqualTo(PhaseClass.BALANCED);
    assertThat(new Shares(.35, .28, .37).classify(2)).isEqualTo(PhaseClass.JUMP_DOMINATED);
    assertThat(new Shares(.37, .28, .35).classify(3)).isEqualTo(PhaseClass.BALANCED);
    assertThat(new Shares(.30, .40, .30).classify(2)).isEqualTo(PhaseClass.BALANCED);
  }

  /** Published phases add up to the official distance: toe-to-board is not added again (press report, .026 m). */
  @Test
  void toeToBoardIsCountedOnce() {
    Phases published = new Phases(5.86, 3.82, 5.99, 0.026, Phases.From.BOARD);
    assertThat(published.official_m()).isCloseTo(15.67, within(1e-9));
    assertThat(published.effective_m()).isCloseTo(15.696, within(1e-9));
    Phases toe = new Phases(5.886, 3.82, 5.99, 0.026, Phases.From.TOE);
    assertThat(toe.official_m()).isCloseTo(15.67, within(1e-9));
    assertThat(toe.effective_m()).isCloseTo(15.696, within(1e-9));
    assertThat(Phases.of(5.86, 3.82, 5.99).official_m()).isCloseTo(15.67, within(1e-9));
    assertThatThrownBy(() -> Phases.of(5.86, 3.82, 5.99).effective_m())
        .isInstanceOf(RefusedException.class).hasMessageContaining("toe-to-board");
  }

  /** Sanity limits: triple jump 3-19 m, gap -0.60 to +2.00 m (judgement). */
  @Test
  void refusesInWords() {
    assertThatThrownBy(() -> Phases.of(0.9, 0.8, 1.0)).isInstanceOf(RefusedException.class).hasMessageContaining("3 to 19 m");
    assertThatThrownBy(() -> Phases.of(8, 6, 6)).isInstanceOf(RefusedException.class).hasMessageContaining("20 m");
    assertThatThrownBy(() -> Phases.of(Double.NaN, 4, 5)).isInstanceOf(RefusedException.class).hasMessageContaining("hop");
    assertThatThrownBy(() -> new Phases(5, 4, 5, -0.61, Phases.From.BOARD))
        .isInstanceOf(RefusedException.class).hasMessageContaining("-0.61 m");
    assertThatThrownBy(() -> new Shares(.5, .5, 0)).isInstanceOf(RefusedException.class);
  }

  /** Chain of section 2 (worked): the same jump given by its speeds; carried speeds are its vx over 10.2. */
  @Test
  void speedsCarryThroughEachContact() {
    MeasuredJump jump = JumpFixtures.worked();
    assertThat(jump.phases().total_m()).isCloseTo(15.5822, within(1e-3));
    assertThat(jump.carried().get(0)).isCloseTo(9.7800 / 10.2, within(1e-4));
    assertThat(jump.carried().get(1)).isCloseTo(7.9729 / 10.2, within(1e-4));
    assertThat(jump.carried().get(2)).isCloseTo(6.3169 / 10.2, within(1e-4));
    assertThat(jump.contacts().get(1).carried()).isCloseTo(7.9729 / 9.78, within(1e-4));
  }

  @Test
  void groundDistanceIsWhatTheFlightLeaves() {
    List<MeasuredContact> c = JumpFixtures.worked().contacts();
    MeasuredJump jump =
        MeasuredJump.ofLengths(c, List.of(6.2451, 4.3747, 4.9625), List.of(1.25, 1.2, 1.2), List.of(1.05, 1.05, .65), null);
    assertThat(jump.bodies().get(0).ground_m()).isCloseTo(.75, within(2e-4));
    assertThat(jump.bodies().get(1).ground_m()).isCloseTo(.75, within(2e-4));
    assertThat(jump.bodies().get(2).ground_m()).isCloseTo(1.0, within(2e-4));
    assertThat(new Projectile(9.78, 2.4, 1.25, 1.05).distance()).isCloseTo(5.4951, within(1e-4));
  }
}
