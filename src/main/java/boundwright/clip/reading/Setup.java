package boundwright.clip.reading;

import boundwright.clip.body.DeLeva;
import boundwright.clip.scale.GroundMarks;
import boundwright.clip.scale.PlaneMap;
import boundwright.clip.track.BodyPoint;
import boundwright.clip.track.BodySize;
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
   */
  public record Pole(Spot foot, Spot top, double height_m) {}

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

  /** Whether lengths can be given. */
  public boolean scaled() {
    return !ground.isEmpty() || !corners.isEmpty();
  }

  /** Whether heights are measured and not taken from the ground's scale or the athlete's size. */
  public boolean scaledUpwards() {
    return !corners.isEmpty() || (!ground.isEmpty() && pole != null);
  }

  /** The athlete's plane. {@code found} gives size and direction where nothing was marked. */
  PlaneMap plane(Track found) {
    if (!corners.isEmpty()) {
      return PlaneMap.through(corners);
    }
    if (!ground.isEmpty()) {
      GroundMarks marks = GroundMarks.of(ground);
      return pole == null ? marks.upright() : marks.upright(pole.foot, pole.top, pole.height_m);
    }
    double k = BodySize.perMetre(found);
    double way = runsRight(found) ? k : -k;
    return new PlaneMap(new double[][] {{way, 0, 0}, {0, -k, 0}, {0, 0, 1}});
  }

  private static boolean runsRight(Track found) {
    double first = Double.NaN;
    double last = Double.NaN;
    for (int i = 0; i < found.frames(); i++) {
      double x = found.spot(BodyPoint.LEFT_HIP, i).towards(found.spot(BodyPoint.RIGHT_HIP, i), 0.5).x();
      if (!Double.isNaN(x)) {
        first = Double.isNaN(first) ? x : first;
        last = x;
      }
    }
    return !(last < first);
  }
}
