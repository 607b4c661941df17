package boundwright.clip.reading;

import boundwright.clip.FoundClip;
import boundwright.clip.camera.CameraPath;
import boundwright.clip.contact.Contact;
import boundwright.clip.scale.GroundMarks;
import boundwright.clip.scale.PlaneMap;
import boundwright.clip.track.Spot;
import boundwright.quantity.Estimate;
import org.jspecify.annotations.Nullable;

/**
 * What a turning camera adds to the error of a length: what following it left, the phone's own way on an arm where marks do not
 * stand on both sides of it, the clicks, and feet that are seen aslant and small. Nothing where the camera stood.
 */
public final class CameraError {
  /** An arm's length of way where nothing tells whether there was one, half width of the 90 % range as a share of a length (trial: 1.2 %). */
  private static final double ARM_SHARE = 0.013;
  /**
   * The same for each width of the picture that the ground moved against its background: 0.2 m of arm moved it by 0.03 and made
   * lengths of 2 m 1.0 % wrong (root mean square), 0.4 m by 0.065 and 2.0 % (docs/camera.md).
   */
  private static final double SWING_SHARE = 0.42;
  /** What is left of it between marks in two far frames: a swing is no straight way (docs/camera.md). */
  private static final double LEFT_OVER = 0.1;
  /**
   * And what is left of the swing itself, which goes to and fro between the marks: standard deviation for each width of the picture that
   * the ground moved [m], less for lengths below {@link #SHORT_M} (0.2 m of arm, a swing of 0.03, left 0.5 cm of 2 m; docs/camera.md).
   */
  private static final double LEFT_OVER_M = 0.17;
  private static final double SHORT_M = 1.5;
  /** The movement of the ground against its background is known to this much, as a share of the picture's width. */
  private static final double SWING_SD = 0.002;
  /** A place so near to the outermost mark still lies between the marks [m]. */
  private static final double BETWEEN_M = 0.5;
  private static final double STEP_PX = 5;
  /**
   * The network's points of a standing foot err together for a whole contact, which no mean over its frames shows: of each place, standard
   * deviation [m] (own output, {@code bench/clip lengths}, seeds 101 to 108).
   */
  private static final double FOOT_M = 0.018;
  /** A toe is found 3 to 4 cm behind the tip of the shoe and a heel where it is, so they are not off alike [m] (the same clips). */
  private static final double TOE_TO_HEEL_M = 0.03;

  private final FoundClip clip;
  private final Setup setup;
  private final PlaneMap plane;
  private final double slowed;
  private final @Nullable GroundMarks marks;

  /** For a clip as it is marked; where it was not followed there is no error, because there are no lengths. */
  public static CameraError of(FoundClip clip, Setup setup) {
    return new CameraError(clip, setup, setup.plane(clip));
  }

  CameraError(FoundClip clip, Setup setup, PlaneMap plane) {
    this.clip = clip;
    this.setup = setup;
    this.plane = plane;
    slowed = setup.slowed();
    marks = clip.camera().carries() && setup.corners().isEmpty() && !setup.ground().isEmpty() ? setup.groundMarks(clip) : null;
  }

  /** A length between two contacts with the camera's error added. */
  Estimate grown(Estimate length, Contact from, Contact to) {
    if (!clip.camera().carries() || Double.isNaN(length.p50())) {
      return length;
    }
    double a = from.place_m().p50();
    double b = (to.bothFeet() ? to.heel_m() : to.place_m()).p50();
    double points = Math.hypot(Math.sqrt(2) * FOOT_M, to.bothFeet() ? TOE_TO_HEEL_M : 0);
    double sd = Math.hypot(length.halfWidth() / Estimate.Z95, sd(frame(from), a, frame(to), b));
    return Estimate.normal(length.p50(), Math.hypot(sd, points));
  }

  private int frame(Contact c) {
    return clip.track().nearest(c.middle_s() * slowed);
  }

  /** Where a point of a frame of the track lies along the runway [m]. */
  public double along(int frame, Spot picture) {
    return plane.toPlane(clip.camera().carry(frame, picture)).x();
  }

  /** Standard deviation of a length between two places, each seen in a frame of the track, by the camera and the marks [m]. */
  public double sd(int i, double a, int j, double b) {
    double followed = clip.camera().apart(i, j) * (metresPerPixel(i, a) + metresPerPixel(j, b)) / 2;
    double swing = clip.camera().swing();
    double share = Double.isNaN(swing) ? ARM_SHARE : SWING_SHARE * Math.hypot(swing, SWING_SD);
    boolean far = between(a, b) && setup.markedFarApart(clip);
    double along = (far ? LEFT_OVER : 1) * share / Estimate.Z95 * Math.abs(b - a);
    double left = far && !Double.isNaN(swing) ? LEFT_OVER_M * swing * Math.min(1, Math.abs(b - a) / SHORT_M) : 0;
    double arm = Math.hypot(along, left);
    GroundMarks m = marks;
    return Math.hypot(Math.hypot(followed, arm), m == null ? 0 : m.lengthSd(a, b));
  }

  private boolean between(double a, double b) {
    double least = setup.ground().stream().mapToDouble(GroundMarks.Mark::at_m).min().orElse(0) - BETWEEN_M;
    double most = setup.ground().stream().mapToDouble(GroundMarks.Mark::at_m).max().orElse(0) + BETWEEN_M;
    return Math.min(a, b) >= least && Math.max(a, b) <= most;
  }

  private double metresPerPixel(int frame, double place) {
    CameraPath camera = clip.camera();
    Spot at = camera.back(frame, plane.toPicture(new Spot(place, 0)));
    Spot one = plane.toPlane(camera.carry(frame, new Spot(at.x() - STEP_PX, at.y())));
    Spot other = plane.toPlane(camera.carry(frame, new Spot(at.x() + STEP_PX, at.y())));
    double m = Math.abs(other.x() - one.x()) / (2 * STEP_PX);
    return Double.isNaN(m) ? 0 : m;
  }
}
