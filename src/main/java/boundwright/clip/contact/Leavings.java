package boundwright.clip.contact;

import boundwright.clip.contact.Planted.Stretch;
import boundwright.clip.track.Joint;
import boundwright.clip.track.Motion;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * When each contact's toe leaves. A toe moves off from rest, so its path alone tells the time to hardly better than 10 ms.
 * Two things the contacts of a rep share help: how the toe accelerates away, and how far the hips are ahead of the toe
 * when the leg is spent. Both are learned from the rep itself, and only as far as its contacts agree ({@link Alike}).
 */
final class Leavings {
  /**
   * The coarse course sees a foot leave this late, counted from the middle between its last frame and the next, because a
   * foot moves off slowly [s] (own output: 13 to 14 ms at 60, 120 and 240 frames a second). Only a starting point.
   */
  private static final double COARSE_LATE_S = 0.013;
  /**
   * Mean of a rep and its standard deviation before anything was seen: acceleration [m/s2] and jerk [m/s3], each forward
   * and up. Judgement; what a toe shows over the time looked at, not at its first instant: with 45 up in place of 75 noisy
   * toe-offs came out 4 ms early (own output).
   */
  private static final double[][] MEANS = {{50, 40}, {75, 40}, {0, 2000}, {0, 2000}};
  /** How much the toe-offs of one rep differ in these, standard deviation, same units (judgement). */
  private static final double[] SCATTER = {10, 10, 400, 400};
  /** How fast a toe may still move before it leaves, standard deviation [m/s] (judgement). */
  private static final double CREEP = 0.1;
  /** How much the hips' lead at toe-off differs within a rep [m] (judgement). */
  private static final double LEAD_M = 0.03;
  /** The toe must have been seen at least twice within this time after it left [s] (judgement). */
  private static final double SEEN_S = 0.05;
  /**
   * What is looked at before and after the leaving [s]. Longer after it is steadier, but then the curve is too simple for
   * the swing: without any noise 70 ms read toe-offs 6 ms late, 50 ms read them 3 ms late (own output).
   */
  private static final double BEFORE_S = 0.05;
  private static final double AFTER_S = 0.05;
  /** So much of either side is needed at low frame rates, in frames (judgement). */
  private static final double FEWEST_FRAMES = 3.6;
  /** How far from the starting point the toe-off may lie, first and second round [s]. */
  private static final double REACH_S = 0.035;
  private static final double REACH_AGAIN_S = 0.025;

  private final Motion motion;
  private final Feet feet;
  private final double step;

  Leavings(Motion motion, Feet feet, double step) {
    this.motion = motion;
    this.feet = feet;
    this.step = step;
  }

  /** The toe-offs of the stretches, null where one was not seen. */
  List<@Nullable EventFit> all(List<Stretch> stretches) {
    List<@Nullable EventFit> guesses = new ArrayList<>();
    for (Stretch s : stretches) {
      guesses.add(new EventFit(coarse(s), 0));
    }
    return round(stretches, round(stretches, guesses, REACH_S, 0.02), REACH_AGAIN_S, 0);
  }

  /** Where the coarse course saw the foot leave [s]. */
  private double coarse(Stretch s) {
    return motion.time(s.last()) + 0.5 * step - COARSE_LATE_S;
  }

  private double wide(double window) {
    return Math.max(window, FEWEST_FRAMES * step);
  }

  private List<@Nullable EventFit> round(List<Stretch> stretches, List<@Nullable EventFit> guesses, double reach, double more) {
    List<Alike.@Nullable Case> cases = new ArrayList<>();
    for (int i = 0; i < stretches.size(); i++) {
      cases.add(one(stretches.get(i), guesses.get(i), reach, more));
    }
    List<Alike.Case> seen = new ArrayList<>();
    for (Alike.Case c : cases) {
      if (c != null) {
        seen.add(c);
      }
    }
    List<@Nullable EventFit> out = new ArrayList<>();
    Alike alike = seen.isEmpty() ? null : Alike.of(seen, MEANS, SCATTER, LEAD_M);
    for (Alike.Case c : cases) {
      out.add(c == null || alike == null ? null : alike.time(c));
    }
    return out;
  }

  private Alike.@Nullable Case one(Stretch s, @Nullable EventFit guess, double reach, double more) {
    FootPath toe = feet.alone(Joint.TOE, s.foot());
    double last = motion.time(s.last());
    if (guess == null || toe == null || toe.seen(last, last + wide(SEEN_S)) < 2) {
      return null;
    }
    Corner corner = Corner.of(toe, CREEP, guess.time(), reach, wide(BEFORE_S) + more, wide(AFTER_S) + more);
    if (corner == null) {
      return null;
    }
    double stands = Alike.stands(corner, MEANS, SCATTER);
    return new Alike.Case(corner, coarse(s), t -> Hips.at(motion, t) - stands);
  }
}
