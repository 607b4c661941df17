package boundwright.clip.contact;

import boundwright.clip.contact.CornerFit.LeavePriors;
import boundwright.clip.contact.CornerFit.Prior;
import boundwright.clip.contact.CornerFit.Witness;
import boundwright.clip.contact.Planted.Stretch;
import boundwright.clip.track.Joint;
import boundwright.clip.track.Motion;
import boundwright.clip.track.Track;
import boundwright.footfall.Foot;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * When each contact's toe leaves. A toe moves off from rest, so its path alone tells the time to hardly better than 10 ms.
 * Two things the contacts of a rep share help: how the toe accelerates away, and how far the hips are ahead of the toe
 * when the leg is spent. Both are learned from the rep itself, and only as far as its contacts agree.
 */
final class Leavings {
  /** The coarse course sees a foot leave this late, because it moves off slowly [s] (own output). */
  static final double COARSE_LATE_S = 0.012;
  /** Before anything was seen: acceleration [m/s2] and jerk [m/s3], each forward and up (judgement). */
  private static final Prior[] FIRST = {new Prior(25, 25), new Prior(60, 40), new Prior(600, 800), new Prior(0, 800)};
  /** How much toe-offs of one rep differ in these at the least, standard deviation, same units (judgement). */
  private static final double[] LEAST = {6, 6, 150, 150};
  /** How fast a toe may still move before it leaves, standard deviation [m/s] (judgement). */
  private static final double CREEP = 0.1;
  /** How much the hips' lead at toe-off varies at the least [m] (judgement). */
  private static final double LEAD_SD_M = 0.03;
  /** The toe must have been seen at least twice within this time after it left [s] (judgement). */
  private static final double SEEN_S = 0.05;
  /** What the fit looks at before and after the leaving [s] (judgement). */
  private static final double BEFORE_S = 0.05;
  private static final double AFTER_S = 0.07;
  /** So much of the flight's side is needed at low frame rates, in frames (judgement). */
  private static final double FEWEST_FRAMES = 3.6;

  private final Track metres;
  private final Motion motion;
  private final double step;

  Leavings(Track metres, Motion motion) {
    this.metres = metres;
    this.motion = motion;
    step = metres.medianStep();
  }

  /** The toe-offs of the stretches, null where one was not seen. */
  List<@Nullable EventFit> all(List<Stretch> stretches) {
    List<@Nullable EventFit> out = round(stretches, FIRST);
    for (int i = 0; i < 3; i++) {
      out = round(stretches, pooled(stretches, out));
    }
    return byLead(out);
  }

  private double wide(double window) {
    return Math.max(window, FEWEST_FRAMES * step);
  }

  private @Nullable CornerFit toe(Foot foot) {
    FootPath toe = FootPath.of(metres, motion, Joint.TOE, foot);
    return toe == null ? null : new CornerFit(List.of(new Witness(toe, CREEP, 0)));
  }

  private List<@Nullable EventFit> round(List<Stretch> stretches, Prior[] p) {
    LeavePriors priors = new LeavePriors(p[0], p[1], p[2], p[3]);
    List<@Nullable EventFit> out = new ArrayList<>();
    for (Stretch s : stretches) {
      FootPath toe = FootPath.of(metres, motion, Joint.TOE, s.foot());
      double last = motion.time(s.last());
      boolean seen = toe != null && toe.seen(last, last + wide(SEEN_S)) >= 2;
      CornerFit fit = toe(s.foot());
      out.add(!seen || fit == null ? null : fit.leaving(last - COARSE_LATE_S, wide(BEFORE_S), wide(AFTER_S), priors));
    }
    return out;
  }

  private Prior[] pooled(List<Stretch> stretches, List<@Nullable EventFit> fits) {
    LeavePriors wide = new LeavePriors(FIRST[0], FIRST[1], FIRST[2], FIRST[3]);
    List<double[]> seen = new ArrayList<>();
    for (int i = 0; i < stretches.size(); i++) {
      EventFit e = fits.get(i);
      CornerFit fit = toe(stretches.get(i).foot());
      double[] k = e == null || fit == null ? null : fit.leave(e.time(), wide(BEFORE_S), wide(AFTER_S), wide);
      if (k != null) {
        seen.add(k);
      }
    }
    return Pool.of(seen, FIRST, LEAST);
  }

  private List<@Nullable EventFit> byLead(List<@Nullable EventFit> fits) {
    List<Lead.Seen> seen = new ArrayList<>();
    for (EventFit e : fits) {
      seen.add(e == null ? Lead.UNSEEN : Lead.of(motion, e.time(), e.sd(), e.x0()));
    }
    List<Lead.Shift> shifts = Lead.shifts(seen, LEAD_SD_M);
    List<@Nullable EventFit> out = new ArrayList<>();
    for (int i = 0; i < fits.size(); i++) {
      EventFit e = fits.get(i);
      Lead.Shift by = shifts.get(i);
      out.add(e == null ? null : new EventFit(e.time() + by.seconds(), by.sd(), e.x0(), e.y0(), 0, 0));
    }
    return out;
  }
}
