package boundwright.clip.reading;

import boundwright.clip.FoundClip;
import boundwright.clip.body.DeLeva;
import boundwright.clip.camera.CameraPath;
import boundwright.clip.scale.GroundMarks;
import boundwright.clip.scale.PlaneMap;
import boundwright.clip.track.BodySize;
import boundwright.clip.track.Facing;
import boundwright.clip.track.Spot;
import boundwright.clip.track.Track;
import boundwright.quantity.RefusedException;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/**
 * What the coach tells about the clip. Without marks there are feet, times and angles, but no lengths.
 *
 * @param ground marks on the runway; none, or two and more
 * @param pole something upright of known height, or null
 * @param corners four or more known points of the athlete's upright plane; used instead of ground and pole when given
 * @param slowed how many times slower the film plays than it was filmed: 1, or 8 for 240 frames a second stretched to 30
 * @param model segment masses for the centre of mass
 */
public record Setup(
    List<GroundMarks.Mark> ground, @Nullable Pole pole, List<PlaneMap.Known> corners, double slowed, DeLeva model) {

  /**
   * Something upright on the runway.
   *
   * @param foot picture point of its foot [px]
   * @param top picture point of its top [px]
   * @param height_m [m]
   * @param frame number of the film's frame in which it was clicked, from 0
   */
  public record Pole(Spot foot, Spot top, double height_m, int frame) {
    /** Something in the first frame, as where the camera stood. */
    public Pole(Spot foot, Spot top, double height_m) {
      this(foot, top, height_m, 0);
    }
  }

  /** After a turn the common picture may look at the runway from farther off square: 20 degrees at 12 m [1/m] (judgement). */
  private static final double TURNED_TILT_SD = 0.03;
  /** Two frames are far apart for marks when the camera turned so far between them [degrees] (judgement). */
  private static final double FAR_DEG = 12;

  /** Refuses one mark alone and a film slowed by less than 1 or more than 40. */
  public Setup {
    ground = List.copyOf(ground);
    corners = List.copyOf(corners);
    if (!(slowed >= 1 && slowed <= 40)) {
      throw new RefusedException(
          String.format(
              Locale.ROOT,
              "A film slowed %.2f times is out of range: 1 (as filmed) to 40. 240 frames a second shown at 30 are 8.", slowed));
    }
    if (ground.size() == 1) {
      throw new RefusedException("The ground needs at least 2 marks; 1 was set. Click a second mark on the runway, or take this one away.");
    }
  }

  /** Nothing known: feet, times and angles only. */
  public static Setup none() {
    return new Setup(List.of(), null, List.of(), 1, DeLeva.MALE);
  }

  /** Ground marks only. */
  public static Setup ground(List<GroundMarks.Mark> marks) {
    return new Setup(marks, null, List.of(), 1, DeLeva.MALE);
  }

  /** The same for a film that plays {@code times} slower than it was filmed. */
  public Setup slowedBy(double times) {
    return new Setup(ground, pole, corners, times, model);
  }

  /** The same without marks. */
  Setup unmarked() {
    return new Setup(List.of(), null, List.of(), slowed, model);
  }

  /** Whether lengths can be given. */
  public boolean scaled() {
    return !ground.isEmpty() || !corners.isEmpty();
  }

  /** Whether heights are measured and not taken from the ground's scale or the athlete's size. */
  public boolean scaledUpwards() {
    return !corners.isEmpty() || (!ground.isEmpty() && pole != null);
  }

  /**
   * The athlete's plane in the camera's common picture.
   *
   * @param clip whose points give size and direction where nothing was marked
   * @throws RefusedException if the marks cannot hold
   */
  PlaneMap plane(FoundClip clip) {
    if (!corners.isEmpty()) {
      return PlaneMap.through(
          corners.stream().map(k -> new PlaneMap.Known(carried(clip, "corner", k.picture(), k.frame()), k.plane())).toList());
    }
    if (!ground.isEmpty()) {
      GroundMarks marks = groundMarks(clip);
      return pole == null
          ? marks.upright()
          : marks.upright(carried(clip, "pole", pole.foot, pole.frame), carried(clip, "pole", pole.top, pole.frame), pole.height_m);
    }
    Track found = clip.camera().carry(clip.track());
    double k = BodySize.perMetre(found);
    double way = Facing.right(found) ? k : -k;
    return new PlaneMap(new double[][] {{way, 0, 0}, {0, -k, 0}, {0, 0, 1}});
  }

  /** The marks on the ground in the common picture; there are at least two. */
  GroundMarks groundMarks(FoundClip clip) {
    List<GroundMarks.Mark> carried =
        ground.stream().map(m -> new GroundMarks.Mark(carried(clip, "mark", m.picture(), m.frame()), m.at_m(), m.frame())).toList();
    return clip.camera().carries() && clip.camera().turned_deg() > FAR_DEG ? GroundMarks.of(carried, TURNED_TILT_SD) : GroundMarks.of(carried);
  }

  private static Spot carried(FoundClip clip, String what, Spot picture, int frame) {
    CameraPath camera = clip.camera();
    if (!camera.carries()) {
      return picture;
    }
    int in = frame - clip.firstFrame();
    // a mark of the first frame is older than the following of cameras, or was clicked before the athlete came
    if (frame != 0 && (in < 0 || in >= camera.frames())) {
      throw new RefusedException(
          String.format(
              Locale.ROOT, "The camera turned and was followed from frame %d to %d, while the athlete was in sight; a %s was put in frame %d. Put it in one of those.",
              clip.firstFrame() + 1, clip.firstFrame() + camera.frames(), what, frame + 1));
    }
    Spot at = camera.carry(in, picture);
    if (!at.known()) {
      throw new RefusedException(
          String.format(
              Locale.ROOT, "A %s was put in frame %d, where the camera looks too far away from the middle of its way. Put it in another frame.", what,
              frame + 1));
    }
    return at;
  }

  /** Whether ground marks were put in two frames between which the camera turned far. */
  boolean markedFarApart(FoundClip clip) {
    CameraPath camera = clip.camera();
    for (GroundMarks.Mark a : ground) {
      for (GroundMarks.Mark b : ground) {
        if (camera.carries() && camera.turned_deg(a.frame() - clip.firstFrame(), b.frame() - clip.firstFrame()) > FAR_DEG) {
          return true;
        }
      }
    }
    return false;
  }
}
