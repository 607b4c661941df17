package boundwright.clip.warp;

import boundwright.clip.painted.PaintedSession;
import boundwright.clip.track.BodyPoint;
import boundwright.clip.track.Spot;
import boundwright.clip.truth.PaintedPlace;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.jspecify.annotations.Nullable;

/**
 * A painted training session filmed by hand: the phone waits where the run begins, turns along with every rep, stays with the landing, sometimes goes
 * along with whoever walks on, and swings back. The hand is late, wanders and shakes; the phone does not move from its place.
 *
 * <p>Run: {@code bench/clip held-session OUT.mp4 SECONDS SEED [fps=30] [size=960x540] [scale=0.75] [shake=2] [shutter=20] ...}, options as in
 * {@link WarpFilm}. Writes OUT.session (what happens) and OUT.camera beside it.
 */
public final class HeldSession implements StillSource {
  private static final int WIDE = 3000;
  private static final int HIGH = 1000;
  /** As a phone of 1280 x 720 [px]. */
  private static final double FOCAL = 1000;
  private static final double SHUTTER_S = 0.002;
  private static final double STEP_S = 0.02;
  /** The hand comes after what it follows in about twice this time [s] (judgement). */
  private static final double LATE_S = 0.12;
  /** A swing back is no faster than this [rad/s] (judgement). */
  private static final double SWING_RAD_S = 0.7;
  /** The run begins so far before the middle of the picture [m]. */
  private static final double WAITS_M = 8;

  private final PaintedSession session;
  private final PaintedPlace place;
  private final double fps;
  private final double until_s;
  private final double[] yaw;
  private int frame;

  HeldSession(double length_s, long seed, double fps, double until_s) {
    this.fps = fps;
    this.until_s = until_s;
    session = new PaintedSession(length_s, seed, WIDE, HIGH, FOCAL);
    place = new PaintedPlace(session.camera(), PaintedPlace.Kind.RICH, seed);
    Random random = new Random(31 * seed + 7);
    yaw = new double[(int) (length_s / STEP_S) + 2];
    boolean[] walksAlong = new boolean[session.doings().size()];
    for (int i = 0; i < walksAlong.length; i++) {
      walksAlong[i] = random.nextDouble() < 0.3;
    }
    double[][] wander = new double[3][];
    for (int i = 0; i < wander.length; i++) {
      wander[i] = new double[] {2 * Math.PI * (0.08 + 0.3 * random.nextDouble()), 2 * Math.PI * random.nextDouble()};
    }
    double at = angle(session.camera().x() - WAITS_M);
    double speed = 0;
    for (int k = 0; k < yaw.length; k++) {
      double t = k * STEP_S;
      boolean[] swings = new boolean[1];
      double target = target(t, walksAlong, swings);
      speed += STEP_S * ((target - at) / (LATE_S * LATE_S) - 2 * speed / LATE_S);
      speed = swings[0] ? Math.max(-SWING_RAD_S, Math.min(SWING_RAD_S, speed)) : speed;
      at += STEP_S * speed;
      double slow = 0;
      for (double[] w : wander) {
        slow += Math.toRadians(0.7) * Math.sin(w[0] * t + w[1]);
      }
      yaw[k] = at + slow;
    }
  }

  /** Where the hand would look [rad]. */
  private double target(double t, boolean[] walksAlong, boolean[] swings) {
    List<PaintedSession.Doing> all = session.doings();
    for (int i = 0; i < all.size(); i++) {
      PaintedSession.Doing d = all.get(i);
      boolean runs = d.what().equals("rep") && t >= d.from() - 0.3 && t <= d.to() + 1.2;
      boolean walks = (d.what().equals("onward") || d.what().equals("back")) && walksAlong[i] && t >= d.from() && t <= Math.min(d.from() + 6, d.to());
      if (runs || walks) {
        double x = d.person().at().apply(t).at(BodyPoint.LEFT_HIP)[0];
        return angle(Math.max(session.camera().x() - WAITS_M, x));
      }
    }
    swings[0] = true;
    return angle(session.camera().x() - WAITS_M);
  }

  /** To the right of the still picture's axis [rad]. */
  private double angle(double along) {
    return Math.atan((session.camera().project(along, 1, 0).x() - WIDE / 2.0) / FOCAL);
  }

  @Override
  public int width() {
    return WIDE;
  }

  @Override
  public int height() {
    return HIGH;
  }

  @Override
  public double focal() {
    return FOCAL;
  }

  @Override
  public double[] follow(double time_s) {
    double k = Math.max(0, Math.min(yaw.length - 1.001, time_s / STEP_S));
    double share = k - (int) k;
    double at = (1 - share) * yaw[(int) k] + share * yaw[(int) k + 1];
    Spot level = session.camera().project(session.camera().x(), 1, 0);
    return new double[] {WIDE / 2.0 + FOCAL * Math.tan(at), level.y()};
  }

  @Override
  public @Nullable Still next() {
    double t = frame / fps;
    if (t >= until_s) {
      return null;
    }
    frame++;
    return new Still(t, place.rgb(session.at(t), List.of(t), SHUTTER_S));
  }

  @Override
  public void close() {}

  /**
   * Writes film, maps and what happens.
   *
   * @param length_s of the session that is planned [s]
   * @param until_s the film is no longer than this [s]
   */
  public static int write(Path film, double length_s, double until_s, long seed, List<String> options) throws IOException {
    double fps = options.stream().filter(o -> o.startsWith("fps=")).mapToDouble(o -> Double.parseDouble(o.substring(4))).findFirst().orElse(30);
    String name = film.getFileName().toString();
    String stem = name.substring(0, name.lastIndexOf('.'));
    HeldSession source = new HeldSession(length_s, seed, fps, Math.min(length_s, until_s));
    Files.writeString(film.resolveSibling(stem + ".session"), source.session.text());
    WarpOptions o = WarpOptions.of(options.stream().filter(w -> !w.startsWith("fps=")).toList(), WIDE);
    return new Warper(source, o, 1).write(film, film.resolveSibling(stem + ".camera"), length_s);
  }

  public static void main(String[] args) throws IOException {
    double length_s = Double.parseDouble(args[1]);
    int frames = write(Path.of(args[0]), length_s, length_s, Long.parseLong(args[2]), Arrays.asList(args).subList(3, args.length));
    System.out.println(frames + " frames");
  }
}
