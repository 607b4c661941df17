package boundwright.clip.scan;

import static org.assertj.core.api.Assertions.assertThat;

import boundwright.clip.FoundClip;
import boundwright.clip.track.BodyPoint;
import boundwright.clip.track.Spot;
import boundwright.clip.truth.Body;
import boundwright.clip.truth.Camera;
import boundwright.clip.truth.Mp4Writer;
import boundwright.clip.truth.PaintedRunner;
import boundwright.clip.truth.Painter;
import boundwright.clip.truth.Skeleton;
import boundwright.clip.truth.Stroller;
import boundwright.footfall.Sequence;
import java.awt.Color;
import java.nio.file.Path;
import java.util.Random;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Painted films with more people than the athlete, or in which the athlete comes twice. The films are made up (own output). */
class OthersInFilmTest {
  private static final double FPS = 30;
  private static final Painter.Kit OTHER =
      new Painter.Kit(new Color(224, 172, 140), new Color(150, 50, 44), new Color(90, 90, 96), new Color(240, 240, 240), new Color(150, 120, 70));
  private static final Camera CAMERA = new Camera(7, 8, 1.2, true, 0, 0, 0, 1000, 0, 1280, 720);

  @TempDir Path folder = Path.of("");

  private final Skeleton athlete = new Skeleton(Sequence.parse("RLRL"), 2, 6, 1, new Random(3));

  @BeforeAll
  static void weights() {
    PaintedRunner.weightsOrSkip();
  }

  /** Paints one frame of a film into a picture without anybody. */
  private interface Scene {
    void paint(double t, Painter into);
  }

  private FoundClip scan(String name, double seconds, Scene scene) {
    Path file = folder.resolve(name);
    try (Mp4Writer out = Mp4Writer.open(file, 1280, 720, 90_000, 0)) {
      for (int i = 0; i < seconds * FPS; i++) {
        Painter p = new Painter(CAMERA);
        scene.paint(i / FPS, p);
        out.write(p.image(), Math.round(90_000 * i / FPS));
      }
    }
    return Scanner.scan(ScanOrder.of(file, PaintedRunner.WEIGHTS), p -> {});
  }

  /** When the athlete's middle is at a place of the runway [s of the athlete's own time]. */
  private double at(double x) {
    double t = -2;
    while (athlete.centreOfMass(t).x() < x) {
      t += 0.001;
    }
    return t;
  }

  /** Of the frames in which the athlete's hips are well in the picture and somebody was seen, the share in which it was the athlete. */
  private double own(FoundClip clip, double start, double from, double to) {
    int seen = 0;
    int right = 0;
    for (int i = 0; i < clip.track().frames(); i++) {
      double t = clip.track().time(i);
      if (t < from || t > to || !clip.track().seen(BodyPoint.LEFT_HIP, i)) {
        continue;
      }
      Body body = athlete.at(start + t);
      double[] hip = body.at(BodyPoint.LEFT_HIP);
      Spot truth = CAMERA.project(hip[0], hip[1], hip[2]);
      seen++;
      right += truth.to(clip.track().spot(BodyPoint.LEFT_HIP, i)) < 50 ? 1 : 0;
    }
    return seen == 0 ? 0 : (double) right / seen;
  }

  @Test
  void whoStandsBesideTheRunwayDoesNotTakeTheTrackOver() {
    double start = at(3);
    double end = at(11.3) - start;
    Stroller other = new Stroller(7, 0);
    FoundClip clip =
        scan("beside.mp4", end, (t, p) -> {
          p.wearing(OTHER).add(other.at(t), -0.7);
          p.wearing(Painter.Kit.USUAL).add(athlete.at(start + t), 0);
        });
    assertThat(own(clip, start, 0, end)).isGreaterThan(0.95);
  }

  /** Who walks out of the picture first is not who is read, and is named. */
  @Test
  void whoLeavesThePictureIsNotReadInPlaceOfWhoRuns() {
    double runs = 1.9;
    double start = at(0.8) - runs;
    Stroller first = new Stroller(11.2, 1.6);
    FoundClip clip =
        scan("leaves.mp4", runs + 1.3, (t, p) -> {
          p.wearing(OTHER).add(first.at(t), 0);
          p.wearing(Painter.Kit.USUAL).add(athlete.at(start + t), 0);
        });
    assertThat(clip.track().time(0)).as("where the pass that is read begins [s]").isGreaterThan(runs - 0.2);
    assertThat(own(clip, start, runs, runs + 1.3)).isGreaterThan(0.95);
    assertThat(clip.remarks()).anyMatch(s -> s.contains("goes through the picture 2 times") && s.contains("not read is 0.0 to"));
  }

  /** A helper who stands there from the start does not hide who runs in. */
  @Test
  void whoStandsThereFirstDoesNotHideWhoRunsIn() {
    double runs = 1.2;
    double start = at(0.8) - runs;
    Stroller helper = new Stroller(9.5, 0);
    FoundClip clip =
        scan("helper.mp4", runs + 1.4, (t, p) -> {
          p.wearing(OTHER).add(helper.at(t), 0);
          p.wearing(Painter.Kit.USUAL).add(athlete.at(start + t), 0);
        });
    assertThat(own(clip, start, 0, runs + 1.4)).isGreaterThan(0.9);
    assertThat(clip.track().time(0)).isGreaterThan(1);
  }
}
