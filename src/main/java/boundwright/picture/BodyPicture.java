package boundwright.picture;

import boundwright.clip.FoundClip;
import boundwright.clip.reading.ClipReading;
import boundwright.clip.track.BodyPoint;
import boundwright.clip.track.BodySize;
import boundwright.clip.track.Spot;
import boundwright.clip.track.Track;
import boundwright.footfall.Foot;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/**
 * A frame of a clip with the athlete's body points over it: the geometry of one picture in pixels of the film. Right limbs
 * are drawn solid with filled points, left limbs dashed with outlined points; a point that is not certain is hollow.
 *
 * @param still number of the film's frame
 * @param frame of the track, from 0
 * @param time_s when it was filmed [s]
 * @param width of the film [px]
 * @param height of the film [px]
 * @param view the part that is shown
 * @param bones limbs from point to point
 * @param dots the points
 */
public record BodyPicture(
    int still, int frame, double time_s, int width, int height, View view, List<Bone> bones, List<Dot> dots) {
  /** Less sure than this is drawn hollow, 0 to 1 (judgement). */
  public static final double SURE = 0.5;
  /** A point missing for up to this long is put between where it was seen before and after [s] (judgement). */
  private static final double GAP_S = 0.15;

  /** Radius of a point on the body [m]. */
  private static final double DOT_M = 0.022;
  /** Radius of a point when all of the picture is shown [share of its width]. */
  private static final double DOT_WHOLE = 0.0028;

  /** Points that are drawn: those that carry the reading. */
  private static final List<BodyPoint> SHOWN =
      List.of(
          BodyPoint.NOSE, BodyPoint.LEFT_EAR, BodyPoint.RIGHT_EAR, BodyPoint.LEFT_SHOULDER, BodyPoint.RIGHT_SHOULDER,
          BodyPoint.LEFT_ELBOW, BodyPoint.RIGHT_ELBOW, BodyPoint.LEFT_WRIST, BodyPoint.RIGHT_WRIST, BodyPoint.LEFT_HIP,
          BodyPoint.RIGHT_HIP, BodyPoint.LEFT_KNEE, BodyPoint.RIGHT_KNEE, BodyPoint.LEFT_ANKLE, BodyPoint.RIGHT_ANKLE,
          BodyPoint.LEFT_HEEL, BodyPoint.RIGHT_HEEL, BodyPoint.LEFT_TOE, BodyPoint.RIGHT_TOE);

  private static final BodyPoint[][] LIMBS = {
    {BodyPoint.LEFT_SHOULDER, BodyPoint.LEFT_ELBOW}, {BodyPoint.LEFT_ELBOW, BodyPoint.LEFT_WRIST},
    {BodyPoint.LEFT_SHOULDER, BodyPoint.LEFT_HIP}, {BodyPoint.LEFT_HIP, BodyPoint.LEFT_KNEE},
    {BodyPoint.LEFT_KNEE, BodyPoint.LEFT_ANKLE}, {BodyPoint.LEFT_ANKLE, BodyPoint.LEFT_HEEL},
    {BodyPoint.LEFT_HEEL, BodyPoint.LEFT_TOE}, {BodyPoint.LEFT_ANKLE, BodyPoint.LEFT_TOE},
    {BodyPoint.LEFT_SHOULDER, BodyPoint.RIGHT_SHOULDER}, {BodyPoint.LEFT_HIP, BodyPoint.RIGHT_HIP},
    {BodyPoint.RIGHT_SHOULDER, BodyPoint.RIGHT_ELBOW}, {BodyPoint.RIGHT_ELBOW, BodyPoint.RIGHT_WRIST},
    {BodyPoint.RIGHT_SHOULDER, BodyPoint.RIGHT_HIP}, {BodyPoint.RIGHT_HIP, BodyPoint.RIGHT_KNEE},
    {BodyPoint.RIGHT_KNEE, BodyPoint.RIGHT_ANKLE}, {BodyPoint.RIGHT_ANKLE, BodyPoint.RIGHT_HEEL},
    {BodyPoint.RIGHT_HEEL, BodyPoint.RIGHT_TOE}, {BodyPoint.RIGHT_ANKLE, BodyPoint.RIGHT_TOE}
  };

  /** Copies the lists. */
  public BodyPicture {
    bones = List.copyOf(bones);
    dots = List.copyOf(dots);
  }

  /** How much of the film's picture is shown. */
  public enum Cut {
    /** All of it. */
    WHOLE(0, 0, 0),
    /** The athlete with room for the next step. */
    NEAR(2.7, 2.5, 0.05),
    /** The athlete alone, upright. */
    SMALL(1.7, 2.2, 0.0);

    private final double wide_m;
    private final double high_m;
    private final double above_m;

    Cut(double wide_m, double high_m, double above_m) {
      this.wide_m = wide_m;
      this.high_m = high_m;
      this.above_m = above_m;
    }
  }

  /**
   * A part of the film's picture [px].
   *
   * @param x left edge
   * @param y top edge
   * @param width above 0
   * @param height above 0
   * @param dot radius of a point drawn in this part [px]
   */
  public record View(double x, double y, double width, double height, double dot) {
    /** As SVG writes it. */
    public String box() {
      return StripPaths.number(x) + " " + StripPaths.number(y) + " " + StripPaths.number(width) + " " + StripPaths.number(height);
    }
  }

  /** A limb; {@code side} is null for the lines across the body. */
  public record Bone(double x1, double y1, double x2, double y2, @Nullable Foot side) {
    /** Class of the line in the style sheet. */
    public String style() {
      return side == null ? "across" : side == Foot.RIGHT ? "right" : "left";
    }
  }

  /**
   * A point.
   *
   * @param point which
   * @param x right [px]
   * @param y down [px]
   * @param sure whether it was seen with confidence in this frame, or placed by hand
   */
  public record Dot(BodyPoint point, double x, double y, boolean sure) {
    /** In words: {@code left knee}. */
    public String label() {
      return point.name().toLowerCase(Locale.ROOT).replace('_', ' ');
    }

    /** Class of the point in the style sheet. */
    public String style() {
      String side = point.name().startsWith("LEFT") ? "left" : "right";
      return sure ? side : side + " unsure";
    }
  }

  /** The picture of a frame of the track. */
  public static BodyPicture of(FoundClip clip, ClipReading reading, int frame, Cut cut) {
    Track track = reading.athlete().pixels();
    int w = clip.film().width();
    int h = clip.film().height();
    List<Dot> dots = new ArrayList<>();
    for (BodyPoint p : SHOWN) {
      Spot s = spot(track, p, frame);
      if (s != null) {
        boolean sure = track.seen(p, frame) && track.confidence(p, frame) >= SURE;
        dots.add(new Dot(p, StripPaths.round(s.x()), StripPaths.round(s.y()), sure));
      }
    }
    List<Bone> bones = new ArrayList<>();
    for (BodyPoint[] limb : LIMBS) {
      Spot a = spot(track, limb[0], frame);
      Spot b = spot(track, limb[1], frame);
      if (a != null && b != null) {
        boolean left = limb[0].name().startsWith("LEFT");
        @Nullable Foot side = left && limb[1].name().startsWith("RIGHT") ? null : left ? Foot.LEFT : Foot.RIGHT;
        bones.add(new Bone(StripPaths.round(a.x()), StripPaths.round(a.y()), StripPaths.round(b.x()), StripPaths.round(b.y()), side));
      }
    }
    return new BodyPicture(
        clip.firstFrame() + frame, frame, reading.time(frame), w, h, view(track, dots, cut, w, h), bones, dots);
  }

  private static View view(Track track, List<Dot> dots, Cut cut, int w, int h) {
    if (cut == Cut.WHOLE || dots.isEmpty()) {
      return new View(0, 0, w, h, StripPaths.round(DOT_WHOLE * w));
    }
    double k = BodySize.perMetre(track);
    double wide = Math.min(w, cut.wide_m * k);
    double high = Math.min(h, cut.high_m * k);
    double left = dots.stream().mapToDouble(Dot::x).min().orElse(0);
    double right = dots.stream().mapToDouble(Dot::x).max().orElse(w);
    double top = dots.stream().mapToDouble(Dot::y).min().orElse(0);
    double bottom = dots.stream().mapToDouble(Dot::y).max().orElse(h);
    double x = (left + right - wide) / 2;
    double y = (top + bottom - high) / 2 - cut.above_m * k;
    return new View(
        StripPaths.round(Math.max(0, Math.min(w - wide, x))), StripPaths.round(Math.max(0, Math.min(h - high, y))),
        StripPaths.round(wide), StripPaths.round(high), StripPaths.round(DOT_M * k));
  }

  /** Where a point is in a frame, or between the frames around it that show it; null where it is missing for long. */
  private static @Nullable Spot spot(Track track, BodyPoint p, int frame) {
    if (track.seen(p, frame)) {
      return track.spot(p, frame);
    }
    int before = frame;
    while (before >= 0 && !track.seen(p, before)) {
      before--;
    }
    int after = frame;
    while (after < track.frames() && !track.seen(p, after)) {
      after++;
    }
    if (before < 0 || after == track.frames() || track.time(after) - track.time(before) > GAP_S) {
      return null;
    }
    double share = (track.time(frame) - track.time(before)) / (track.time(after) - track.time(before));
    return track.spot(p, before).towards(track.spot(p, after), share);
  }
}
