package boundwright.clip.session;

import boundwright.clip.track.BodyPoint;
import boundwright.clip.truth.Body;
import boundwright.clip.truth.Camera;
import boundwright.clip.truth.Mp4Writer;
import boundwright.clip.truth.Painter;
import boundwright.clip.truth.Skeleton;
import boundwright.footfall.Sequence;
import java.awt.image.BufferedImage;
import java.awt.image.DataBufferByte;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/**
 * A session as a phone on a stand films it: athletes bound through in turn, walk back, stand about, and between them nothing happens.
 * Its people are made up, and so are its times; the walk is a slowed run, so that speed alone does not make it look like one.
 */
final class PaintedSession {
  private static final int TICKS = 90_000;
  private static final String[] SEQUENCES = {"RRL", "RLRL", "LLR", "RRLL"};
  private static final double WALK_MS = 1.5;
  /** A running body slowed so far moves at walking speed. */
  private static final double WALK_PACE = 0.3;

  /** One rep that the film shows: who of the made-up athletes, from the first look to the landing [s]. */
  record TrueRep(int who, double from_s, double to_s) {}

  /** Somebody in the picture for a while. */
  private record Act(int who, double from_s, double to_s, Mover mover) {}

  private interface Mover {
    Body at(double t);
  }

  private final Camera camera;
  private final Random random;
  private final List<Act> acts = new ArrayList<>();
  private final List<TrueRep> reps = new ArrayList<>();
  private double end;

  /**
   * @param athletes in turn
   * @param rounds each of them bounds so often
   * @param idle_s about how long nothing happens between two [s]
   */
  PaintedSession(int width, int high, int athletes, int rounds, double idle_s, long seed) {
    random = new Random(seed);
    camera = new Camera(0, 10, 1.3, true, 0, 2, 0, 0.62 * width, 0, width, high);
    double t = 1.5;
    for (int k = 0; k < athletes * rounds; k++) {
      t = turn(k % athletes, t) + idle_s * (0.5 + random.nextDouble());
    }
    // somebody stands about and shifts from foot to foot all the while
    Body still = new Skeleton(Sequence.parse("RL"), 2, 4, 0, random).at(0.9);
    double place = -5.5;
    acts.add(new Act(athletes, 3, 0.6 * t, s -> moved(still, place + 0.06 * Math.sin(s) - still.spot(BodyPoint.LEFT_HIP).x(), false)));
    end = t + 2;
  }

  private double turn(int who, double t) {
    int steps = 2 + random.nextInt(3);
    Sequence sequence = Sequence.parse(SEQUENCES[random.nextInt(SEQUENCES.length)]);
    Skeleton athlete = new Skeleton(sequence, steps, 5 + 1.8 * random.nextDouble(), 0, random);
    double shift = 5.5 - athlete.mass().landingX();
    double landing = athlete.mass().landingTime();
    double before = 1;
    double seen = Double.NaN;
    for (double s = -before; s < landing; s += 0.01) {
      double x = athlete.centreOfMass(s).x() + shift;
      if (Double.isNaN(seen) && x > -8) {
        seen = s;
      }
    }
    double start = t + before;
    acts.add(new Act(who, t, start + landing + 1.2, s -> moved(athlete.at(s - start), shift, false)));
    reps.add(new TrueRep(who, start + seen, start + landing));
    double back = start + landing + 1.2;
    double gone = 14 / WALK_MS;
    Skeleton walker = new Skeleton(Sequence.parse("RL x8"), 8, 4.6, 0, random);
    double from = athlete.centreOfMass(landing + 1.2).x() + shift;
    acts.add(
        new Act(
            who, back, back + gone,
            s -> {
              Body body = walker.at(0.4 + WALK_PACE * (s - back));
              return moved(body, from - WALK_MS * (s - back) + body.spot(BodyPoint.LEFT_HIP).x(), true);
            }));
    // the next one sometimes starts while this one is still walking back
    return random.nextBoolean() ? back + 0.4 * gone : back + gone;
  }

  /** Shifted along the runway; turned to face the other way if wished. */
  private static Body moved(Body body, double shift, boolean back) {
    double[][] out = new double[body.points().length][];
    for (int i = 0; i < out.length; i++) {
      double[] p = body.points()[i];
      out[i] = new double[] {back ? shift - p[0] : shift + p[0], p[1], back ? -p[2] : p[2]};
    }
    return new Body(out);
  }

  List<TrueRep> reps() {
    return reps;
  }

  double seconds() {
    return end;
  }

  /** Writes the film, at most so much of it. */
  void write(Path to, double fps, double most_s) {
    BufferedImage empty = new Painter(camera).image();
    try (Mp4Writer out = Mp4Writer.open(to, camera.width(), camera.high(), TICKS, 0)) {
      int frames = (int) (Math.min(end, most_s) * fps);
      for (int i = 0; i < frames; i++) {
        double t = i / fps;
        List<Act> now = acts.stream().filter(a -> t >= a.from_s && t < a.to_s).toList();
        BufferedImage image = now.isEmpty() ? empty : paint(now, t);
        out.write(image, Math.round(t * TICKS));
      }
    }
  }

  private BufferedImage paint(List<Act> now, double t) {
    BufferedImage image = null;
    for (Act act : now) {
      Body body = act.mover.at(t);
      double x = camera.project(body.spot(BodyPoint.LEFT_HIP).x(), 1, 0).x();
      if (x < -0.1 * camera.width() || x > 1.1 * camera.width()) {
        continue;
      }
      BufferedImage one = new Painter(camera).add(body, 0).image();
      dress(one, act.who, x);
      image = image == null ? one : over(image, one, x);
    }
    return image == null ? new Painter(camera).image() : image;
  }

  /** The painter knows one shirt; the others wear it in other colours. */
  private void dress(BufferedImage image, int who, double x) {
    if (who == 0) {
      return;
    }
    byte[] p = bytes(image);
    int w = camera.width();
    int half = camera.width() / 10;
    for (int y = 0; y < camera.high(); y++) {
      for (int c = (int) Math.max(0, x - half); c < Math.min(w, x + half); c++) {
        int i = 3 * (y * w + c);
        int blue = p[i] & 0xff;
        int green = p[i + 1] & 0xff;
        int red = p[i + 2] & 0xff;
        if (blue > 1.5 * red && blue > 1.25 * green) {
          p[i] = (byte) (who == 2 ? green : red);
          p[i + 1] = (byte) (who == 2 ? blue : who == 3 ? blue : green);
          p[i + 2] = (byte) (who == 2 ? red : blue);
        }
      }
    }
  }

  private BufferedImage over(BufferedImage below, BufferedImage above, double x) {
    int half = camera.width() / 10;
    int from = (int) Math.max(0, x - half);
    int to = (int) Math.min(camera.width(), x + half);
    BufferedImage empty = background();
    byte[] a = bytes(below);
    byte[] b = bytes(above);
    byte[] e = bytes(empty);
    for (int y = 0; y < camera.high(); y++) {
      for (int i = 3 * (y * camera.width() + from); i < 3 * (y * camera.width() + to); i++) {
        if (b[i] != e[i]) {
          a[i] = b[i];
        }
      }
    }
    return below;
  }

  private @org.jspecify.annotations.Nullable BufferedImage kept;

  private BufferedImage background() {
    BufferedImage k = kept;
    if (k == null) {
      k = new Painter(camera).image();
      kept = k;
    }
    return k;
  }

  private static byte[] bytes(BufferedImage image) {
    return ((DataBufferByte) image.getRaster().getDataBuffer()).getData();
  }

  /** File, athletes, rounds, idle seconds, seed, frames a second, most seconds. Prints the truth. */
  public static void main(String[] args) {
    PaintedSession s =
        new PaintedSession(
            1280, 720, Integer.parseInt(args[1]), Integer.parseInt(args[2]), Double.parseDouble(args[3]), Long.parseLong(args[4]));
    System.out.printf("%.1f s%n", s.seconds());
    for (TrueRep r : s.reps()) {
      System.out.printf("%d %.2f %.2f%n", r.who(), r.from_s(), r.to_s());
    }
    s.write(Path.of(args[0]), Double.parseDouble(args[5]), Double.parseDouble(args[6]));
  }
}
