package boundwright.flight;

import org.hipparchus.special.Erf;
import org.jspecify.annotations.Nullable;

/**
 * What a tap says of a rep: on which side of the sand's edge landing and last contact fell. Taps err, and an abandoned rep
 * is tapped short although the athlete's own flights would have reached (judgement).
 */
final class Taps {
  /** How often a tap is wrong. */
  static final double SLIP = 0.01;
  /** How often a rep that would have reached is tapped short: slips and abandoned reps. */
  static final double SHORT_MISS = SLIP + RepEvidence.ABANDONED;

  private Taps() {}

  /**
   * Tells a belief.
   *
   * @param contact last contact as a combination of what is believed, or null if it was measured
   * @param landing likewise
   * @param contactBase added to the combination [m]
   * @param landingBase likewise
   */
  static void tell(
      Belief b,
      Outcome outcome,
      double mark,
      double @Nullable [] contact,
      double contactBase,
      double @Nullable [] landing,
      double landingBase) {
    if (landing != null && outcome == Outcome.SHORT) {
      b.side(landing, mark - landingBase, false, 1 - SLIP, SHORT_MISS);
    }
    if (landing != null && outcome == Outcome.IN) {
      b.side(landing, mark - landingBase, true, 1 - SHORT_MISS, SLIP);
    }
    if (contact != null && outcome != Outcome.SHORT) {
      b.side(contact, mark - contactBase, outcome == Outcome.LATE, 1 - SLIP, SLIP);
    }
  }

  /** How likely a tap is for each scatter, {@code [rep step][flight step]}; nothing was measured of the rep. */
  static double[][] likelihood(RepShape shape, Belief today, Outcome outcome, double mark) {
    int n = shape.n;
    double last = mark - shape.base[n - 1] - today.meanOf(shape.where[n - 1]);
    double landing = mark - shape.base[n] - today.meanOf(shape.where[n]);
    double knownLast = today.varianceOf(shape.where[n - 1]);
    double knownLanding = today.varianceOf(shape.where[n]);
    double[][] out = new double[Scatter.STEPS][Scatter.STEPS];
    for (int a = 0; a < Scatter.STEPS; a++) {
      for (int b = 0; b < Scatter.STEPS; b++) {
        double rep = Scatter.factor(a);
        double flight = Scatter.factor(b);
        double isLate = 1 - below(last, knownLast + shape.own(n - 1, n - 1, rep, flight));
        double isShort = Math.min(1 - isLate, below(landing, knownLanding + shape.own(n, n, rep, flight)));
        double isIn = 1 - isLate - isShort;
        double said =
            switch (outcome) {
              case SHORT -> isShort + (SHORT_MISS - SLIP) * isIn;
              case IN -> isIn * (1 - SHORT_MISS + SLIP);
              case LATE -> isLate;
              case ABANDONED, DONE -> 0;
            };
        out[a][b] = SLIP + (1 - 3 * SLIP) * said;
      }
    }
    return out;
  }

  private static double below(double limit, double variance) {
    return 0.5 * Erf.erfc(-limit / Math.sqrt(2 * variance));
  }
}
