package boundwright.flight;

import boundwright.athlete.Level;
import boundwright.athlete.Surface;
import boundwright.footfall.Flight;
import boundwright.footfall.Sequence;
import java.util.Arrays;

/**
 * Where the contacts of one drill from one rung fall, as sums of unknowns: position c is {@code base[c] + where[c] . x} and
 * the rep's own scatter. Contact 0 is at the mark, {@code n} is the landing. Treat as immutable.
 */
final class RepShape {
  final int n;
  /** Nominal position of each contact [m]. */
  final double[] base;
  /** Sum of the squares of the nominal flights up to each contact [m2]. */
  final double[] squares;
  /** Each flight's nominal length [m]. */
  final double[] nominal;
  /** Traits of each position [m per relative unit]. */
  final double[][] where;
  /** Error of the first contact against its mark [m2]. */
  final double placement;
  private final double rep;
  /** Variance of what this drill has of its own, where it has no slot. */
  private final double unknownDrill;
  private final double flight;

  private RepShape(Level level, Sequence sequence, int steps, Surface surface, DrillSlots drills) {
    int slot = drills.of(sequence, steps);
    int kin = slot < 0 ? drills.kin(sequence, steps) : -1;
    n = sequence.size();
    nominal = NominalFlights.lengths(level, sequence, steps);
    base = new double[n + 1];
    squares = new double[n + 1];
    where = new double[n + 1][];
    double[] h = new double[Traits.COUNT];
    where[0] = h.clone();
    for (Flight f : sequence.flights()) {
      int c = f.order();
      double m = nominal[c - 1];
      base[c] = base[c - 1] + m;
      squares[c] = squares[c - 1] + m * m;
      Traits.add(h, m, sequence, f, steps, surface, slot);
      if (kin >= 0) {
        h[Traits.DRILL + kin] += DrillSlots.KEPT * m;
      }
      where[c] = h.clone();
    }
    double place = placementSd(steps);
    placement = place * place;
    unknownDrill = slot < 0 ? DrillSlots.variance(kin) : 0;
    rep = Spread.rep(level) * Spread.rep(level);
    flight = Spread.flight(level) * Spread.flight(level);
  }

  static RepShape of(Level level, Sequence sequence, int steps, Surface surface, DrillSlots drills) {
    return new RepShape(level, sequence, steps, surface, drills);
  }

  /** How far the first contact falls from its mark [m]; from standing it is put there (judgement). */
  static double placementSd(int steps) {
    return steps == 0 ? 0.01 : 0.05 + 0.008 * steps;
  }

  /** Covariance of two positions that the rep's form makes, at the usual scatter [m2]. */
  double repPart(int c, int d) {
    return rep * base[c] * base[d];
  }

  /** Covariance of two positions that the single flights make, at the usual scatter [m2]. */
  double flightPart(int c, int d) {
    return flight * squares[Math.min(c, d)];
  }

  /** Covariance of two positions of one rep that are not the athlete's traits [m2]. */
  double own(int c, int d, double repFactor, double flightFactor) {
    return repFactor * repPart(c, d) + flightFactor * flightPart(c, d) + placement + unknownDrill * base[c] * base[d];
  }

  /** A belief that also holds this rep's form, its placement and each flight's scatter. */
  Belief opened(Belief today, double repFactor, double flightFactor) {
    Belief wide = today.widened(n + 2);
    wide.reset(Traits.COUNT, rep * repFactor + unknownDrill);
    wide.reset(Traits.COUNT + 1, placement);
    for (int i = 0; i < n; i++) {
      wide.reset(Traits.COUNT + 2 + i, flight * flightFactor);
    }
    return wide;
  }

  /** Position {@code c} in the unknowns of {@link #opened}. */
  double[] wide(int c) {
    double[] h = Arrays.copyOf(where[c], Traits.COUNT + n + 2);
    h[Traits.COUNT] = base[c];
    h[Traits.COUNT + 1] = 1;
    for (int i = 0; i < c; i++) {
      h[Traits.COUNT + 2 + i] = nominal[i];
    }
    return h;
  }
}
