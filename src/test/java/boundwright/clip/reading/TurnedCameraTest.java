package boundwright.clip.reading;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import boundwright.clip.FoundClip;
import boundwright.clip.camera.CameraPath;
import boundwright.clip.contact.Contact;
import boundwright.clip.film.FilmFacts;
import boundwright.clip.scale.GroundMarks;
import boundwright.clip.scan.FoundBytes;
import boundwright.clip.track.Spot;
import boundwright.clip.truth.Noise;
import boundwright.clip.truth.TrueClip;
import boundwright.footfall.Sequence;
import boundwright.quantity.Estimate;
import boundwright.quantity.RefusedException;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** A reading of points from a camera that turned is that of the same points from one that stood. The truth is our own. */
class TurnedCameraTest {
  private static final TrueClip CLIP = TrueClip.of(Sequence.parse("RRL RRL"), 2, 6.0, 120, Noise.NONE, false, 3);
  private static final int FRAMES = CLIP.found().frames();

  /** A camera that follows the athlete by turning 0.7 rad, zooming by a tenth and trembling, and knows it. */
  private static CameraPath path(double drift) {
    return path(drift, 0.05);
  }

  private static CameraPath path(double drift, double swing) {
    CameraPath.Look[] looks = new CameraPath.Look[FRAMES];
    for (int i = 0; i < FRAMES; i++) {
      double way = (double) i / FRAMES - 0.5;
      looks[i] = new CameraPath.Look(0.004 * Math.sin(0.7 * i), 0.7 * way, 0.003 * Math.cos(0.3 * i), 1000 * (1 + 0.1 * way), drift * i / FRAMES, 0);
    }
    return CameraPath.followed(CameraPath.Kind.TURNED, 1280, 720, 1000, 0, true, swing, CLIP.found().times(), looks);
  }

  private static FoundClip clip(CameraPath camera) {
    var points = camera.carries() ? CLIP.found().map((frame, spot) -> camera.back(frame, spot)) : CLIP.found();
    return new FoundClip(new FilmFacts("h264", 1280, 720, 0, 1, 90000, FRAMES, FRAMES / 120.0, Double.NaN), 0, points, FRAMES, List.of(), camera);
  }

  private static Setup marks(CameraPath camera, int... frames) {
    List<GroundMarks.Mark> out = new ArrayList<>();
    for (int i = 0; i < CLIP.marks().size(); i++) {
      GroundMarks.Mark m = CLIP.marks().get(i);
      int frame = frames[i * frames.length / CLIP.marks().size()];
      out.add(new GroundMarks.Mark(camera.back(frame, m.picture()), m.at_m(), frame));
    }
    return Setup.ground(out);
  }

  private static List<Double> places(ClipReading r) {
    return r.contacts().stream().map(ReadContact::contact).map(Contact::place_m).map(Estimate::p50).toList();
  }

  @Test
  void lengthsAreThoseOfACameraThatStood() {
    ClipReading still = ClipReader.read(clip(CameraPath.stood()), marks(CameraPath.stood(), 0), List.of(), null);
    CameraPath camera = path(0);
    ClipReading turned = ClipReader.read(clip(camera), marks(camera, 10, FRAMES - 10), List.of(), null);
    assertThat(places(still)).hasSizeGreaterThan(4);
    assertThat(places(turned)).hasSameSizeAs(places(still));
    for (int i = 0; i < places(still).size(); i++) {
      assertThat(places(turned).get(i)).as("contact %d", i).isCloseTo(places(still).get(i), within(0.02));
    }
    // the points as they are drawn stay those of the film
    assertThat(turned.athlete().pixels().spot(boundwright.clip.track.BodyPoint.LEFT_HIP, 5))
        .isEqualTo(turned.athlete().sides().track().spot(boundwright.clip.track.BodyPoint.LEFT_HIP, 5));
  }

  @Test
  void rangesGrowWithTheDriftAndWithoutMarksInFarFrames() {
    CameraPath sure = path(0);
    CameraPath drifting = path(3);
    double two = width(sure, marks(sure, 10, FRAMES - 10));
    double one = width(sure, marks(sure, FRAMES / 2));
    double far = width(drifting, marks(drifting, 10, FRAMES - 10));
    assertThat(one).isGreaterThan(1.03 * two);
    assertThat(far).isGreaterThan(1.05 * two);
  }

  private static double width(CameraPath camera, Setup setup) {
    return ClipReader.read(clip(camera), setup, List.of(), null).flights().stream()
        .map(ReadFlight::length_m).filter(l -> l != null).mapToDouble(Estimate::halfWidth).average().orElseThrow();
  }

  @Test
  void whereTheGroundWasNotFollowedThereAreNoLengthsAndTheReasonIsSaid() {
    for (CameraPath.Kind kind : List.of(CameraPath.Kind.PLAIN, CameraPath.Kind.LOST, CameraPath.Kind.TRAVELLED)) {
      CameraPath camera = CameraPath.of(kind);
      ClipReading r = ClipReader.read(clip(camera), marks(CameraPath.stood(), 0), List.of(), null);
      assertThat(r.scaled()).isFalse();
      assertThat(r.flights()).allMatch(f -> f.length_m() == null);
      assertThat(r.remarks()).anyMatch(s -> s.contains("no lengths are given")).noneMatch(s -> s.contains("No marks were set"));
      assertThat(r.remarks()).noneMatch(s -> s.contains("NaN") || s.contains("feet and times do"));
    }
  }

  /** Before a plain background only the coach can tell that the camera stood; one that was seen to move did. */
  @Test
  void whoKnowsThatTheCameraStoodGetsLengthsBeforeAPlainBackground() {
    Setup marks = marks(CameraPath.stood(), 0);
    ClipReading plain = ClipReader.read(clip(CameraPath.of(CameraPath.Kind.PLAIN)).onTripod(), marks, List.of(), null);
    ClipReading stood = ClipReader.read(clip(CameraPath.stood()), marks, List.of(), null);
    assertThat(plain.scaled()).isTrue();
    assertThat(plain.flights()).isEqualTo(stood.flights());
    assertThat(plain.remarks()).noneMatch(s -> s.contains("no lengths are given"));
    FoundClip lost = clip(CameraPath.of(CameraPath.Kind.LOST));
    assertThat(lost.onTripod()).isSameAs(lost);
  }

  @Test
  void aMarkWhereNothingWasFollowedIsRefused() {
    CameraPath camera = path(0);
    Setup late = Setup.ground(List.of(new GroundMarks.Mark(new Spot(100, 600), 0, 5), new GroundMarks.Mark(new Spot(900, 600), 5, FRAMES + 40)));
    FoundClip clip = clip(camera);
    assertThatThrownBy(() -> ClipReader.read(clip, late, List.of(), null))
        .isInstanceOf(RefusedException.class)
        .hasMessageContaining("frame " + (FRAMES + 41))
        .hasMessageContaining("Put it in one of those");
  }

  @Test
  void thePathComesBackFromItsBytes() {
    FoundClip clip = clip(path(2));
    FoundClip again = FoundBytes.read(FoundBytes.of(clip));
    assertThat(again.camera()).isEqualTo(clip.camera());
    assertThat(FoundBytes.read(FoundBytes.of(clip(CameraPath.of(CameraPath.Kind.PLAIN)))).camera().kind()).isEqualTo(CameraPath.Kind.PLAIN);
  }
}
