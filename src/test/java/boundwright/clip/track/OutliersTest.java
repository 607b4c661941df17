package boundwright.clip.track;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import org.junit.jupiter.api.Test;

/** Wild points on made-up tracks (own output). */
class OutliersTest {
  /** A leg that goes forward at 6 m/s, 100 pixels to a metre. */
  private static Track.Builder leg(int frames) {
    double[] t = new double[frames];
    Arrays.setAll(t, i -> i / 60.0);
    Track.Builder out = Track.at(t);
    for (int i = 0; i < frames; i++) {
      double x = 100 + 10 * i;
      out.put(BodyPoint.LEFT_SHOULDER, i, new Spot(x + 5, 250), 1);
      out.put(BodyPoint.RIGHT_SHOULDER, i, new Spot(x + 5, 250), 1);
      out.put(BodyPoint.LEFT_HIP, i, new Spot(x, 300), 1);
      out.put(BodyPoint.RIGHT_HIP, i, new Spot(x, 300), 1);
      out.put(BodyPoint.LEFT_KNEE, i, new Spot(x + 5, 345), 1);
      out.put(BodyPoint.LEFT_ANKLE, i, new Spot(x + i % 3, 388), 1);
      out.put(BodyPoint.LEFT_HEEL, i, new Spot(x - 5, 395), 1);
      out.put(BodyPoint.LEFT_TOE, i, new Spot(x + 18, 396), 1);
    }
    return out;
  }

  /** The wild end of a limb goes, not the sound one, also where the wild one is out of sight right after. */
  @Test
  void aWildToeThatGoesOutOfSightDoesNotTakeTheAnkleAlong() {
    Track.Builder b = leg(40);
    Track sound = b.build();
    b.put(BodyPoint.LEFT_TOE, 20, new Spot(sound.spot(BodyPoint.LEFT_TOE, 20).x() + 33, 384), 1);
    for (int i = 21; i < 26; i++) {
      b.erase(BodyPoint.LEFT_TOE, i);
    }
    Track cleaned = Outliers.clean(b.build()).track();
    assertThat(cleaned.seen(BodyPoint.LEFT_ANKLE, 20)).as("the sound ankle").isTrue();
    assertThat(cleaned.seen(BodyPoint.LEFT_TOE, 20)).as("the wild toe").isFalse();
  }
}
