package boundwright.clip.contact;

import boundwright.clip.contact.CornerFit.LandPriors;
import boundwright.clip.contact.CornerFit.Prior;
import boundwright.clip.contact.Planted.Stretch;
import boundwright.clip.track.Motion;
import boundwright.footfall.Foot;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * When each contact's foot comes down: where heel or toe, whichever leads, stops. How a foot comes down is alike in the
 * contacts of a rep, so the later rounds take it from all of them.
 */
final class Landings {
  /**
   * A foot is stopped by heel and shoe a little after it touches: kinematic touchdowns read 3.1 ms late against force
   * plates (Handsaker et al. 2016; read). Taken off.
   */
  static final double TOUCHDOWN_BIAS_S = 0.0031;
  /** Softness with which the leading point hands over between heel and toe [s] (judgement: about the error of either). */
  private static final double LEAD_S = 0.006;
  /** How fast a landed point may still move, standard deviation [m/s] (judgement). */
  static final double CREEP = 0.1;
  /** The point must have been seen at least twice within this time before the landing [s] (judgement). */
  private static final double SEEN_S = 0.05;
  /**
   * Where heel or toe is out of sight nobody sees whether it came down first: what that adds to the error, standard deviation
   * [s] (judgement: heel and toe land up to 30 ms apart).
   */
  private static final double BLIND_S = 0.015;
  /** What the fit looks at before and after the landing [s] (own output: wider brings in the swing's own turns). */
  static final double BEFORE_S = 0.045;
  static final double AFTER_S = 0.05;
  /** So much of the flight's side is needed at low frame rates, in frames (judgement). */
  private static final double FEWEST_FRAMES = 3.6;
  /**
   * How much the hips' lead at touchdown varies at the least [m]; wide, because how far ahead a foot lands is what the
   * coach wants to see (judgement).
   */
  private static final double LEAD_SD_M = 0.05;
  /** Before anything was seen: speed [m/s], acceleration [m/s2] and jerk [m/s3], each forward and up (judgement). */
  private static final Prior[] FIRST = {
    new Prior(0.8, 2.0), new Prior(-1.8, 1.0), new Prior(-40, 40), new Prior(0, 40), new Prior(0, 1500), new Prior(0, 1500)
  };
  /** How much landings of one rep differ in these at the least, standard deviation, same units (judgement). */
  static final double[] LEAST = {0.9, 0.45, 18, 18, 600, 600};

  private final Motion motion;
  private final double step;
  private final Feet feet;

  Landings(Motion motion, Feet feet, double step) {
    this.motion = motion;
    this.feet = feet;
    this.step = step;
  }

  /** A touchdown with the way the leading point came down. */
  record Landing(EventFit heel, EventFit toe, double heelLeads, Lead.Shift shift) {
    Landing(EventFit heel, EventFit toe, double heelLeads, double more_s) {
      this(
          heel, toe, heelLeads,
          new Lead.Shift(0, Math.hypot(more_s, Math.hypot(heelLeads * heel.sd(), (1 - heelLeads) * toe.sd()))));
    }

    EventFit lead() {
      return heelLeads > 0.5 ? heel : toe;
    }

    double time() {
      return heelLeads * heel.time() + (1 - heelLeads) * toe.time() - TOUCHDOWN_BIAS_S + shift.seconds();
    }

    double sd() {
      return shift.sd();
    }
  }

  /** The touchdowns of the stretches, null where one was not seen. */
  List<@Nullable Landing> all(List<Stretch> stretches) {
    List<@Nullable Landing> out = round(stretches, FIRST);
    for (int i = 0; i < 3; i++) {
      out = round(stretches, pooled(stretches, out));
    }
    return byLead(stretches, out);
  }

  private List<@Nullable Landing> byLead(List<Stretch> stretches, List<@Nullable Landing> landings) {
    List<Lead.Seen> seen = new ArrayList<>();
    for (int i = 0; i < landings.size(); i++) {
      Landing l = landings.get(i);
      FootPath toe = feet.toe(stretches.get(i).foot());
      seen.add(l == null ? Lead.UNSEEN : Lead.of(motion, l.time(), l.sd(), toe == null ? Double.NaN : stands(toe, l.time())));
    }
    List<Lead.Shift> shifts = Lead.shifts(seen, LEAD_SD_M);
    List<@Nullable Landing> out = new ArrayList<>();
    for (int i = 0; i < landings.size(); i++) {
      Landing l = landings.get(i);
      out.add(l == null ? null : new Landing(l.heel, l.toe, l.heelLeads, shifts.get(i)));
    }
    return out;
  }

  /** Where the toe stands shortly after a landing [m], NaN if unknown. */
  private static double stands(FootPath toe, double down) {
    double sum = 0;
    int n = 0;
    for (int i = 0; i < toe.times().length; i++) {
      if (toe.times()[i] > down + 0.02 && toe.times()[i] < down + 0.09 && !Double.isNaN(toe.x()[i])) {
        sum += toe.x()[i];
        n++;
      }
    }
    return n == 0 ? Double.NaN : sum / n;
  }

  private double wide(double window) {
    return Math.max(window, FEWEST_FRAMES * step);
  }

  private static LandPriors priors(Prior[] p) {
    return new LandPriors(p[0], p[1], p[2], p[3], p[4], p[5]);
  }

  private List<@Nullable Landing> round(List<Stretch> stretches, Prior[] p) {
    List<@Nullable Landing> out = new ArrayList<>();
    for (Stretch s : stretches) {
      double guess = motion.time(s.first());
      EventFit heel = one(feet.heel(s.foot()), guess, priors(p));
      EventFit toe = one(feet.toe(s.foot()), guess, priors(p));
      double blind = feet.sawBoth(s.foot(), guess - wide(SEEN_S), guess + wide(SEEN_S)) ? 0 : BLIND_S;
      if (heel == null || toe == null) {
        EventFit only = heel == null ? toe : heel;
        out.add(only == null ? null : new Landing(only, only, heel == null ? 0 : 1, blind));
      } else {
        // the earlier of the two, softly: near each other both tell the time
        out.add(new Landing(heel, toe, 1 / (1 + Math.exp((heel.time() - toe.time()) / LEAD_S)), blind));
      }
    }
    return out;
  }

  private @Nullable EventFit one(@Nullable FootPath path, double guess, LandPriors priors) {
    if (path == null || path.seen(guess - wide(SEEN_S), guess - 0.5 * step) < 2) {
      return null;
    }
    return fit(path).landing(guess, wide(BEFORE_S), wide(AFTER_S), priors);
  }

  private static CornerFit fit(FootPath path) {
    return new CornerFit(path, CREEP);
  }

  private Prior[] pooled(List<Stretch> stretches, List<@Nullable Landing> landings) {
    List<double[]> seen = new ArrayList<>();
    for (int i = 0; i < stretches.size(); i++) {
      Landing l = landings.get(i);
      if (l == null) {
        continue;
      }
      Foot foot = stretches.get(i).foot();
      FootPath path = l.heelLeads > 0.5 ? feet.heel(foot) : feet.toe(foot);
      double[] k =
          path == null ? null : fit(path).land(l.lead().time(), wide(BEFORE_S), wide(AFTER_S), priors(FIRST));
      if (k != null) {
        seen.add(k);
      }
    }
    return Pool.of(seen, FIRST, LEAST);
  }
}
