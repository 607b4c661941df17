package boundwright.clip.real;

import boundwright.footfall.Foot;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/**
 * Which contact that was found is which that is known. All times in frames of the film.
 *
 * <ol>
 *   <li>A known and a found touchdown can belong together up to {@link #REACH} frames (or {@link #REACH_S} where that is longer) apart. The
 *       nearest two are put together first, those on the same foot before those on different ones; each is used once.
 *   <li><i>Right</i>: together, same foot, at most {@link #RIGHT} frames (or {@link #RIGHT_S}) apart. <i>Off</i>: together, same foot, further
 *       apart. <i>Wrong foot</i>: together, different feet. <i>Missed</i>: a known touchdown without a found one. Right, off, wrong foot and
 *       missed add up to the known touchdowns.
 *   <li><i>Extra</i>: found and together with none, unless it lies in a stretch that is not judged, or within {@link #REACH} frames of a known contact
 *       whose touchdown the film does not show, or is the known landing.
 *   <li>A landing on both feet that is found further than {@link #REACH} frames from the known one is extra.
 *   <li>Toe-offs are compared where both have one and the foot is right.
 * </ol>
 *
 * The times in seconds are of the athlete, slowing taken out: at 120 frames a second the eye is no better than 40 ms is in film of 60.
 */
public final class Matching {
  static final double RIGHT = 2.5;
  static final double REACH = 5;
  static final double RIGHT_S = 0.040;
  static final double REACH_S = 0.080;

  /**
   * A contact that was found.
   *
   * @param down touchdown [frames], NaN where it was left open
   * @param up toe-off [frames], NaN where it was left open
   */
  record Found(Foot foot, double down, double up, boolean bothFeet) {
    double near() {
      return Double.isNaN(down) ? up : down;
    }
  }

  /** @param frame_s how long a frame lasts, slowing taken out [s] */
  public record Result(
      int known, int right, int off, int wrongFoot, int missed, int extra, double frame_s, List<Double> touchdown, List<Double> toeOff,
      List<String> said) {}

  private Matching() {}

  static Result of(TruthFile truth, List<Found> found, double frame_s) {
    double reach = Math.max(REACH, REACH_S / frame_s);
    double limit = Math.max(RIGHT, RIGHT_S / frame_s);
    List<TruthFile.Known> known = truth.contacts().stream().filter(k -> !Double.isNaN(k.down())).toList();
    int[] of = pairs(known, found, reach);
    int right = 0;
    int off = 0;
    int wrong = 0;
    int missed = 0;
    List<Double> touchdown = new ArrayList<>();
    List<Double> toeOff = new ArrayList<>();
    List<String> said = new ArrayList<>();
    Set<Integer> used = new HashSet<>();
    for (int k = 0; k < known.size(); k++) {
      TruthFile.Known c = known.get(k);
      if (of[k] < 0) {
        missed++;
        said.add("missed " + c);
        continue;
      }
      Found f = found.get(of[k]);
      used.add(of[k]);
      if (f.foot != c.foot()) {
        wrong++;
        said.add("wrong foot " + c + ", found " + f);
        continue;
      }
      touchdown.add(f.down - c.down());
      if (!Double.isNaN(c.up()) && !Double.isNaN(f.up)) {
        toeOff.add(f.up - c.up());
      }
      if (Math.abs(f.down - c.down()) <= limit) {
        right++;
      } else {
        off++;
        said.add("off " + c + ", found " + f);
      }
    }
    int extra = 0;
    for (int i = 0; i < found.size(); i++) {
      if (!used.contains(i) && !allowed(truth, found.get(i), reach)) {
        extra++;
        said.add("extra " + found.get(i));
      }
    }
    return new Result(known.size(), right, off, wrong, missed, extra, frame_s, touchdown, toeOff, said);
  }

  /** For each known contact the found one, or -1. */
  private static int[] pairs(List<TruthFile.Known> known, List<Found> found, double reach) {
    record Pair(int k, int f, double far, boolean same) {}
    List<Pair> all = new ArrayList<>();
    for (int k = 0; k < known.size(); k++) {
      for (int f = 0; f < found.size(); f++) {
        double far = Math.abs(known.get(k).down() - found.get(f).down);
        if (far <= reach && !found.get(f).bothFeet) {
          all.add(new Pair(k, f, far, known.get(k).foot() == found.get(f).foot));
        }
      }
    }
    all.sort((a, b) -> a.same != b.same ? Boolean.compare(b.same, a.same) : Double.compare(a.far, b.far));
    int[] of = new int[known.size()];
    java.util.Arrays.fill(of, -1);
    Set<Integer> used = new HashSet<>();
    for (Pair p : all) {
      if (of[p.k] < 0 && used.add(p.f)) {
        of[p.k] = p.f;
      }
    }
    return of;
  }

  private static boolean allowed(TruthFile truth, Found f, double reach) {
    double at = f.near();
    if (!truth.nobody() && truth.ignored().stream().anyMatch(s -> at >= s.from() - reach && at <= s.to() + reach)) {
      return true;
    }
    if (f.bothFeet) {
      return Math.abs(at - truth.landing()) <= reach;
    }
    for (TruthFile.Known k : truth.contacts()) {
      boolean open = Double.isNaN(k.down());
      boolean itsUp = !Double.isNaN(f.up) && Math.abs(f.up - k.up()) <= reach;
      if (k.foot() == f.foot && (open ? itsUp || at <= k.up() : Double.isNaN(f.down) && itsUp)) {
        return true;
      }
    }
    // one foot of the landing, read as a contact
    return Math.abs(at - truth.landing()) <= reach;
  }
}
