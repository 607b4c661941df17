package boundwright.clip.contact;

import boundwright.clip.contact.Planted.Stretch;
import boundwright.clip.track.BodyPoint;
import boundwright.clip.track.Joint;
import boundwright.clip.track.Spot;
import boundwright.clip.track.Track;
import java.util.List;
import java.util.stream.IntStream;

/**
 * Whether a foot stands, from the samples themselves. Where the legs pass each other a finder may be a foot's length off for
 * a few frames on end; that bends a smoothed path so far that a standing foot seems to move. The samples round a frame still
 * say it: most of them lie at one place.
 */
final class StandingStill {
  /** Samples so near to their median lie at one place [m] (judgement: three times the usual noise). */
  private static final double NEAR_M = 0.045;
  /** The same at a stretch's ends, where the foot is still coming or already going [m] (judgement). */
  private static final double NEAR_AT_END_M = 0.03;
  /** Samples from so long before a frame to so long after it count [s], at least two on each side (judgement). */
  private static final double WINDOW_S = 0.026;
  private static final int FEWEST_EACH_SIDE = 2;
  /** So many of the frames must show the foot there under its own name, and under either foot's name (judgement). */
  private static final double OWN_SHARE = 0.5;
  private static final double EITHER_SHARE = 0.6;
  /** What it counts for, where 1 is a smoothed path that clearly stands (judgement). */
  private static final double WORTH = 0.7;
  /** So far beyond a stretch its ends are looked for [s] (judgement). */
  private static final double BEYOND_S = 0.08;
  /** How many of the next frames are asked whether an end is one, and how many of four must agree. */
  private static final int NEXT = 3;
  private static final int AGREE = 3;

  private final Track metres;

  StandingStill(Track metres) {
    this.metres = metres;
  }

  /**
   * Evidence in one frame that a point of the foot stands: at most {@value #WORTH}, less the higher it is.
   *
   * @param heightM the point's standing height [m]
   * @param perHeight height above it that takes 1 off [m]
   * @param none what is answered where it does not stand
   */
  double score(BodyPoint own, BodyPoint other, int frame, double heightM, double perHeight, double none) {
    int from = earliest(frame, FEWEST_EACH_SIDE, WINDOW_S);
    int to = latest(frame, FEWEST_EACH_SIDE, WINDOW_S);
    Spot place = median(own, from, to);
    int mine = 0;
    int either = 0;
    boolean before = false;
    boolean after = false;
    for (int k = from; k <= to; k++) {
      boolean own1 = near(own, k, place, NEAR_M);
      boolean any = own1 || near(other, k, place, NEAR_M);
      mine += own1 ? 1 : 0;
      either += any ? 1 : 0;
      before |= any && k < frame;
      after |= any && k > frame;
    }
    int all = to - from + 1;
    if (!before || !after || mine < OWN_SHARE * all || either < EITHER_SHARE * all) {
      return none;
    }
    double up = Math.max(0, place.y() - heightM) / perHeight;
    return Math.max(none, WORTH - up * up);
  }

  /**
   * The first frame from which heel or toe stays where it stands in a stretch, looked for from {@value #BEYOND_S} s before
   * the stretch on; the stretch's own first if none does.
   */
  int first(Stretch s) {
    int middle = middle(s) + 1;
    BodyPoint heel = BodyPoint.of(Joint.HEEL, s.foot());
    BodyPoint toe = BodyPoint.of(Joint.TOE, s.foot());
    Spot heelStood = median(heel, s.first(), middle);
    Spot toeStood = median(toe, s.first(), middle);
    for (int i = earliest(s.first(), 0, BEYOND_S); i < s.last(); i++) {
      if (stays(heel, heelStood, i, 1) || stays(toe, toeStood, i, 1)) {
        return i;
      }
    }
    return s.first();
  }

  /** The last frame up to which the toe stays where it stood, looked for until {@value #BEYOND_S} s after; else the own last. */
  int last(Stretch s) {
    BodyPoint toe = BodyPoint.of(Joint.TOE, s.foot());
    Spot stood = median(toe, middle(s) - 1, s.last());
    for (int i = latest(s.last(), 0, BEYOND_S); i > s.first(); i--) {
      if (stays(toe, stood, i, -1)) {
        return i;
      }
    }
    return s.last();
  }

  private static int middle(Stretch s) {
    return (s.first() + s.last()) / 2;
  }

  /** The earliest frame at most so long before one, but so many before it where there are. */
  private int earliest(int frame, int fewest, double seconds) {
    int out = frame;
    while (out > 0 && (frame - out < fewest || metres.time(frame) - metres.time(out - 1) <= seconds)) {
      out--;
    }
    return out;
  }

  private int latest(int frame, int fewest, double seconds) {
    int out = frame;
    while (out < metres.frames() - 1 && (out - frame < fewest || metres.time(out + 1) - metres.time(frame) <= seconds)) {
      out++;
    }
    return out;
  }

  /** Whether a point is where it stood in this frame and in most of the next ones that way. */
  private boolean stays(BodyPoint point, Spot place, int frame, int way) {
    if (!near(point, frame, place, NEAR_AT_END_M)) {
      return false;
    }
    int agree = 1;
    for (int k = 1; k <= NEXT; k++) {
      agree += near(point, frame + way * k, place, NEAR_AT_END_M) ? 1 : 0;
    }
    return agree >= AGREE;
  }

  private boolean near(BodyPoint point, int frame, Spot place, double within) {
    return place.known() && frame >= 0 && frame < metres.frames() && metres.seen(point, frame) && metres.spot(point, frame).to(place) < within;
  }

  /** Median place of a point over frames; unknown where it was seen in fewer than three. */
  private Spot median(BodyPoint point, int from, int to) {
    List<Spot> seen =
        IntStream.rangeClosed(Math.max(0, from), Math.min(metres.frames() - 1, to))
            .filter(i -> metres.seen(point, i)).mapToObj(i -> metres.spot(point, i)).toList();
    return seen.size() < 3 ? Spot.median(List.of()) : Spot.median(seen);
  }
}
