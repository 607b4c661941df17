package boundwright.clip.contact;

import boundwright.clip.contact.CornerFit.LeavePriors;
import boundwright.clip.contact.CornerFit.Prior;
import boundwright.clip.contact.Planted.Stretch;
import boundwright.clip.track.Joint;
import boundwright.clip.track.Motion;
import boundwright.clip.track.Track;
import boundwright.footfall.Foot;
import boundwright.quantity.Estimate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Contacts with their times to a part of a frame. First the coarse course of the rep ({@link Planted}), then each end of
 * each contact from the samples around it: touchdown where heel or toe, whichever leads, stops ({@link CornerFit}
 * landing, joined with the peak of vertical acceleration), toe-off where the toe leaves from rest ({@link CornerFit}
 * leaving). How a foot accelerates off the ground is alike in all contacts of a rep, so the second round takes it from
 * all of them together.
 */
public final class ContactFinder {
  /** Contacts shorter than this are noise [s]; the shortest measured in the event are near 0.1 (judgement). */
  private static final double SHORTEST_S = 0.06;
  /** Seen before a landing or after a leaving at least so long, or there is no time for it [s]. */
  private static final double SEEN_S = 0.05;
  /** The coarse course sees a foot leave this late, because it moves off slowly [s] (own output). */
  private static final double COARSE_LATE_S = 0.012;
  /**
   * A foot is stopped by heel and shoe a little after it touches: kinematic touchdowns read 3.1 ms late against force
   * plates (Handsaker et al. 2016; read). Taken off.
   */
  static final double TOUCHDOWN_BIAS_S = 0.0031;
  /** A landing on both feet: the two touch down within this time [s] (judgement). */
  private static final double TOGETHER_S = 0.09;
  /** Softness with which the leading point hands over between heel and toe [s]. */
  private static final double LEAD_S = 0.006;
  private static final LeavePriors FIRST =
      new LeavePriors(new Prior(12, 20), new Prior(30, 20), new Prior(0, 600), new Prior(0, 400));

  private final Track metres;
  private final Motion motion;
  private final double step;
  private final double[] sure;

  private ContactFinder(Track metres, Motion motion, double[] sure) {
    this.metres = metres;
    this.motion = motion;
    this.sure = sure;
    step = metres.medianStep();
  }

  /**
   * The contacts in order.
   *
   * @param metres the athlete in metres, sides put right, not smoothed
   * @param motion the same, smoothed
   * @param sideMargin how sure the sides are in each frame, see {@code Sides}
   */
  public static List<Contact> find(Track metres, Motion motion, double[] sideMargin) {
    return new ContactFinder(metres, motion, sideMargin).all();
  }

  private List<Contact> all() {
    List<Stretch> stretches = new ArrayList<>(Planted.stretches(motion));
    stretches.removeIf(s -> motion.time(s.last()) - motion.time(s.first()) + step < SHORTEST_S);
    dropFootThatOnlyStands(stretches);
    LeavePriors shared = FIRST;
    List<@Nullable EventFit> leaving = leaves(stretches, shared);
    shared = pooled(stretches, leaving);
    leaving = leaves(stretches, shared);
    List<Contact> out = new ArrayList<>();
    for (int i = 0; i < stretches.size(); i++) {
      Stretch s = stretches.get(i);
      out.add(contact(s, touchdown(s), leaving.get(i)));
    }
    out.sort(Comparator.comparingDouble(Contact::middle_s));
    return joinLandings(out);
  }

  /** A standing start has both feet down; the foot that leaves last makes the first contact, the other only stood. */
  private static void dropFootThatOnlyStands(List<Stretch> stretches) {
    stretches.removeIf(
        a -> stretches.stream().anyMatch(
            b -> b.foot() != a.foot() && a.overlap(b) > 0.5 * a.frames() && a.first() <= 2 && b.last() > a.last()));
  }

  private List<@Nullable EventFit> leaves(List<Stretch> stretches, LeavePriors priors) {
    List<@Nullable EventFit> out = new ArrayList<>();
    for (Stretch s : stretches) {
      FootPath toe = FootPath.of(metres, motion, Joint.TOE, s.foot());
      double guess = motion.time(s.last()) - COARSE_LATE_S;
      boolean seen = toe != null && toe.seen(guess + COARSE_LATE_S, guess + COARSE_LATE_S + wide(SEEN_S)) >= 2;
      out.add(toe == null || !seen ? null : new CornerFit(toe).leaving(guess, wide(0.05), wide(0.07), priors));
    }
    return out;
  }

  /** At few frames a second a window must still hold some. */
  private double wide(double window) {
    return Math.max(window, 3.6 * step);
  }

  /** What the contacts of this rep have in common, as the prior of each. */
  private LeavePriors pooled(List<Stretch> stretches, List<@Nullable EventFit> leaving) {
    List<double[]> all = new ArrayList<>();
    for (int i = 0; i < stretches.size(); i++) {
      EventFit e = leaving.get(i);
      FootPath toe = FootPath.of(metres, motion, Joint.TOE, stretches.get(i).foot());
      if (e != null && toe != null) {
        double[] k = new CornerFit(toe).leave(e.time(), wide(0.05), wide(0.07), FIRST);
        if (!Double.isNaN(k[0])) {
          all.add(k);
        }
      }
    }
    if (all.size() < 3) {
      return FIRST;
    }
    Prior[] p = new Prior[4];
    double[] least = {6, 6, 150, 150};
    for (int c = 0; c < 4; c++) {
      int col = c;
      double[] v = all.stream().mapToDouble(k -> k[col]).sorted().toArray();
      double mid = v[v.length / 2];
      double[] off = Arrays.stream(v).map(a -> Math.abs(a - mid)).sorted().toArray();
      p[c] = new Prior(mid, Math.max(least[c], 0.7 * off[off.length / 2]));
    }
    return new LeavePriors(p[0], p[1], p[2], p[3]);
  }

  private @Nullable Estimate touchdown(Stretch s) {
    double guess = motion.time(s.first());
    EventFit heel = landing(s, Joint.HEEL, guess);
    EventFit toe = landing(s, Joint.TOE, guess);
    EventFit lead;
    if (heel == null || toe == null) {
      lead = heel == null ? toe : heel;
    } else {
      lead = leading(heel, toe);
    }
    if (lead == null) {
      return null;
    }
    return Estimate.normal(lead.time() - TOUCHDOWN_BIAS_S, lead.sd());
  }

  private @Nullable EventFit landing(Stretch s, Joint joint, double guess) {
    FootPath path = FootPath.of(metres, motion, joint, s.foot());
    if (path == null || path.seen(guess - wide(SEEN_S), guess - 0.5 * step) < 2) {
      return null;
    }
    return new CornerFit(path).landing(guess, wide(0.06), wide(0.05));
  }

  /** The earlier of the two, softly: near each other both tell the time. */
  private static EventFit leading(EventFit heel, EventFit toe) {
    double w = 1 / (1 + Math.exp((heel.time() - toe.time()) / LEAD_S));
    double time = w * heel.time() + (1 - w) * toe.time();
    double sd = Math.sqrt(w * w * heel.sd() * heel.sd() + (1 - w) * (1 - w) * toe.sd() * toe.sd());
    return new EventFit(time, sd, toe.x0(), toe.y0(), toe.vx(), toe.vy());
  }

  private Contact contact(Stretch s, @Nullable Estimate down, @Nullable EventFit leave) {
    Estimate up = leave == null ? null : Estimate.normal(leave.time(), leave.sd());
    double from = down == null ? motion.time(s.first()) : down.p50();
    double to = up == null ? motion.time(s.last()) : up.p50();
    double span = Math.max(0.02, to - from);
    Estimate toe = place(s.foot(), Joint.TOE, from + Math.min(0.03, 0.3 * span), to - Math.min(0.01, 0.1 * span));
    Estimate heel = place(s.foot(), Joint.HEEL, from, from + 0.4 * span);
    double margin = 0;
    for (int i = s.first(); i <= s.last(); i++) {
      margin = Math.max(margin, sure[i]);
    }
    return new Contact(s.foot(), down, up, toe, heel, false, 1 / (1 + Math.exp(-margin)));
  }

  /** Where a point stood: the mean of its samples without the farthest fifth. */
  private Estimate place(Foot foot, Joint joint, double from, double to) {
    FootPath path = FootPath.of(metres, motion, joint, foot);
    if (path == null) {
      return Estimate.normal(Double.NaN, 0);
    }
    double[] v = new double[path.times().length];
    int n = 0;
    for (int i = 0; i < v.length; i++) {
      if (path.times()[i] >= from - 0.5 * step && path.times()[i] <= to + 0.5 * step && !Double.isNaN(path.x()[i])) {
        v[n++] = path.x()[i];
      }
    }
    if (n == 0) {
      int mid = motion.frameBefore((from + to) / 2);
      return Estimate.normal(path.smooth().x()[mid], path.smooth().sd()[mid]);
    }
    Arrays.sort(v, 0, n);
    int cut = n / 10;
    double mean = Arrays.stream(v, cut, n - cut).average().orElseThrow();
    // noise that lasts about 0.04 s: so many independent looks, not n
    double looks = Math.max(1, Math.min(n, 1 + (to - from) / 0.08));
    return Estimate.normal(mean, path.noise() * 1.4 / Math.sqrt(looks));
  }

  /** Two feet that come down together at the end are the landing of the jump. */
  private static List<Contact> joinLandings(List<Contact> all) {
    List<Contact> out = new ArrayList<>(all);
    for (int i = 0; i + 1 < out.size(); i++) {
      Contact a = out.get(i);
      Contact b = out.get(i + 1);
      Estimate downA = a.touchdown_s();
      Estimate downB = b.touchdown_s();
      if (a.foot() != b.foot() && downA != null && downB != null && Math.abs(downA.p50() - downB.p50()) < TOGETHER_S) {
        Contact back = a.heel_m().p50() <= b.heel_m().p50() ? a : b;
        Estimate down = downA.p50() <= downB.p50() ? downA : downB;
        out.set(i, new Contact(back.foot(), down, null, back.place_m(), back.heel_m(), true, back.footSure()));
        out.remove(i + 1);
      }
    }
    return List.copyOf(out);
  }
}
