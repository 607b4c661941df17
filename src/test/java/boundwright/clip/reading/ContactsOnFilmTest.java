package boundwright.clip.reading;

import static org.assertj.core.api.Assertions.assertThat;

import boundwright.clip.FoundClip;
import boundwright.clip.camera.CameraPath;
import boundwright.clip.contact.Contact;
import boundwright.clip.film.FilmFacts;
import boundwright.clip.track.BodyPoint;
import boundwright.clip.track.Facing;
import boundwright.clip.track.Joint;
import boundwright.clip.track.Spot;
import boundwright.clip.track.Track;
import boundwright.clip.truth.Noise;
import boundwright.clip.truth.TrueClip;
import boundwright.clip.truth.TrueContact;
import boundwright.footfall.Foot;
import boundwright.footfall.Sequence;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/**
 * What real film does to body points and made-up noise did not: both feet put on one leg, a camera that follows, a treadmill, nobody
 * who steps. The clips and errors are made up (own output); the defects were seen on real film.
 */
class ContactsOnFilmTest {
  private static final List<Joint> LEG = List.of(Joint.KNEE, Joint.ANKLE, Joint.HEEL, Joint.TOE);
  private static final String[] DRILLS = {"RRL RRL", "RL x5", "LLR LLR", "RRL"};

  private static TrueClip clip(int k, double fps) {
    return TrueClip.of(Sequence.parse(DRILLS[k % DRILLS.length]), 2, 5.5 + 0.4 * k, fps, Noise.USUAL, true, 7000 + k);
  }

  private static FoundClip found(Track track, CameraPath.Kind kind) {
    int n = track.frames();
    return new FoundClip(
        new FilmFacts("h264", 1280, 720, 0, 1, 90000, n, track.time(n - 1), Double.NaN), 0, track, n, List.of(), CameraPath.of(kind));
  }

  /** Where the legs pass, a network puts both feet on one leg, for some frames on end. */
  private static Track bothOnOneLeg(Track found, double share, Random random) {
    Track.Builder out = found.edit();
    for (int i = 0; i < found.frames(); i++) {
      boolean close = found.spot(BodyPoint.LEFT_KNEE, i).to(found.spot(BodyPoint.RIGHT_KNEE, i)) < 30;
      if (close && random.nextDouble() < share) {
        Foot lost = random.nextBoolean() ? Foot.LEFT : Foot.RIGHT;
        for (int k = i; k < Math.min(found.frames(), i + 3); k++) {
          for (Joint j : LEG) {
            Spot at = found.spot(BodyPoint.of(j, lost.other()), k);
            if (at.known()) {
              out.put(BodyPoint.of(j, lost), k, new Spot(at.x() + 2 * random.nextGaussian(), at.y() + 2 * random.nextGaussian()), 0.7);
            }
          }
        }
      }
    }
    return out.build();
  }

  private static Track moved(Track track, java.util.function.IntUnaryOperator by) {
    Track.Builder out = track.edit();
    for (int i = 0; i < track.frames(); i++) {
      for (BodyPoint p : BodyPoint.values()) {
        if (track.seen(p, i)) {
          out.put(p, i, new Spot(track.spot(p, i).x() + by.applyAsInt(i), track.spot(p, i).y()), track.confidence(p, i));
        }
      }
    }
    return out.build();
  }

  /** The hips stay in the middle of the picture. */
  private static Track followed(TrueClip clip) {
    double[] x = new double[clip.found().frames()];
    double last = 640;
    for (int i = 0; i < x.length; i++) {
      Spot hip = clip.truth().spot(BodyPoint.LEFT_HIP, i);
      last = hip.known() ? hip.x() : last;
      x[i] = last;
    }
    return moved(clip.found(), i -> (int) Math.round(640 - x[i]));
  }

  /** The foot lies in the picture round the whole contact, as the tables of the bench ask. */
  private static boolean inSight(TrueClip clip, TrueContact c) {
    for (int i = 0; i < clip.truth().frames(); i++) {
      double t = clip.truth().time(i);
      if (t > c.down() - 0.08 && t < c.up() + 0.08 && !clip.truth().seen(BodyPoint.of(Joint.TOE, c.foot()), i)) {
        return false;
      }
    }
    return true;
  }

  private static int[] rightOf(TrueClip clip, ClipReading r, double within_s) {
    int right = 0;
    int all = 0;
    double end = clip.found().time(clip.found().frames() - 1);
    for (TrueContact c : clip.athlete().mass().contacts()) {
      if (c.down() < clip.found().time(0) + 0.08 || c.up() > end - 0.08 || !inSight(clip, c)) {
        continue;
      }
      all++;
      for (ReadContact f : r.contacts()) {
        double mid = f.contact().middle_s();
        // a touchdown may be left open, as in the tables of the bench; the contact counts by its middle then
        boolean near =
            Double.isInfinite(within_s)
                ? mid > c.down() - 0.05 && mid < c.up() + 0.05
                : f.contact().touchdown_s() != null && Math.abs(f.contact().touchdown_s().p50() - c.down()) < within_s;
        right += near && f.contact().foot() == c.foot() && !f.contact().bothFeet() ? 1 : 0;
      }
    }
    return new int[] {right, all};
  }

  private static void inOrder(String name, ClipReading r) {
    for (int i = 0; i < r.contacts().size(); i++) {
      Contact c = r.contacts().get(i).contact();
      if (c.touchdown_s() != null && c.toeOff_s() != null) {
        assertThat(c.toeOff_s().p50()).as("%s contact %d ends after it begins", name, i).isGreaterThan(c.touchdown_s().p50());
      }
      if (i + 1 < r.contacts().size()) {
        assertThat(c.bothFeet()).as("%s both feet in mid-clip, contact %d", name, i).isFalse();
      }
    }
    assertThat(r.flights()).allMatch(f -> f.time_s() == null || f.time_s().p50() > 0);
  }

  @Test
  void bothFeetOnOneLegLoseNoContactAndNoFoot() {
    int right = 0;
    int all = 0;
    int found = 0;
    int timely = 0;
    for (int k = 0; k < 4; k++) {
      TrueClip clip = clip(k, 60);
      Track track = bothOnOneLeg(clip.found(), 0.35, new Random(k));
      ClipReading r = ClipReader.read(found(track, CameraPath.Kind.STOOD), Setup.ground(clip.marks()), List.of(), null);
      inOrder("clip " + (7000 + k), r);
      int[] of = rightOf(clip, r, Double.POSITIVE_INFINITY);
      timely += rightOf(clip, r, 0.06)[0];
      right += of[0];
      all += of[1];
      found += r.contacts().size();
    }
    assertThat(all).isGreaterThan(14);
    assertThat(right).as("right of %d, %d found", all, found).isGreaterThanOrEqualTo(all - 1);
    // the feet hold, the times suffer: where both feet lie on one leg nobody sees it come down
    assertThat(timely).as("of %d within 60 ms", all).isGreaterThanOrEqualTo(3 * all / 4);
  }

  /** What the card asked says where the sequence begins; a wrong card changes no foot and no time of a clear clip. */
  @Test
  void aWrongCardChangesNoContact() {
    TrueClip clip = clip(0, 60);
    FoundClip found = found(clip.found(), CameraPath.Kind.STOOD);
    List<Contact> without = ClipReader.read(found, Setup.ground(clip.marks()), List.of(), null).contacts().stream().map(ReadContact::contact).toList();
    for (String card : new String[] {"RRL RRL", "LLR LLR", "LLL LLL"}) {
      ClipReading r = ClipReader.read(found, Setup.ground(clip.marks()), List.of(), Sequence.parse(card));
      assertThat(r.contacts().stream().map(ReadContact::contact).toList()).as(card).isEqualTo(without);
      assertThat(r.remarks().stream().anyMatch(s -> s.startsWith("Asked was"))).as(card).isEqualTo(!card.equals("RRL RRL"));
    }
  }

  /** A camera that follows and cannot be followed: feet and times come from the body alone. */
  @Test
  void feetAndTimesHoldWhereTheGroundIsNotFollowed() {
    int right = 0;
    int all = 0;
    for (int k = 0; k < 3; k++) {
      TrueClip clip = clip(k, 60);
      ClipReading r = ClipReader.read(found(followed(clip), CameraPath.Kind.LOST), Setup.ground(clip.marks()), List.of(), null);
      inOrder("clip " + (7000 + k), r);
      int[] of = rightOf(clip, r, 0.05);
      right += of[0];
      all += of[1];
      assertThat(r.scaled()).isFalse();
    }
    assertThat(right).as("right of %d", all).isGreaterThanOrEqualTo(all - 1);
  }

  @Test
  void aTreadmillIsNamedAndGivesNoLengths() {
    TrueClip clip = clip(1, 60);
    ClipReading r = ClipReader.read(found(followed(clip), CameraPath.Kind.STOOD), Setup.ground(clip.marks()), List.of(), null);
    assertThat(r.remarks()).anyMatch(s -> s.contains("treadmill"));
    assertThat(r.scaled()).isFalse();
    ClipReading still = ClipReader.read(found(clip.found(), CameraPath.Kind.STOOD), Setup.ground(clip.marks()), List.of(), null);
    assertThat(still.remarks()).noneMatch(s -> s.contains("treadmill"));
  }

  @Test
  void whoOnlyStandsMakesNoContact() {
    TrueClip clip = clip(0, 60);
    Random random = new Random(5);
    int at = clip.truth().frames() / 3;
    Track.Builder still = Track.at(clip.found().times());
    for (int i = 0; i < clip.found().frames(); i++) {
      for (BodyPoint p : BodyPoint.values()) {
        Spot s = clip.truth().spot(p, at);
        still.put(p, i, new Spot(s.x() + random.nextGaussian(), s.y() + random.nextGaussian()), 0.9);
      }
    }
    ClipReading r = ClipReader.read(found(still.build(), CameraPath.Kind.STOOD), Setup.none(), List.of(), null);
    assertThat(r.contacts()).isEmpty();
    assertThat(r.remarks()).anyMatch(s -> s.contains("Nobody takes a step") || s.contains("cannot be told"));
  }

  /** Runs through and is seen standing where the run began: the first and the last frame say nothing of the way. */
  @Test
  void theWayOfTheRunIsNotTakenFromFirstAndLastFrame() {
    TrueClip clip = clip(1, 60);
    Track found = clip.found();
    int n = found.frames();
    int more = n / 5;
    double[] times = Arrays.copyOf(found.times(), n + more);
    for (int i = n; i < n + more; i++) {
      times[i] = times[i - 1] + 1 / 60.0;
    }
    Track.Builder out = Track.at(times);
    for (BodyPoint p : BodyPoint.values()) {
      for (int i = 0; i < n + more; i++) {
        Spot s = found.spot(p, i < n ? i : 3);
        if (s.known()) {
          out.put(p, i, new Spot(s.x() + (i < n ? 0 : clip.camera().toTheRight() ? -200 : 200), s.y()), 0.9);
        }
      }
    }
    Track track = out.build();
    assertThat(Facing.right(track)).isEqualTo(clip.camera().toTheRight());
    ClipReading r = ClipReader.read(found(track, CameraPath.Kind.STOOD), Setup.ground(clip.marks()), List.of(), null);
    assertThat(rightOf(clip, r, 0.05)[0]).isGreaterThanOrEqualTo(3);
  }

  /** Free fall tells it: standard free fall, published; the size of the athlete is the scale. */
  @Test
  void slowMotionIsToldByTheFall() {
    TrueClip clip = clip(0, 120);
    double[] slow = Arrays.stream(clip.found().times()).map(t -> 3 * t).toArray();
    ClipReading r = ClipReader.read(found(clip.found().atTimes(slow), CameraPath.Kind.STOOD), Setup.none(), List.of(), null);
    assertThat(r.remarks()).anyMatch(s -> s.matches(".*plays about (2\\.[5-9]|3\\.[0-5]) times slower.*"));
    ClipReading real = ClipReader.read(found(clip.found(), CameraPath.Kind.STOOD), Setup.none(), List.of(), null);
    assertThat(real.remarks()).noneMatch(s -> s.contains("times slower than it was filmed"));
  }
}
