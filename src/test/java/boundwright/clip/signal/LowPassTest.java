package boundwright.clip.signal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import boundwright.quantity.RefusedException;
import java.util.Random;
import org.junit.jupiter.api.Test;
import uk.me.berndporr.iirj.Butterworth;

/** The low-pass against worked coefficients and against an outside filter library. */
class LowPassTest {

  /** Winter's form, fs/fc = 10: a0 .09444674, a1 .18889349, b1 .96264131, b2 -.34042828. Standing: worked. */
  @Test
  void coefficientsAtTenSamplesToTheCutOff() {
    LowPass f = LowPass.zeroLag(100, 10);
    assertThat(f.a0()).isCloseTo(.09444674, within(5e-9));
    assertThat(f.a1()).isCloseTo(.18889349, within(5e-9));
    assertThat(f.b1()).isCloseTo(.96264131, within(5e-9));
    assertThat(f.b2()).isCloseTo(-.34042828, within(5e-9));
  }

  /** 240 Hz, 12 Hz: .02956907, .05913815, 1.45810386, -.57638016. Standing: worked. */
  @Test
  void coefficientsOfThePhoneAt240() {
    LowPass f = LowPass.zeroLag(240, 12);
    assertThat(f.a0()).isCloseTo(.02956907, within(5e-9));
    assertThat(f.a1()).isCloseTo(.05913815, within(1e-8));
    assertThat(f.b1()).isCloseTo(1.45810386, within(5e-9));
    assertThat(f.b2()).isCloseTo(-.57638016, within(5e-9));
  }

  /** .2 of half the rate, one pass: b .06745527 .13491055 .06745527, a 1 -1.1429805 .4128016. Standing: worked. */
  @Test
  void coefficientsWithoutTheCorrection() {
    LowPass f = LowPass.onePass(.2);
    assertThat(f.a0()).isCloseTo(.06745527, within(5e-9));
    assertThat(f.a1()).isCloseTo(.13491055, within(1e-8));
    assertThat(f.b1()).isCloseTo(1.1429805, within(5e-8));
    assertThat(f.b2()).isCloseTo(-.4128016, within(5e-8));
  }

  /** (sqrt 2 - 1)^(1/4) = .8022432629. Standing: worked. */
  @Test
  void correctionForTwoPasses() {
    assertThat(LowPass.TWO_PASS).isCloseTo(.8022432629, within(5e-11));
  }

  /** The correction is for this: forward and back, a sine at the cut-off keeps 1/sqrt 2. Standing: worked. */
  @Test
  void sineAtTheCutOffKeepsTheRootOfOneHalf() {
    int n = 2400;
    double[] in = new double[n];
    for (int i = 0; i < n; i++) {
      in[i] = Math.sin(2 * Math.PI * 12 * i / 240.0);
    }
    double[] out = LowPass.zeroLag(240, 12).smooth(in);
    double sum = 0;
    for (int i = 600; i < 1800; i++) {
      sum += out[i] * out[i];
    }
    assertThat(Math.sqrt(2 * sum / 1200)).isCloseTo(Math.sqrt(.5), within(1e-6));
  }

  /** One forward pass against the Butterworth filter of iirj 1.7, a library from outside. Standing: outside reference. */
  @Test
  void forwardPassAgreesWithAnOutsideLibrary() {
    Random r = new Random(20260412);
    for (double cutOff : new double[] {4, 12, 24, 40}) {
      Butterworth outside = new Butterworth();
      outside.lowPass(2, 240, cutOff);
      LowPass ours = LowPass.onePass(cutOff / 120);
      double[] in = new double[300];
      // starts at rest, as the outside filter does
      for (int i = 1; i < in.length; i++) {
        in[i] = r.nextGaussian();
      }
      double[] out = ours.pass(in);
      for (int i = 0; i < in.length; i++) {
        assertThat(out[i]).as("%.0f Hz, sample %d", cutOff, i).isCloseTo(outside.filter(in[i]), within(1e-9));
      }
    }
  }

  /** A symmetrical pulse stays symmetrical about the same sample: no lag. One pass alone does shift it. Standing: worked. */
  @Test
  void symmetricalPulseIsNotShifted() {
    double[] in = new double[201];
    for (int i = 0; i < in.length; i++) {
      in[i] = Math.exp(-0.5 * Math.pow((i - 100) / 4.0, 2));
    }
    LowPass f = LowPass.zeroLag(240, 12);
    double[] out = f.smooth(in);
    for (int k = 1; k <= 60; k++) {
      assertThat(out[100 - k]).isCloseTo(out[100 + k], within(1e-9));
      assertThat(out[100 + k]).isLessThan(out[100]);
    }
    double[] once = f.pass(in);
    assertThat(new EvenSeries(0, 1, once).peakTime(80, 140)).isGreaterThan(102);
    assertThat(new EvenSeries(0, 1, out).peakTime(80, 140)).isCloseTo(100, within(1e-6));
  }

  @Test
  void straightLinePassesUnchangedToItsEnds() {
    double[] in = new double[60];
    for (int i = 0; i < in.length; i++) {
      in[i] = 3 - 0.7 * i;
    }
    assertThat(LowPass.zeroLag(120, 8).smooth(in)).containsExactly(in, within(1e-4));
  }

  @Test
  void cutOffThatDoesNotFitTheFramesIsRefused() {
    assertThatThrownBy(() -> LowPass.zeroLag(30, 12))
        .isInstanceOf(RefusedException.class)
        .hasMessage("A cut-off of 12.0 Hz does not fit 30.0 frames a second: above 0 and below 12.0 Hz.");
    assertThatThrownBy(() -> LowPass.zeroLag(120, 0)).isInstanceOf(RefusedException.class);
    assertThatThrownBy(() -> LowPass.zeroLag(120, Double.NaN)).isInstanceOf(RefusedException.class);
  }
}
