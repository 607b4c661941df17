package boundwright.clip.camera;

import boundwright.clip.track.Spot;
import boundwright.clip.track.Track;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * Where the camera looked in each frame of a clip: what carries a picture point into one picture that stands still, the
 * <em>common picture</em>. It has the size of the film's own and looks where the camera looked in the middle of its way, so
 * that a wide turn does not run out of it. For a camera that stood it is the film's picture itself. Frames count as in
 * the clip's track, from 0.
 */
@SuppressWarnings("ArrayRecordComponent")
public final class CameraPath {
  /** Standard deviations of the solution times this: real errors over predicted were 1.2 to 3.1 (trial, docs/camera.md). */
  static final double GROWN = 3;

  /** What the camera did. */
  public enum Kind {
    /** It stood: nothing is carried. */
    STOOD,
    /** It turned about where it stood, zoomed or shook, and was followed. */
    TURNED,
    /** The same, but the phone also moved sideways a little, as at an arm's end. */
    ARM,
    /** It travelled, for example beside the athlete: no turning camera explains the film. */
    TRAVELLED,
    /** The background shows nothing to hold on to, so nobody can tell whether it moved. */
    PLAIN,
    /** It moved, and the background shows too little to follow it. */
    LOST
  }

  /**
   * The turning of one frame.
   *
   * @param x rotation vector from the frame's rays to the common picture's [rad]
   * @param y of it
   * @param z of it
   * @param focal focal length [px]
   * @param drift standard deviation gathered along the way [px of the frame]; where it differs between two frames, they drift apart
   * @param jitter standard deviation of the frame by itself [px]
   */
  public record Look(double x, double y, double z, double focal, double drift, double jitter) {}

  private final Kind kind;
  private final int width;
  private final int height;
  private final double commonFocal;
  private final double shutter_s;
  private final boolean shutterFound;
  private final double swing;
  private final double[] times;
  private final Look[] looks;
  private final double[][] turns;
  private final double[][] speeds;

  private CameraPath(
      Kind kind, int width, int height, double commonFocal, double shutter_s, boolean shutterFound, double swing, double[] times, Look[] looks) {
    this.kind = kind;
    this.width = width;
    this.height = height;
    this.commonFocal = commonFocal;
    this.shutter_s = shutter_s;
    this.shutterFound = shutterFound;
    this.swing = swing;
    this.times = times;
    this.looks = looks;
    this.turns = new double[looks.length][];
    this.speeds = new double[looks.length][];
    for (int i = 0; i < looks.length; i++) {
      turns[i] = Turning.of(looks[i].x, looks[i].y, looks[i].z);
    }
    for (int i = 0; i < looks.length; i++) {
      int p = Math.max(0, i - 1);
      int q = Math.min(looks.length - 1, i + 1);
      double dt = times[q] - times[p];
      double[] v = dt > 0 ? Turning.vector(Turning.backTimes(turns[p], turns[q])) : new double[3];
      speeds[i] = dt > 0 ? new double[] {v[0] / dt, v[1] / dt, v[2] / dt} : v;
    }
  }

  /** A camera that was not followed: it stood, or it could not be followed. */
  public static CameraPath of(Kind kind) {
    return new CameraPath(kind, 0, 0, 0, 0, true, 0, new double[0], new Look[0]);
  }

  /** A camera that stood. */
  public static CameraPath stood() {
    return of(Kind.STOOD);
  }

  /**
   * A camera that was followed.
   *
   * @param kind {@link Kind#TURNED} or {@link Kind#ARM}
   * @param width of the film's picture [px]
   * @param height of it [px]
   * @param commonFocal focal length of the common picture [px]
   * @param shutter_s from the first row to the last [s], 0 where it was not found
   * @param shutterFound whether it was
   * @param swing how far the ground moved against what stands behind it, beyond what turning explains, as a share of the
   *     picture's width; NaN where nothing tells
   * @param times of the frames [s]
   * @param looks one for each frame
   */
  @SuppressWarnings("TooManyParameters")
  public static CameraPath followed(
      Kind kind, int width, int height, double commonFocal, double shutter_s, boolean shutterFound, double swing, double[] times, Look[] looks) {
    if (times.length != looks.length) {
      throw new IllegalArgumentException(times.length + " times for " + looks.length + " frames");
    }
    return new CameraPath(kind, width, height, commonFocal, shutter_s, shutterFound, swing, times.clone(), looks.clone());
  }

  /** What the camera did. */
  public Kind kind() {
    return kind;
  }

  /** Whether the ground stands still in the common picture: the camera stood, or it was followed. */
  public boolean followed() {
    return kind == Kind.STOOD || carries();
  }

  /** Whether points are carried at all. */
  public boolean carries() {
    return looks.length > 0;
  }

  /** How many frames it knows; 0 where nothing is carried. */
  public int frames() {
    return looks.length;
  }

  /** What is known of a frame. */
  public Look look(int frame) {
    return looks[frame];
  }

  /** Width of the film's picture [px]; 0 where nothing is carried. */
  public int width() {
    return width;
  }

  /** Height of it [px]. */
  public int height() {
    return height;
  }

  /** Focal length of the common picture [px]. */
  public double commonFocal() {
    return commonFocal;
  }

  /** How long the shutter takes from the first row to the last [s]; 0 where it was not found. */
  public double shutter_s() {
    return shutter_s;
  }

  /** Whether the shutter's time was found. */
  public boolean shutterFound() {
    return shutterFound;
  }

  /** How far the ground moved against what stands behind it, as a share of the picture's width; NaN where nothing tells. */
  public double swing() {
    return swing;
  }

  /** Time of a frame [s]. */
  public double time(int frame) {
    return times[frame];
  }

  /** How far the camera turned in all, between the two frames that look farthest apart [degrees]. */
  public double turned_deg() {
    double most = 0;
    for (double[] t : turns) {
      for (double[] u : new double[][] {turns[0], turns[turns.length - 1]}) {
        double[] v = Turning.vector(Turning.backTimes(u, t));
        most = Math.max(most, Math.sqrt(v[0] * v[0] + v[1] * v[1] + v[2] * v[2]));
      }
    }
    return Math.toDegrees(most);
  }

  /** How far the camera turned from one frame to another [degrees]; the nearest known frame stands for one outside. */
  public double turned_deg(int one, int other) {
    if (!carries()) {
      return 0;
    }
    double[] v = Turning.vector(Turning.backTimes(turns[known(one)], turns[known(other)]));
    return Math.toDegrees(Math.sqrt(v[0] * v[0] + v[1] * v[1] + v[2] * v[2]));
  }

  private int known(int frame) {
    return Math.max(0, Math.min(looks.length - 1, frame));
  }

  /** A point of a frame in the common picture [px]; unknown where the camera looked too far away from it. */
  public Spot carry(int frame, Spot at) {
    if (!carries() || !at.known()) {
      return at;
    }
    int i = known(frame);
    double u = at.x() - width / 2.0;
    double v = at.y() - height / 2.0;
    double[] ray = {u / looks[i].focal, v / looks[i].focal, 1};
    if (shutter_s > 0) {
      ray = late(i, v, ray, 1);
    }
    double[] w = Turning.apply(turns[i], ray[0], ray[1], ray[2]);
    if (w[2] < 0.15 * Math.hypot(w[0], w[1])) {
      return new Spot(Double.NaN, Double.NaN);
    }
    return new Spot(commonFocal * w[0] / w[2] + width / 2.0, commonFocal * w[1] / w[2] + height / 2.0);
  }

  /**
   * The map from a frame to the common picture without the shutter's part, for drawing: nine numbers row by row, picture points
   * [px]. For a camera that stood it is the same picture.
   */
  public double[] map(int frame) {
    if (!carries()) {
      return Turning.none();
    }
    int i = known(frame);
    double[] in = {1 / looks[i].focal, 0, -width / 2.0 / looks[i].focal, 0, 1 / looks[i].focal, -height / 2.0 / looks[i].focal, 0, 0, 1};
    double[] out = {commonFocal, 0, width / 2.0, 0, commonFocal, height / 2.0, 0, 0, 1};
    return Turning.times(out, Turning.times(turns[i], in));
  }

  /** A point of the common picture in a frame [px], the other way; it may lie outside the frame. */
  public Spot back(int frame, Spot common) {
    if (!carries() || !common.known()) {
      return common;
    }
    int i = known(frame);
    double[] w = {(common.x() - width / 2.0) / commonFocal, (common.y() - height / 2.0) / commonFocal, 1};
    double[] ray = Turning.back(turns[i], w);
    double[] seen = ray;
    for (int round = 0; round < 3 && shutter_s > 0 && ray[2] > 0; round++) {
      seen = late(i, looks[i].focal * seen[1] / seen[2], ray, -1);
    }
    if (seen[2] < 0.15 * Math.hypot(seen[0], seen[1])) {
      return new Spot(Double.NaN, Double.NaN);
    }
    return new Spot(looks[i].focal * seen[0] / seen[2] + width / 2.0, looks[i].focal * seen[1] / seen[2] + height / 2.0);
  }

  /** The ray as the row's own time turns it; {@code v} is the row from the middle [px]. */
  private double[] late(int i, double v, double[] ray, double sign) {
    double t = sign * v / height * shutter_s;
    double[] turn = Turning.of(speeds[i][0] * t, speeds[i][1] * t, speeds[i][2] * t);
    return Turning.apply(turn, ray[0], ray[1], ray[2]);
  }

  /**
   * Standard deviation by which a place of one frame may be off against a place of another, across the picture, from following
   * alone [px of the frame]: what the solution says, grown, and what the shutter may add where its time was not found.
   */
  public double apart(int one, int other) {
    if (!carries()) {
      return 0;
    }
    Look a = looks[known(one)];
    Look b = looks[known(other)];
    double drift = Math.sqrt(Math.abs(a.drift * a.drift - b.drift * b.drift));
    double own = one == other ? 0 : Math.hypot(a.jitter, b.jitter);
    return Math.hypot(GROWN * Math.hypot(drift, own), shutterTerm(one, other));
  }

  /** Half the usual shutter's time, at a quarter of the picture from its middle, times how the turning changes [px]. */
  private double shutterTerm(int one, int other) {
    if (shutterFound || one == other) {
      return 0;
    }
    int i = known(one);
    int j = known(other);
    double change = Math.hypot(speeds[i][0] - speeds[j][0], speeds[i][1] - speeds[j][1]);
    return change * looks[i].focal * 0.25 * 0.010;
  }

  /** The points of a track in the common picture. */
  public Track carry(Track track) {
    if (!carries()) {
      return track;
    }
    return track.map((frame, spot) -> carry(frame, spot));
  }

  /** Why no length can be given, empty where lengths can be. */
  public Optional<String> noLengths() {
    return switch (kind) {
      case STOOD, TURNED, ARM -> Optional.empty();
      case PLAIN ->
          Optional.of(
              "The background shows nothing to hold on to, so nobody can tell whether the camera stood: no lengths are given. If it stood on a tripod, say so with the marks; else film with the runway's lines, cones or trees in the picture.");
      case LOST ->
          Optional.of(
              "The camera moved and the background shows too little to follow it: no lengths are given. Film with more of the ground and of what stands behind it, or put the phone on a stand.");
      case TRAVELLED ->
          Optional.of(
              "The camera travelled along instead of turning where it stood: no lengths are given. Stand still and turn with the athlete, or put the phone on a stand.");
    };
  }

  /** What is to be said of the camera, empty where it stood. */
  public Optional<String> remark() {
    String arm =
        kind == Kind.ARM
            ? "The camera turned and the phone moved with the arm: lengths between marks hold, others may be off by 10 to 20 cm over 20 m. Set two marks in each of two far frames, or turn with the phone at the body."
            : null;
    return kind == Kind.STOOD || kind == Kind.TURNED ? Optional.empty() : Optional.ofNullable(arm).or(this::noLengths);
  }

  @Override
  public boolean equals(@Nullable Object o) {
    return o instanceof CameraPath p && p.kind == kind && java.util.Arrays.equals(p.looks, looks) && java.util.Arrays.equals(p.times, times)
        && p.commonFocal == commonFocal && Double.compare(p.swing, swing) == 0 && p.shutter_s == shutter_s && p.width == width && p.height == height;
  }

  @Override
  public int hashCode() {
    return 31 * kind.hashCode() + java.util.Arrays.hashCode(looks);
  }

  @Override
  public String toString() {
    return kind + (carries() ? " over " + looks.length + " frames" : "");
  }
}
