package boundwright.flight;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import boundwright.flight.FlightChain.Link;
import boundwright.flight.FlightChain.Push;
import boundwright.quantity.RefusedException;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Check values of the project's collection of formulas, sections 2 and 3; the standing stands at each. */
class MechanicsTest {
  /** Standing: worked (projectile, g = 9.81). */
  @ParameterizedTest
  @CsvSource({"9.5, 2.4, 1.25, 1.00, 0.5775, 5.4867", "8.5, 1.9, 1.15, 1.00, 0.4546, 3.8643", "7.3, 2.3, 1.20, 0.65, 0.6432, 4.6956"})
  void flightTimeAndDistance(double vx, double vy, double to, double td, double time, double distance) {
    Projectile p = new Projectile(vx, vy, to, td);
    assertThat(p.time()).isCloseTo(time, within(5e-5));
    assertThat(p.distance()).isCloseTo(distance, within(5e-5));
  }

  /** The centre of mass is at the touchdown height when the flight ends: the definition, not the formula. */
  @Test
  void flightEndsAtTouchdownHeight() {
    Projectile p = new Projectile(8, 2.1, 1.2, 0.7);
    double t = p.time();
    assertThat(1.2 + 2.1 * t - 9.81 * t * t / 2).isCloseTo(0.7, within(1e-12));
    assertThat(p.touchdownVy() * p.touchdownVy()).isCloseTo(2.1 * 2.1 + 2 * 9.81 * 0.5, within(1e-9));
  }

  @Test
  void refusesAFlightThatNeverComesDownThere() {
    assertThatThrownBy(() -> new Projectile(8, 1, 1.0, 1.5)).isInstanceOf(RefusedException.class).hasMessageContaining("1.5 m");
  }

  /** Standing: worked (chain of hop, step, jump by gain; the form is Yu and Hay 1996, memory). */
  @Test
  void chainOfThreePhases() {
    List<Link> links =
        FlightChain.run(
            new ContactModel.ByGain(-1.2, 0.6),
            10.2,
            -0.3,
            List.of(new Push(2.4, 1.25, 1.05, 0.75), new Push(1.9, 1.2, 1.05, 0.75), new Push(2.2, 1.2, 0.65, 1.0)));
    double[] loss = {.4200, 1.8071, 1.6559};
    double[] vx = {9.7800, 7.9729, 6.3169};
    double[] time = {.5619, .4546, .6273};
    double[] flight = {5.4951, 3.6247, 3.9625};
    double total = 0;
    for (int i = 0; i < 3; i++) {
      assertThat(links.get(i).loss()).isCloseTo(loss[i], within(5.1e-5));
      assertThat(links.get(i).vx()).isCloseTo(vx[i], within(5.1e-5));
      assertThat(links.get(i).time()).isCloseTo(time[i], within(5.1e-5));
      assertThat(links.get(i).flightDistance()).isCloseTo(flight[i], within(5.1e-5));
      total += links.get(i).length();
    }
    assertThat(-links.get(0).touchdownVy()).isCloseTo(3.1119, within(5.1e-5));
    assertThat(-links.get(1).touchdownVy()).isCloseTo(2.5599, within(5.1e-5));
    assertThat(total).isCloseTo(15.5822, within(5.1e-5));
  }

  /** The two forms differ only in what the loss follows (Allen, King and Yeadon 2013; read). */
  @Test
  void byTakeOffIgnoresTheTouchdownSpeed() {
    ContactModel form = new ContactModel.ByTakeOff(-0.4, 0.7);
    assertThat(form.loss(-3, 2)).isEqualTo(form.loss(-1, 2)).isCloseTo(1.0, within(1e-12));
  }

  /** Standing: worked (sprint curve of Furusawa, Hill and Parkinson 1927 with vmax 9, tau 1.1). */
  @ParameterizedTest
  @CsvSource({"10, 2.039, 7.590", "20, 3.266, 8.538"})
  void sprintCurve(double distance, double time, double speed) {
    SprintCurve c = new SprintCurve(9, 1.1);
    assertThat(c.time(distance)).isCloseTo(time, within(5e-4));
    assertThat(c.speedAt(distance)).isCloseTo(speed, within(5e-4));
    assertThat(c.distance(c.time(distance))).isCloseTo(distance, within(1e-9));
  }

  /**
   * Berlin 2009 men's 100 m final: splits at 20, 40, 60 m with the reaction time (read from the federation's sheet);
   * the fitted vmax and tau are worked, accepted within 0.05 m/s and 0.02 s.
   */
  @ParameterizedTest
  @CsvSource({
    ".146, 2.88, 4.64, 6.31, 12.09, 1.21",
    ".144, 2.92, 4.70, 6.39, 11.96, 1.24",
    ".134, 2.91, 4.71, 6.42, 11.78, 1.20"
  })
  void fitsPublishedSprintSplits(double reaction, double t20, double t40, double t60, double vmax, double tau) {
    SprintCurve c =
        SprintCurve.fit(
            new double[] {t20 - reaction, t40 - reaction, t60 - reaction}, new double[] {20, 40, 60});
    assertThat(c.vmax()).isCloseTo(vmax, within(0.05));
    assertThat(c.tau()).isCloseTo(tau, within(0.02));
  }

  @Test
  void refusesSplitsThatAreNoStart() {
    assertThatThrownBy(() -> SprintCurve.fit(new double[] {1}, new double[] {20})).isInstanceOf(RefusedException.class);
    assertThatThrownBy(() -> SprintCurve.fit(new double[] {5, 4, 3}, new double[] {5, 20, 60}))
        .isInstanceOf(RefusedException.class);
  }
}
