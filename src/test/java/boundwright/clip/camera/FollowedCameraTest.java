package boundwright.clip.camera;

import static org.assertj.core.api.Assertions.assertThat;

import boundwright.clip.track.Spot;
import boundwright.clip.truth.PannedFilm;
import org.junit.jupiter.api.Test;

/**
 * Following made-up films whose every frame's camera is known: the film is looked up in a painted ground by its own rotations, so
 * the truth does not come from the solution. Smaller pictures and fewer frames than {@code bench/camera}; own output throughout.
 */
class FollowedCameraTest {
  private static final PannedFilm SMALL = new PannedFilm(640, 360, 500, 15, 1.5, -10, 10, 8, 30, 1, 1, 0, 0, 0, 7);

  @Test
  void theGroundStaysWithinTwoCentimetresWithMarksInTwoFarFrames() {
    CameraAccuracy.Run r = CameraAccuracy.run(SMALL.with(1.2, 1, 0.015), 1, false);
    assertThat(r.path().kind()).as("%s", r.signs()).isEqualTo(CameraPath.Kind.TURNED);
    assertThat(r.path().turned_deg()).isBetween(60.0, 75.0);
    double[] e = r.errors(r.inTwo(0, 0));
    assertThat(CameraAccuracy.most(e)).as("drift over 17 m [m], %s", r.signs()).isLessThan(0.02);
    assertThat(CameraAccuracy.steps(SMALL, e)).as("a step of 2 m, root mean square [m]").isLessThan(0.007);
    assertThat(r.path().shutter_s()).as("shutter [s], true 0.015").isBetween(0.010, 0.020);
  }

  @Test
  void whereThereIsNothingToHoldOnToNothingIsClaimed() {
    CameraAccuracy.Run r = CameraAccuracy.run(SMALL.way(-3, 3), 0, true);
    assertThat(r.path().followed()).as("%s", r.signs()).isFalse();
    assertThat(r.path().noLengths()).hasValueSatisfying(s -> assertThat(s).contains("background").contains("no lengths").doesNotContain("NaN"));
  }

  @Test
  void aCameraThatTravelsAlongIsRefused() {
    CameraAccuracy.Run r = CameraAccuracy.run(SMALL.moving(0, 1), 1, false);
    assertThat(r.path().followed()).as("%s", r.signs()).isFalse();
  }

  @Test
  void aCameraThatStandsIsLeftAlone() {
    PannedFilm still = new PannedFilm(640, 360, 500, 15, 1.5, 0, 0.01, 0.01, 30, 1, 0, 0, 0, 0, 7);
    CameraAccuracy.Run r = CameraAccuracy.run(still, 1, false);
    assertThat(r.path()).isEqualTo(CameraPath.stood());
    Spot p = new Spot(12.5, 300.25);
    assertThat(r.path().carry(5, p)).isSameAs(p);
    assertThat(r.path().apart(0, 20)).isZero();
  }
}
