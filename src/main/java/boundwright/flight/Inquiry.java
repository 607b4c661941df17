package boundwright.flight;

import boundwright.quantity.RefusedException;
import boundwright.quantity.Rows;
import java.util.List;

/**
 * What logging the next rep in one way or another would tell about the reps after it on the same day: how sharp the
 * forecast of the same drill, rung and surface is expected to be afterwards. Measures are exact in a normal model (what is
 * measured does not matter for the spread, only that it is); taps are averaged over their three outcomes, moments matched.
 * What the rep would tell about the athlete's scatter is left out. Immutable; nothing is learned by asking.
 */
public final class Inquiry {
  /** Most taps in a row that are looked ahead: 27 ways in which three can turn out. */
  public static final int MOST_TAPS = 3;

  private static final List<Outcome> TAPPED = List.of(Outcome.SHORT, Outcome.IN, Outcome.LATE);

  private final double meanLast;
  private final double meanLanding;
  /** Covariance of last contact and landing that reps share, and each rep's own: last, both, landing [m2]. */
  private final double[] shared;
  private final double[] own;
  private final Sharpness measured;
  private final Sharpness lastContactMeasured;
  private final Sharpness landingMeasured;

  Inquiry(
      double meanLast,
      double meanLanding,
      double[] shared,
      double[] own,
      Sharpness measured,
      Sharpness lastContactMeasured,
      Sharpness landingMeasured) {
    this.meanLast = meanLast;
    this.meanLanding = meanLanding;
    this.shared = shared;
    this.own = own;
    this.measured = measured;
    this.lastContactMeasured = lastContactMeasured;
    this.landingMeasured = landingMeasured;
  }

  /** Asks of a drill on a day that is open. */
  static Inquiry of(RepShape shape, Belief today, Scatter scatter, double tape) {
    int n = shape.n;
    double rep = scatter.mean(Scatter.REP);
    double flight = scatter.mean(Scatter.FLIGHT);
    double[] own = {shape.own(n - 1, n - 1, rep, flight), shape.own(n - 1, n, rep, flight), shape.own(n, n, rep, flight)};
    for (int i = 0; i < own.length; i++) {
      own[i] *= FlightModel.UNMODELLED;
    }
    double[] last = shape.where[n - 1];
    double[] landing = shape.where[n];
    double[] shared = {today.varianceOf(last), Rows.dot(landing, today.times(last)), today.varianceOf(landing)};
    Belief open = shape.opened(today, rep, flight);
    Belief full = open.copy();
    for (int c = 1; c <= n; c++) {
      measure(full, shape.wide(c), tape);
    }
    Belief lastOnly = open.copy();
    measure(lastOnly, shape.wide(n - 1), tape);
    measure(open, shape.wide(n), tape);
    return new Inquiry(
        shape.base[n - 1] + today.meanOf(last),
        shape.base[n] + today.meanOf(landing),
        shared,
        own,
        sharpness(full, last, landing, own),
        sharpness(lastOnly, last, landing, own),
        sharpness(open, last, landing, own));
  }

  private static void measure(Belief b, double[] where, double tape) {
    b.measure(where, b.meanOf(where), tape);
  }

  private static Sharpness sharpness(Belief after, double[] last, double[] landing, double[] own) {
    Belief b = after.narrowed(Traits.COUNT);
    return new Sharpness(
        Math.sqrt(b.varianceOf(last) + own[0]), Math.sqrt(b.varianceOf(landing) + own[2]), Rows.dot(landing, b.times(last)) + own[1]);
  }

  /** The forecast as it is now. */
  public Sharpness now() {
    return new Sharpness(Math.sqrt(shared[0] + own[0]), Math.sqrt(shared[2] + own[2]), shared[1] + own[1]);
  }

  /** What stays unknown of a single rep however much is logged: its own scatter. */
  public Sharpness least() {
    return new Sharpness(Math.sqrt(own[0]), Math.sqrt(own[2]), own[1]);
  }

  /** After one rep with every footprint and the landing measured. */
  public Sharpness measured() {
    return measured;
  }

  /** After one rep with only its last footprint measured, and no tap. */
  public Sharpness lastContactMeasured() {
    return lastContactMeasured;
  }

  /** After one rep with only its landing measured. */
  public Sharpness landingMeasured() {
    return landingMeasured;
  }

  /**
   * After the next reps were tapped from one mark: the root of the variance expected over how the taps turn out.
   *
   * @param markToSand_m where the mark lies, to the near edge of the sand [m]
   * @param reps how many are tapped, 0 to {@value #MOST_TAPS}
   */
  public Sharpness tapped(double markToSand_m, int reps) {
    if (reps < 0 || reps > MOST_TAPS) {
      throw new RefusedException(reps + " taps cannot be looked ahead; the limit is 0 to " + MOST_TAPS + ".");
    }
    Belief joint = new Belief(2 * (reps + 1));
    for (int i = 0; i <= reps; i++) {
      joint.setMean(2 * i, meanLast);
      joint.setMean(2 * i + 1, meanLanding);
      for (int j = 0; j <= reps; j++) {
        double alone = i == j ? 1 : 0;
        joint.setCovariance(2 * i, 2 * j, shared[0] + alone * own[0]);
        joint.setCovariance(2 * i + 1, 2 * j + 1, shared[2] + alone * own[2]);
        joint.setCovariance(2 * i, 2 * j + 1, shared[1] + alone * own[1]);
      }
    }
    double[] expected = afterTaps(joint, markToSand_m, reps);
    return new Sharpness(Math.sqrt(expected[0]), Math.sqrt(expected[1]), expected[2]);
  }

  /** Expected variances of the last rep's last contact and landing, and their covariance, when the first {@code left} reps are tapped. */
  private double[] afterTaps(Belief joint, double mark, int left) {
    int last = joint.size() - 2;
    if (left == 0) {
      return new double[] {joint.variance(last), joint.variance(last + 1), joint.covariance(last, last + 1)};
    }
    double[] h = new double[joint.size()];
    double[] contact = h.clone();
    contact[2 * left - 2] = 1;
    double[] landing = h.clone();
    landing[2 * left - 1] = 1;
    double isLate = joint.chanceAbove(contact, mark);
    double isShort = Math.min(1 - isLate, 1 - joint.chanceAbove(landing, mark));
    double[] out = new double[3];
    for (Outcome o : TAPPED) {
      double chance = o == Outcome.LATE ? isLate : o == Outcome.SHORT ? isShort : Math.max(0, 1 - isLate - isShort);
      if (chance > 1e-6) {
        Belief after = joint.copy();
        Taps.tell(after, o, mark, contact, 0, landing, 0);
        double[] then = afterTaps(after, mark, left - 1);
        for (int i = 0; i < out.length; i++) {
          out[i] += chance * then[i];
        }
      }
    }
    double seen = Math.max(1e-6, isLate + isShort + Math.max(0, 1 - isLate - isShort));
    return new double[] {out[0] / seen, out[1] / seen, out[2] / seen};
  }
}
