package boundwright.clip.track;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import boundwright.clip.truth.Noise;
import boundwright.clip.truth.TrueClip;
import boundwright.footfall.Sequence;
import boundwright.quantity.RefusedException;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** One athlete out of what a finder gives, on a made-up clip whose truth is known. Standing: own output, truth made up. */
class CoherentTrackTest {
  private static final TrueClip CLIP = TrueClip.of(Sequence.parse("RRL RRL"), 1, 6.5, 120, Noise.NONE, false, 11);
  private static final List<Joint> LEG = List.of(Joint.HIP, Joint.KNEE, Joint.ANKLE, Joint.HEEL, Joint.TOE);

  /** Clumps of exchanged legs, 2 to 8 frames long, every 30 frames: every one comes back, no other frame is touched. */
  @Test
  void exchangedClumpsArePutBack() {
    Track truth = CLIP.truth();
    Track.Builder bad = truth.edit();
    boolean[] exchanged = new boolean[truth.frames()];
    int clumps = 0;
    for (int from = 15; from + 12 < truth.frames(); from += 30) {
      int length = 2 + clumps++ * 3 % 7;
      for (int i = from; i < from + length; i++) {
        exchanged[i] = true;
        int frame = i;
        LEG.forEach(j -> bad.exchange(j, frame));
      }
    }
    assertThat(clumps).isGreaterThan(3);
    Sides.Resolved out = Sides.resolve(bad.build());
    List<Integer> wrong = new ArrayList<>();
    int told = 0;
    for (int i = 0; i < truth.frames(); i++) {
      // where the legs left the picture there is nothing to tell and nothing to lose
      if (truth.seen(BodyPoint.LEFT_KNEE, i) && truth.seen(BodyPoint.RIGHT_KNEE, i)) {
        told++;
        if (out.legsExchanged()[i] != exchanged[i]) {
          wrong.add(i);
        }
      }
    }
    assertThat(told).isGreaterThan(200);
    assertThat(wrong).isEmpty();
  }

  @Test
  void cleanClipIsLeftAlone() {
    Sides.Resolved out = Sides.resolve(CLIP.truth());
    assertThat(out.legsExchanged()).doesNotContain(true);
    Outliers.Cleaned clean = Outliers.clean(CLIP.truth());
    assertThat(clean.bySpeed()).isZero();
    assertThat(clean.byLimb()).isZero();
  }

  /** A knee a metre off in one frame goes; its neighbours in time and the other points of the frame stay. */
  @Test
  void wildPointIsTakenOut() {
    Track truth = CLIP.truth();
    int frame = truth.frames() / 2;
    double metre = BodySize.perMetre(truth);
    Spot knee = truth.spot(BodyPoint.LEFT_KNEE, frame);
    assertThat(knee.known()).isTrue();
    Track bad =
        truth.edit().put(BodyPoint.LEFT_KNEE, frame, new Spot(knee.x() + 0.8 * metre, knee.y() - 0.6 * metre), 0.9).build();
    Track clean = Outliers.clean(bad).track();
    assertThat(clean.seen(BodyPoint.LEFT_KNEE, frame)).isFalse();
    int seen = 0;
    int left = 0;
    for (BodyPoint p : BodyPoint.values()) {
      for (int i = 0; i < truth.frames(); i++) {
        seen += truth.seen(p, i) ? 1 : 0;
        left += clean.seen(p, i) ? 1 : 0;
      }
    }
    assertThat(left).isEqualTo(seen - 1);
  }

  @Test
  void timesThatDoNotGrowAreRefused() {
    assertThatThrownBy(() -> Track.at(new double[] {0, .01, .01, .02}))
        .isInstanceOf(RefusedException.class)
        .hasMessageContaining("Frame 3 is shown at 0.0100 s, not after frame 2 at 0.0100 s");
    assertThatThrownBy(() -> Track.at(new double[] {0, .01})).isInstanceOf(RefusedException.class);
  }

  @Test
  void clipWithoutLegsIsRefused() {
    Track nothing = Track.at(new double[] {0, .01, .02, .03}).build();
    assertThatThrownBy(() -> Sides.resolve(nothing))
        .isInstanceOf(RefusedException.class)
        .hasMessageContaining("A whole leg was seen in 0 frames");
  }
}
