package boundwright.clip.pose;

import boundwright.clip.Box;
import boundwright.clip.film.Picture;
import boundwright.clip.track.BodyPoint;
import boundwright.clip.track.Spot;
import boundwright.quantity.RefusedException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;

/**
 * Where the athlete is in a picture: either in the box that the coach drew, or searched by squares of several sizes laid
 * over the picture, because the detector misses people who are small in its square. What the detector finds counts only
 * when the landmark network sees a body there too. Uses both networks but does not close them.
 */
public final class PersonFinder {
  /** Sides of the searched squares, in short sides of the picture (judgement). */
  private static final double[] SIDES = {1, 0.6, 0.4};

  private static final double STEP = 0.5;
  /** To begin on a body the landmark network must be surer than to stay on it (judgement). */
  private static final double SURE = 0.8;
  /** So many candidates are looked at with the landmark network. */
  private static final int LOOKED_AT = 12;

  private final PersonDetector detector;
  private final PoseNet landmarks;

  /** A finder on these two networks. */
  public PersonFinder(PersonDetector detector, PoseNet landmarks) {
    this.detector = detector;
    this.landmarks = landmarks;
  }

  /**
   * What was found.
   *
   * @param region round the athlete
   * @param people how many people were seen where was searched
   * @param others the other people's regions, the largest first; empty where a box was drawn
   * @param remarks sentences for the coach, empty when there is nothing to say
   */
  public record Answer(Region region, int people, List<Region> others, List<String> remarks) {
    /** Copies the lists. */
    public Answer {
      others = List.copyOf(others);
      remarks = List.copyOf(remarks);
    }
  }

  /**
   * Searches the whole picture.
   *
   * @throws RefusedException if nobody is seen
   */
  public Answer find(Picture picture) {
    List<Region> seen = people(picture);
    if (seen.isEmpty()) {
      throw new RefusedException(
          String.format(
              Locale.ROOT,
              "Nobody was found in a picture of %d x %d pixels; an athlete less than about %.0f pixels high is not seen. Draw a box round"
                  + " the athlete, or film from nearer.",
              picture.width(), picture.height(), Math.min(picture.width(), picture.height()) * 0.4 / 3));
    }
    List<String> remarks =
        seen.size() == 1
            ? List.of()
            : List.of(
                seen.size() + " people are in the picture; the one who moves the legs most is followed. If that is not the athlete,"
                    + " draw a box round the athlete.");
    return new Answer(seen.get(0), seen.size(), seen.subList(1, seen.size()), remarks);
  }

  /**
   * Looks in a box.
   *
   * @throws RefusedException if the box is no box, lies outside the picture, or no body is seen in it
   */
  public Answer find(Picture picture, Box box) {
    boolean inside =
        box.width() > 0 && box.height() > 0 && box.x() < picture.width() && box.y() < picture.height() && box.x() + box.width() > 0
            && box.y() + box.height() > 0;
    if (!inside) {
      throw new RefusedException(
          String.format(
              Locale.ROOT,
              "The box at %.0f, %.0f of %.0f x %.0f pixels is not in the picture of %d x %d pixels. Draw it round the athlete again.",
              box.x(), box.y(), box.width(), box.height(), picture.width(), picture.height()));
    }
    Spot middle = new Spot(box.x() + box.width() / 2, box.y() + box.height() / 2);
    double longer = Math.max(box.width(), box.height());
    List<Region> candidates = new ArrayList<>();
    for (double more : new double[] {1.3, 2}) {
      detector.look(picture, new Region(middle.x(), middle.y(), more * longer, 0)).forEach(f -> candidates.add(f.region()));
    }
    candidates.add(new Region(middle.x(), middle.y(), 1.25 * longer, 0));
    List<Region> seen = confirmed(picture, candidates).stream().filter(r -> inBox(r, box)).toList();
    if (seen.isEmpty()) {
      throw new RefusedException(
          String.format(
              Locale.ROOT,
              "No body was seen in the box at %.0f, %.0f of %.0f x %.0f pixels. Draw it round the whole athlete, head to feet, in a picture"
                  + " where nothing hides the athlete.",
              box.x(), box.y(), box.width(), box.height()));
    }
    Region nearest =
        seen.stream().min(Comparator.comparingDouble(r -> Math.hypot(r.x() - middle.x(), r.y() - middle.y()))).orElseThrow();
    List<String> remarks =
        seen.size() == 1
            ? List.of()
            : List.of(seen.size() + " people are in the box; the one nearest its middle is followed. Draw it more closely if that is not the"
                + " athlete.");
    return new Answer(nearest, seen.size(), List.of(), remarks);
  }

  private static boolean inBox(Region r, Box box) {
    return r.x() >= box.x() && r.y() >= box.y() && r.x() <= box.x() + box.width() && r.y() <= box.y() + box.height();
  }

  /** Everybody in the picture, the largest first. */
  public List<Region> people(Picture picture) {
    List<PersonDetector.Found> all = new ArrayList<>();
    double shorter = Math.min(picture.width(), picture.height());
    double longer = Math.max(picture.width(), picture.height());
    all.addAll(detector.look(picture, new Region(picture.width() / 2.0, picture.height() / 2.0, longer, 0)));
    for (double side : SIDES) {
      double s = side * shorter;
      for (double y : centres(picture.height(), s)) {
        for (double x : centres(picture.width(), s)) {
          all.addAll(detector.look(picture, new Region(x, y, s, 0)));
        }
      }
    }
    List<Region> candidates =
        PersonDetector.each(all).stream().limit(LOOKED_AT).map(PersonDetector.Found::region).toList();
    return confirmed(picture, candidates);
  }

  /** Somebody near a place, surest first; empty when nobody. Cheaper than a search of the whole picture. */
  List<Region> near(Picture picture, Region last) {
    List<Region> candidates = new ArrayList<>();
    for (double more : new double[] {1.2, 2}) {
      detector.look(picture, new Region(last.x(), last.y(), more * last.side(), 0)).forEach(f -> candidates.add(f.region()));
    }
    return confirmed(picture, candidates);
  }

  private static double[] centres(double length, double side) {
    int n = 1 + (int) Math.ceil(Math.max(0, length - side) / (STEP * side) - 1e-9);
    double[] out = new double[n];
    for (int i = 0; i < n; i++) {
      out[i] = n == 1 ? length / 2 : side / 2 + i * (length - side) / (n - 1);
    }
    return out;
  }

  /** The regions in which the landmark network sees a body, drawn round that body, each body once, the largest first. */
  private List<Region> confirmed(Picture picture, List<Region> candidates) {
    List<Region> out = new ArrayList<>();
    for (Region r : candidates) {
      Pose pose = landmarks.look(picture, r);
      if (pose.presence() >= SURE && inPicture(pose, picture)
          && out.stream().noneMatch(o -> o.same(pose.next()))) {
        out.add(pose.next());
      }
    }
    out.sort(Comparator.comparingDouble(Region::side).reversed());
    return out;
  }

  private static boolean inPicture(Pose pose, Picture picture) {
    for (BodyPoint p : new BodyPoint[] {BodyPoint.LEFT_HIP, BodyPoint.RIGHT_HIP}) {
      Spot s = pose.spot(p);
      if (s.x() < 0 || s.y() < 0 || s.x() >= picture.width() || s.y() >= picture.height()) {
        return false;
      }
    }
    return true;
  }
}
