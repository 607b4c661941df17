package boundwright.clip.learn;

import boundwright.clip.contact.Contact;
import boundwright.clip.learn.Label.Stand;
import boundwright.clip.propose.Proposer;
import boundwright.clip.reading.ClipReader;
import boundwright.clip.reading.ReadContact;
import boundwright.clip.reading.Setup;
import boundwright.footfall.Foot;
import boundwright.quantity.Estimate;
import boundwright.quantity.RefusedException;
import boundwright.technique.FootContact;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * Reads a labelled clip as the page would, from its points alone, and lays what was found beside what was agreed. A known and a found
 * touchdown belong together up to 5 frames (or 80 ms) apart, the nearest first, those on the same foot before others, each once.
 */
public final class Score {
  private static final double RIGHT_FRAMES = 2.5;
  private static final double RIGHT_S = 0.040;
  private static final double REACH_FRAMES = 5;
  private static final double REACH_S = 0.080;

  private final Label label;
  private final List<Found> found;
  private final double frame;
  private final double reach;
  private final List<Stand> known;

  /**
   * A contact that was found.
   *
   * @param down_s touchdown, NaN where it was left open
   * @param up_s toe-off, NaN where it was left open
   */
  record Found(Foot foot, double down_s, double up_s, boolean bothFeet) {
    double near() {
      return Double.isNaN(down_s) ? up_s : down_s;
    }
  }

  private Score(Label label, List<Found> found) {
    this.label = label;
    this.found = found;
    frame = label.track().medianStep();
    reach = Math.max(REACH_FRAMES * frame, REACH_S);
    known = label.stands().stream().filter(s -> !s.bothFeet() && s.down().known()).toList();
  }

  /** How the whole search does with a network, by the clip's own marks. */
  public static Figures of(Label label, Setup setup, Proposer net) {
    List<Found> found = new ArrayList<>();
    try {
      for (ReadContact r : ClipReader.read(label.points(), setup.slowedBy(label.slowed()), List.of(), null, FootContact.HEEL_ROLLS, net).contacts()) {
        Contact c = r.contact();
        found.add(new Found(c.foot(), time(c.touchdown_s()), time(c.toeOff_s()), c.bothFeet()));
      }
    } catch (RefusedException e) {
      // a clip that cannot be read has all its contacts missed
      found.clear();
    }
    return of(label, found);
  }

  static Figures of(Label label, List<Found> found) {
    return new Score(label, found).figures();
  }

  private static double time(@Nullable Estimate e) {
    return e == null ? Double.NaN : e.p50();
  }

  private Figures figures() {
    int[] of = pairs();
    double limit = Math.max(RIGHT_FRAMES * frame, RIGHT_S);
    int right = 0;
    int wrong = 0;
    int missed = 0;
    int byHand = 0;
    double sum = 0;
    Set<Integer> used = new HashSet<>();
    for (int k = 0; k < of.length; k++) {
      if (of[k] < 0) {
        missed++;
        continue;
      }
      used.add(of[k]);
      Stand s = known.get(k);
      Found f = found.get(of[k]);
      double far = Math.abs(f.down_s - s.down().time_s());
      if (f.foot != s.foot()) {
        wrong++;
        continue;
      }
      right += far <= limit ? 1 : 0;
      if (s.down().byHand()) {
        byHand++;
        sum += far / frame;
      }
    }
    int extra = 0;
    for (int i = 0; i < found.size(); i++) {
      extra += used.contains(i) || allowed(found.get(i)) ? 0 : 1;
    }
    return new Figures(
        of.length, right, of.length - right - wrong - missed, wrong, missed, extra, byHand, byHand == 0 ? Double.NaN : sum / byHand);
  }

  private record Pair(int known, int found, double far, boolean same) {}

  /** For each known touchdown the found one, or -1. */
  private int[] pairs() {
    List<Pair> all = new ArrayList<>();
    for (int k = 0; k < known.size(); k++) {
      for (int f = 0; f < found.size(); f++) {
        double far = Math.abs(found.get(f).down_s - known.get(k).down().time_s());
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
      if (of[p.known] < 0 && used.add(p.found)) {
        of[p.known] = p.found;
      }
    }
    return of;
  }

  /** Outside the stretch nobody agreed to anything; the landing and a contact whose touchdown is not shown are no touchdowns on one foot. */
  private boolean allowed(Found f) {
    double at = f.near();
    if (!(at >= label.from_s() && at <= label.to_s())) {
      return true;
    }
    for (Stand s : label.stands()) {
      if (s.bothFeet() && Math.abs(at - s.down().time_s()) <= reach) {
        return true;
      }
      boolean itsUp = s.up().known() && Math.abs(f.up_s - s.up().time_s()) <= reach;
      boolean before = s.up().known() && at <= s.up().time_s();
      if (!f.bothFeet && s.foot() == f.foot && (s.down().known() ? Double.isNaN(f.down_s) && itsUp : itsUp || before)) {
        return true;
      }
    }
    return false;
  }
}
