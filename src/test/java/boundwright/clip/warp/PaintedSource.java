package boundwright.clip.warp;

import boundwright.clip.real.TruthFile;
import boundwright.clip.track.BodyPoint;
import boundwright.clip.track.Spot;
import boundwright.clip.truth.Camera;
import boundwright.clip.truth.PaintedPlace;
import boundwright.clip.truth.Skeleton;
import boundwright.clip.truth.TrueContact;
import boundwright.footfall.Sequence;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import org.jspecify.annotations.Nullable;

/** A made-up rep on a made-up place, painted very wide, as far as a camera turned by 70 degrees would see it. */
public final class PaintedSource implements StillSource {
  private static final String[] DRILLS = {"RRL", "RRL RRL", "RRLL RR", "LLL", "LLR"};
  private static final double SHUTTER_S = 0.002;
  private static final double FOLLOW_S = 0.3;

  private final Skeleton athlete;
  private final Camera camera;
  private final PaintedPlace place;
  private final Sequence sequence;
  private final double fps;
  private final double from;
  private final double to;
  private int frame;

  /** Whether an option is one of this class. */
  static boolean knows(String option) {
    return option.startsWith("fps=") || option.startsWith("steps=") || option.startsWith("place=") || option.startsWith("distance=") || option.startsWith("high=") || option.startsWith("wide=");
  }

  private PaintedSource(long seed, double fps, int steps, PaintedPlace.Kind kind, double distance, int wide, int high) {
    this.fps = fps;
    Random random = new Random(seed);
    sequence = Sequence.parse(DRILLS[Math.floorMod(seed, DRILLS.length)]);
    athlete = new Skeleton(sequence, steps, 5.5 + 2 * random.nextDouble(), 1, random);
    from = athlete.mass().contacts().get(0).down() - 0.15;
    to = athlete.mass().landingTime() + 0.25;
    double middle = (athlete.centreOfMass(from).x() + athlete.centreOfMass(to).x()) / 2;
    // a picture of 720 rows has a focal length of 1000 px; the still picture reaches further up and down
    double size = high / 720.0;
    camera =
        new Camera(middle, distance, 1.3, random.nextBoolean(), 0, 0, 0, 1000 * size, 0, (int) (wide * size) / 2 * 2, (int) (1000 * size) / 2 * 2);
    place = new PaintedPlace(camera, kind, seed);
  }

  /** From options {@code fps=120 steps=2 place=rich distance=11 wide=3000 high=720}. */
  public static PaintedSource of(long seed, List<String> options) {
    double fps = 120;
    int steps = 2;
    double distance = 11;
    int wide = 3000;
    int high = 720;
    PaintedPlace.Kind kind = PaintedPlace.Kind.RICH;
    for (String o : options) {
      String v = o.substring(o.indexOf('=') + 1);
      switch (o.substring(0, o.indexOf('='))) {
        case "fps" -> fps = Double.parseDouble(v);
        case "steps" -> steps = Integer.parseInt(v);
        case "distance" -> distance = Double.parseDouble(v);
        case "wide" -> wide = Integer.parseInt(v);
        case "high" -> high = Integer.parseInt(v);
        default -> kind = PaintedPlace.Kind.valueOf(v.toUpperCase(Locale.ROOT));
      }
    }
    return new PaintedSource(seed, fps, steps, kind, distance, wide, high);
  }

  /** From the first frame to the last [s]. */
  double length_s() {
    return to - from;
  }

  /** Whether a point on the ground, so many metres along, is well in the made picture at a time of the film. */
  interface Sees {
    boolean ground(double time_s, Spot stillPicture);
  }

  /** What is known of it, in frames; where a foot is out of the picture at touchdown or toe-off, nothing is judged. */
  TruthFile truth(Sees sees) {
    List<TruthFile.Known> known = new ArrayList<>();
    List<TruthFile.Stretch> ignored = new ArrayList<>();
    for (TrueContact c : athlete.mass().contacts()) {
      double down = (c.down() - from) * fps;
      double up = (c.up() - from) * fps;
      Spot foot = camera.project(c.toeX(), 0, 0);
      if (sees.ground(c.down() - from, foot) && sees.ground(c.up() - from, foot)) {
        known.add(new TruthFile.Known(c.foot(), down, up));
      } else {
        ignored.add(new TruthFile.Stretch(down, up));
      }
    }
    return new TruthFile(1, false, sequence, known, (athlete.mass().landingTime() - from) * fps, ignored);
  }

  /** The contacts as they were, in the athlete's own time. */
  List<TrueContact> contacts() {
    return athlete.mass().contacts();
  }

  /** What is taken off an athlete's time to have the film's [s]. */
  double begins_s() {
    return from;
  }

  /** Where the heels land, and when by the film [m, s]. */
  double[] landing() {
    return new double[] {athlete.mass().landingX(), athlete.mass().landingTime() - from};
  }

  /** A place of the athlete's line in the still picture [px]. */
  Spot ground(double along) {
    return camera.project(along, 0, 0);
  }

  Sequence sequence() {
    return sequence;
  }

  /** Every two metres of the athlete's line that the picture shows. */
  String marks() {
    StringBuilder out = new StringBuilder();
    for (int x = -40; x <= 60; x += 2) {
      Spot s = camera.project(x, 0, 0);
      if (camera.sees(s)) {
        out.append(String.format(Locale.ROOT, "mark %d %.3f %.3f%n", x, s.x(), s.y()));
      }
    }
    return out.toString();
  }

  @Override
  public int width() {
    return camera.width();
  }

  @Override
  public int height() {
    return camera.high();
  }

  @Override
  public double focal() {
    return camera.focal();
  }

  @Override
  public double[] follow(double time_s) {
    // a hand follows smoothly and a little late
    double x = 0;
    double y = 0;
    int n = 8;
    for (int k = 0; k < n; k++) {
      double t = Math.max(from, Math.min(to, from + time_s - FOLLOW_S * k / n));
      Spot s = camera.project(athlete.centreOfMass(t).x(), 1.0, 0);
      x += s.x() / n;
      y += s.y() / n;
    }
    return new double[] {x, y};
  }

  @Override
  public @Nullable Still next() {
    double t = from + frame / fps;
    if (t > to) {
      return null;
    }
    double now = frame / fps;
    frame++;
    return new Still(now, place.rgb(List.of(athlete::at), t, SHUTTER_S));
  }

  /** Where a body point is in the still picture at a time of the film [px]. */
  Spot truth(BodyPoint p, double time_s) {
    double[] w = athlete.at(from + time_s).at(p);
    return camera.project(w[0], w[1], w[2]);
  }

  @Override
  public void close() {}
}
