package boundwright.load;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import boundwright.load.account.ContactForce;
import boundwright.load.rating.SessionLoad;
import boundwright.quantity.RefusedException;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Check values of science section 4; source and standing at each. */
class LoadFiguresTest {
  /** Standing: worked (impulse and momentum). */
  @Test
  void meanForceByImpulse() {
    assertThat(ContactForce.meanOverBodyWeight(2.6, 1.9, 0.157)).isCloseTo(3.922, within(5e-4));
    // the half-sine's peak, pi/2 of it, is 6.160 (worked) and is not the impact peak: the program never shows it
    assertThat(Math.PI / 2 * ContactForce.meanOverBodyWeight(2.6, 1.9, 0.157)).isCloseTo(6.160, within(5e-4));
  }

  /** 0.01 s in the contact time moves the figure by 4.7 % (worked). */
  @Test
  void contactTimeMovesTheForce() {
    double at = ContactForce.meanOverBodyWeight(2.6, 1.9, 0.157);
    double shorter = ContactForce.meanOverBodyWeight(2.6, 1.9, 0.147);
    double longer = ContactForce.meanOverBodyWeight(2.6, 1.9, 0.167);
    assertThat((shorter - longer) / 2 / at).isCloseTo(0.047, within(0.001));
  }

  /** Momentum again, by stepping a constant force through the contact: the speed must turn from -2.6 to +1.9. */
  @Test
  void theMeanForceTurnsTheSpeedAround() {
    double force = ContactForce.meanOverBodyWeight(2.6, 1.9, 0.157);
    double v = -2.6;
    int steps = 100_000;
    for (int i = 0; i < steps; i++) {
      v += (force - 1) * 9.81 * 0.157 / steps;
    }
    assertThat(v).isCloseTo(1.9, within(1e-6));
  }

  /** Morin et al. 2005; equations memory, result worked: m 75 kg, tc .12 s, tf .13 s. */
  @Test
  void levelRunning() {
    ContactForce.LevelRun run = ContactForce.levelRun(75, 0.12, 0.13);
    assertThat(run.peak()).isCloseTo(2407.7, within(0.05));
    assertThat(run.peakOverBodyWeight()).isCloseTo(3.272, within(5e-4));
    assertThat(run.drop()).isCloseTo(0.0292, within(5e-5));
    assertThat(run.stiffness()).isCloseTo(82510, within(5.0));
  }

  /** Foster 1998, worked with n - 1: 420, 0, 540, 300, 0, 720, 0. */
  @Test
  void monotonyAndStrain() {
    SessionLoad.Week w = SessionLoad.week(List.of(420.0, 0.0, 540.0, 300.0, 0.0, 720.0, 0.0));
    assertThat(w.sum()).isEqualTo(1980);
    assertThat(w.monotony()).isCloseTo(0.9642, within(5e-5));
    assertThat(w.strain()).isCloseTo(1909.14, within(0.005));
  }

  @Test
  void sevenEqualDaysHaveNoMonotony() {
    assertThat(SessionLoad.week(Collections.nCopies(7, 300.0)).monotony()).isNaN();
    assertThatThrownBy(() -> SessionLoad.week(List.of(1.0))).isInstanceOf(RefusedException.class).hasMessageContaining("seven");
    assertThatThrownBy(() -> SessionLoad.of(11, 60)).isInstanceOf(RefusedException.class).hasMessageContaining("11");
  }

  /** Williams et al. 2017, worked: 21 x 100 then 7 x 200, started at the first load. */
  @Test
  void weightedMeans() {
    List<Double> days = new ArrayList<>(Collections.nCopies(21, 100.0));
    days.addAll(Collections.nCopies(7, 200.0));
    double seven = SessionLoad.weightedMean(days, 7);
    double twentyEight = SessionLoad.weightedMean(days, 28);
    // by hand: 200 - 100 x 0.75^7 = 186.6516113, so the last printed digit of the first is rounded up
    assertThat(seven).isCloseTo(186.651612, within(1e-6));
    assertThat(twentyEight).isCloseTo(139.359836, within(1e-6));
    assertThat(seven / twentyEight).isCloseTo(1.339350, within(1e-6));
  }
}
