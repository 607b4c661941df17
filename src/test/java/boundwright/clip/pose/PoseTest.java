package boundwright.clip.pose;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import boundwright.clip.Box;
import boundwright.clip.film.Picture;
import boundwright.clip.track.BodyPoint;
import boundwright.clip.track.Joint;
import boundwright.clip.track.Spot;
import boundwright.clip.track.Track;
import boundwright.clip.truth.PaintedRunner;
import boundwright.clip.truth.Painter;
import boundwright.footfall.Foot;
import boundwright.quantity.RefusedException;
import java.io.File;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/**
 * The networks on a painted, made-up athlete about 300 pixels high, against the points the athlete was painted from (own
 * truth). What is printed is measured; what is asserted is only that the athlete is found and followed.
 */
class PoseTest {
  private static PoseNet landmarks;
  private static PersonDetector detector;

  private final PaintedRunner runner = new PaintedRunner();
  private final double start = runner.start();

  @BeforeAll
  static void open() {
    Weights weights = PaintedRunner.weightsOrSkip();
    landmarks = new PoseNet(weights.landmarks(Weights.Size.FULL), 2);
    detector = new PersonDetector(weights.detector(), 2);
  }

  @AfterAll
  static void close() {
    if (landmarks != null) {
      landmarks.close();
    }
    if (detector != null) {
      detector.close();
    }
  }

  private Picture picture(double t) {
    return runner.at(t).picture();
  }

  /** Follows into a frame of a track, 60 frames a second; whether the athlete was seen. */
  private static boolean follow(Follower follower, Picture picture, Track.Builder into, int frame) {
    Optional<Pose> pose = follower.follow(picture, frame / 60.0);
    pose.ifPresent(p -> p.fill(into, frame, picture.width(), picture.height()));
    return pose.isPresent();
  }

  private Spot truth(double t, BodyPoint p) {
    double[] w = runner.athlete().at(t).at(p);
    return runner.camera().project(w[0], w[1], w[2]);
  }

  private Spot hips(double t) {
    return truth(t, BodyPoint.LEFT_HIP).towards(truth(t, BodyPoint.RIGHT_HIP), 0.5);
  }

  @Test
  void findThePaintedAthleteInTheWholePicture() throws IOException {
    Painter painter = runner.at(start);
    ImageIO.write(painter.image(), "png", new File("target/painted.png"));
    PersonFinder.Answer answer = new PersonFinder(detector, landmarks).find(painter.picture());
    assertThat(answer.people()).isEqualTo(1);
    assertThat(answer.remarks()).isEmpty();
    assertThat(new Spot(answer.region().x(), answer.region().y()).to(hips(start))).isLessThan(60);
  }

  @Test
  void sayThatTwoPeopleAreThereAndTakeTheOneInTheBox() {
    Painter painter = runner.at(start).add(runner.athlete().at(start + 0.1), 3);
    PersonFinder finder = new PersonFinder(detector, landmarks);
    PersonFinder.Answer answer = finder.find(painter.picture());
    assertThat(answer.people()).isEqualTo(2);
    assertThat(answer.remarks()).singleElement().asString().contains("2 people", "box");
    Spot h = hips(start);
    PersonFinder.Answer boxed = finder.find(painter.picture(), new Box(h.x() - 150, h.y() - 200, 300, 400));
    assertThat(new Spot(boxed.region().x(), boxed.region().y()).to(h)).isLessThan(60);
  }

  @Test
  void refuseAPictureWithoutAnybody() {
    PersonFinder finder = new PersonFinder(detector, landmarks);
    Picture empty = runner.empty().picture();
    assertThatThrownBy(() -> finder.find(empty)).isInstanceOf(RefusedException.class).hasMessageContaining("Nobody was found");
    assertThatThrownBy(() -> finder.find(empty, new Box(400, 200, 200, 400)))
        .isInstanceOf(RefusedException.class)
        .hasMessageContaining("No body was seen in the box");
    assertThatThrownBy(() -> finder.find(empty, new Box(1400, 200, 200, 400)))
        .isInstanceOf(RefusedException.class)
        .hasMessageContaining("not in the picture");
  }

  @Test
  void followThePaintedAthlete() {
    int n = 40;
    double[] t = new double[n];
    for (int i = 0; i < n; i++) {
      t[i] = start + i / 60.0;
    }
    PersonFinder finder = new PersonFinder(detector, landmarks);
    Follower follower = new Follower(landmarks, finder, finder.find(picture(t[0])).region());
    Track.Builder b = Track.at(t);
    int seen = 0;
    for (int i = 0; i < n; i++) {
      seen += follow(follower, picture(t[i]), b, i) ? 1 : 0;
    }
    Track track = b.build();
    List<Integer> frames = new ArrayList<>();
    for (int i = 0; i < n; i++) {
      frames.add(i);
    }
    System.out.printf(
        Locale.ROOT, "painted athlete: %.0f px to a metre, seen in %d of %d pictures%n",
        runner.camera().focal() / runner.camera().distance(), seen, n);
    for (Joint j : List.of(Joint.SHOULDER, Joint.HIP, Joint.KNEE, Joint.ANKLE, Joint.HEEL, Joint.TOE)) {
      List<Double> named = new ArrayList<>();
      List<Double> either = new ArrayList<>();
      int exchanged = 0;
      for (int i : frames) {
        Spot l = track.spot(BodyPoint.of(j, Foot.LEFT), i);
        Spot r = track.spot(BodyPoint.of(j, Foot.RIGHT), i);
        if (!l.known() || !r.known()) {
          continue;
        }
        Spot tl = truth(t[i], BodyPoint.of(j, Foot.LEFT));
        Spot tr = truth(t[i], BodyPoint.of(j, Foot.RIGHT));
        named.addAll(List.of(l.to(tl), r.to(tr)));
        boolean other = l.to(tr) + r.to(tl) < l.to(tl) + r.to(tr);
        exchanged += other ? 1 : 0;
        either.addAll(other ? List.of(l.to(tr), r.to(tl)) : List.of(l.to(tl), r.to(tr)));
      }
      System.out.printf(
          Locale.ROOT, "  %-8s median %5.1f px, 9 in 10 within %5.1f px; sides exchanged in %d of %d; with sides put right median %5.1f px%n",
          j, share(named, 0.5), share(named, 0.9), exchanged, named.size() / 2, share(either, 0.5));
    }
    assertThat(seen).as("pictures in which the athlete is seen").isGreaterThanOrEqualTo(36);
    assertThat(follower.unseen()).isEqualTo(n - seen);
    for (int i = 0; i < n; i++) {
      Spot h = track.spot(BodyPoint.LEFT_HIP, i).towards(track.spot(BodyPoint.RIGHT_HIP, i), 0.5);
      if (h.known()) {
        assertThat(h.to(hips(t[i]))).as("hips in picture " + i).isLessThan(60);
      }
    }
  }

  @Test
  void findTheAthleteAgainAfterPicturesWithoutAnybody() {
    PersonFinder finder = new PersonFinder(detector, landmarks);
    Follower follower = new Follower(landmarks, finder, finder.find(picture(start)).region());
    Track.Builder b = Track.at(new double[] {0, 0.1, 0.2});
    assertThat(follow(follower, picture(start), b, 0)).isTrue();
    assertThat(follow(follower, runner.empty().picture(), b, 1)).isFalse();
    assertThat(follow(follower, picture(start + 0.1), b, 2)).isTrue();
    assertThat(b.build().seen(BodyPoint.LEFT_HIP, 1)).isFalse();
    assertThat(follower.remarks()).singleElement().asString().contains("In 1 picture", "1 time");
  }

  @Test
  void printHowLongANetworkTakes() {
    Picture p = picture(start);
    Region whole = new Region(640, 360, 720, 0);
    for (int i = 0; i < 5; i++) {
      landmarks.look(p, whole);
      detector.look(p, whole);
    }
    long a = System.nanoTime();
    for (int i = 0; i < 20; i++) {
      landmarks.look(p, whole);
    }
    long m = System.nanoTime();
    for (int i = 0; i < 20; i++) {
      detector.look(p, whole);
    }
    System.out.printf(
        Locale.ROOT, "a pass with sampling, 2 threads: landmarks %.1f ms, detector %.1f ms%n", (m - a) / 20e6, (System.nanoTime() - m) / 20e6);
  }

  private static double share(List<Double> values, double share) {
    double[] v = values.stream().mapToDouble(d -> d).sorted().toArray();
    return v.length == 0 ? Double.NaN : v[(int) Math.min(v.length - 1, Math.floor(share * v.length))];
  }

  @Test
  void turnTheRegionSoThatTheBodyStandsUpright() {
    Region upright = Region.round(new Spot(100, 200), new Spot(100, 120));
    assertThat(upright.turn()).isCloseTo(0, within(1e-12));
    assertThat(upright.side()).isCloseTo(2 * 1.25 * 80, within(1e-9));
    Region lying = Region.round(new Spot(100, 200), new Spot(180, 200));
    Spot top = lying.inPicture(0.5, 0);
    assertThat(top.x()).as("the head's end of the region").isCloseTo(200, within(1e-9));
    assertThat(top.y()).isCloseTo(200, within(1e-9));
  }

  @Test
  void samplePixelsWhereTheyLie() {
    byte[] rgb = new byte[3 * 16];
    for (int i = 0; i < 16; i++) {
      Arrays.fill(rgb, 3 * i, 3 * i + 3, (byte) (10 * i));
    }
    float[] to = new float[3 * 16];
    new Region(2, 2, 4, 0).sample(new Picture(4, 4, rgb), 4, 0, 255, to);
    for (int i = 0; i < 16; i++) {
      assertThat(to[3 * i]).isCloseTo(10f * i, within(1e-3f));
    }
    new Region(2, 2, 4, Math.PI / 2).sample(new Picture(4, 4, rgb), 4, 0, 255, to);
    assertThat(to[0]).as("turned clockwise, the first pixel is the top right one").isCloseTo(30f, within(1e-3f));
  }
}
