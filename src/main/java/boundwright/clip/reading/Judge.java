package boundwright.clip.reading;

import boundwright.clip.body.Strike;
import boundwright.clip.reading.PointVerdict.Finding;
import boundwright.quantity.Estimate;
import boundwright.technique.FootContact;
import boundwright.technique.TeachingPoint;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * The teaching points (common practice) held against what was measured. The points are taught without numbers, except the
 * strike's height of about 0.15 m; every limit here is the house's own judgement of where a coach's eye would object, and
 * a value nearer to it than the measurement's error is called unsure. What a side view cannot show (arms across the
 * body, sideways lean) is not judged. A strike is judged by what is taught ({@link FootContact}): where the heel leads, landing on the
 * ball is the fault; where the whole foot is taught, landing on the heel is one too. The whole foot's class is 9.6 degrees wide and the
 * angle known to 4, so a film can find such a fault and never be sure that there is none.
 */
public final class Judge {
  /** Lean against the vertical [degrees]; judgement. */
  public static final double LEAN_DEG = 10;
  /** Free thigh at its highest [degrees, 90 is level]; judgement. */
  public static final double THIGH_DEG = 70;
  /** Angle at the ankle before touchdown: more is a dangling toe [degrees]; judgement. */
  public static final double ANKLE_DEG = 110;
  /** The strike begins below this height [m]; taught is about 0.15 m (common practice), the margin is judgement. */
  public static final double STRIKE_M = 0.25;
  /** Height at which the strike is taught to begin [m] (common practice). */
  public static final double TAUGHT_M = 0.15;
  /** Toe ahead of the centre of mass at touchdown [m]; judgement. */
  public static final double AHEAD_M = 0.50;
  /** Speed lost in one contact [share of the speed]; judgement. */
  public static final double LOST = 0.10;

  private static final double LEAN_SD = 1.5;
  private static final double THIGH_SD = 4;
  private static final double ANKLE_SD = 8;
  private static final double STRIKE_SD = 0.04;
  private static final double ANGLE_SD = 4;
  private static final double SPEED_SD = 0.25;

  private final FootContact taught;
  private final List<PointVerdict> out = new ArrayList<>();

  private Judge(FootContact taught) {
    this.taught = taught;
  }

  static List<PointVerdict> all(List<ReadContact> contacts, SequenceMatch match, Setup setup, FootContact taught) {
    Judge judge = new Judge(taught);
    for (int k = 0; k < match.sequence().size() && match.first() + k < contacts.size(); k++) {
      judge.one(contacts.get(match.first() + k), k + 1, setup);
    }
    return List.copyOf(judge.out);
  }

  private void one(ReadContact c, int n, Setup setup) {
    double lean = Math.abs(c.trunkLeanDeg());
    add(TeachingPoint.UPRIGHT, n, LEAN_DEG - lean, LEAN_SD, "trunk %.0f degrees %s, at most %.0f",
        lean, c.trunkLeanDeg() >= 0 ? "forward" : "back", LEAN_DEG);
    add(TeachingPoint.KNEE_UP, n, c.thighDeg() - THIGH_DEG, THIGH_SD, "free thigh up to %.0f degrees (90 is level), at least %.0f",
        c.thighDeg(), THIGH_DEG);
    add(TeachingPoint.TOE_UP, n, ANKLE_DEG - c.ankleDeg(), ANKLE_SD, "ankle at %.0f degrees before touchdown, at most %.0f",
        c.ankleDeg(), ANKLE_DEG);
    Strike strike = c.strike();
    if (strike != null && taught == FootContact.WHOLE_FOOT) {
      double inside = Math.min(c.strikeDeg() - Strike.FOREFOOT_BELOW_DEG, Strike.HEEL_ABOVE_DEG - c.strikeDeg());
      add(TeachingPoint.HEEL_ROLLS, n, inside, ANGLE_SD, "lands on the %s, foot at %.0f degrees against flat, whole foot from %.1f to %.1f",
          strike.label(), c.strikeDeg(), Strike.FOREFOOT_BELOW_DEG, Strike.HEEL_ABOVE_DEG);
    } else if (strike != null) {
      add(TeachingPoint.HEEL_ROLLS, n, c.strikeDeg() - Strike.FOREFOOT_BELOW_DEG, ANGLE_SD,
          "lands on the %s, foot at %.0f degrees against flat, forefoot below %.1f", strike.label(), c.strikeDeg(), Strike.FOREFOOT_BELOW_DEG);
    }
    if (!setup.scaled()) {
      return;
    }
    lengths(TeachingPoint.HOLD_THEN_STRIKE, n, STRIKE_M - c.strikeFrom_m(), STRIKE_SD,
        "the strike begins {0} above the ground; taught is about {1}, at most {2}.", c.strikeFrom_m(), TAUGHT_M, STRIKE_M);
    Estimate ahead = c.touchdownDistance_m();
    if (ahead != null) {
      lengths(TeachingPoint.FOOT_UNDER, n, AHEAD_M - ahead.p50(), ahead.halfWidth() / Estimate.Z95,
          "toe {0} ahead of the centre of mass at touchdown, at most {1}; under the body is the cue, not the measure.", ahead.p50(), AHEAD_M);
    }
    double lost = c.speedLost_ms();
    add(TeachingPoint.SPEED_THROUGH, n, LOST * c.speedIn_ms() - lost, SPEED_SD,
        "%.1f of %.1f m/s lost in the contact, at most %.1f", lost, c.speedIn_ms(), LOST * c.speedIn_ms());
  }

  /** {@code inside} is how far within the limit the value lies, {@code sd} its error in the same unit. */
  private void add(TeachingPoint point, int n, double inside, double sd, String words, Object... values) {
    if (!Double.isNaN(inside)) {
      out.add(new PointVerdict(point, n, finding(inside, sd), String.format(Locale.ROOT, words, values) + ".", List.of(), taught));
    }
  }

  /** The same for lengths, which are written in the coach's unit. */
  private void lengths(
      TeachingPoint point, int n, double inside, double sd, String words, Double... lengths_m) {
    if (!Double.isNaN(inside)) {
      out.add(new PointVerdict(point, n, finding(inside, sd), words, List.of(lengths_m), taught));
    }
  }

  private static Finding finding(double inside, double sd) {
    return Math.abs(inside) < Estimate.Z95 * sd ? Finding.UNSURE : inside > 0 ? Finding.GOOD : Finding.FAULT;
  }
}
