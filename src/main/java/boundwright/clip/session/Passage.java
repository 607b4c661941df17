package boundwright.clip.session;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * Whether somebody who was followed for a while ran, bounded and landed. Lengths are in trunk-and-leg lengths, about 1.3 m of a grown
 * athlete, so that the distance of the camera does not matter.
 *
 * @param from_s where the run begins [s]
 * @param to_s where it ends [s]
 * @param toTheRight which way
 * @param speed middle speed of the hips [lengths/s]
 * @param bounce largest rise of the hips between two contacts [lengths]
 * @param flights how many rises are those of a bound
 * @param landed whether the run was seen to end in the picture
 */
record Passage(double from_s, double to_s, boolean toTheRight, double speed, double bounce, int flights, boolean landed) {
  /** Nobody walks so fast; 2.7 m/s for a grown athlete (judgement between a walk at 1.5 m/s and a bound from standing at 3). */
  private static final double RUNS = 2.0;
  /** For at least so long [s]. */
  private static final double LEAST_S = 0.7;
  /**
   * The hips rise by so much in a bound: a running step lifts them by 4 to 8 cm (memory), a bound by 15 to 25 (worked: leaving the
   * ground at 1.75 to 2.2 m/s upwards), so 11 cm lies between.
   */
  private static final double BOUNDS = 0.085;
  private static final double OVER_S = 0.25;
  private static final double GAP_S = 0.45;

  /** The fastest run among the looks, if there is one that could be a rep. */
  static Optional<Passage> of(Runner runner) {
    List<Runner.Look> looks = runner.looks();
    int n = looks.size();
    double size = runner.middleSize();
    double[] speed = new double[n];
    for (int i = 0; i < n; i++) {
      speed[i] = speed(looks, i) / size;
    }
    Passage best = null;
    for (int way : new int[] {1, -1}) {
      int from = -1;
      int last = -1;
      for (int i = 0; i <= n; i++) {
        boolean runs = i < n && way * speed[i] >= RUNS;
        if (runs && from < 0) {
          from = i;
        }
        if (runs) {
          last = i;
        }
        boolean over = from >= 0 && (i == n || looks.get(i).time_s() - looks.get(last).time_s() > GAP_S);
        if (over) {
          Passage p = between(looks, speed, from, last, way > 0, size);
          if (p.to_s - p.from_s >= LEAST_S && (best == null || p.to_s - p.from_s > best.to_s - best.from_s)) {
            best = p;
          }
          from = -1;
        }
      }
    }
    return Optional.ofNullable(best);
  }

  /** Slope of the hips over the looks around one [px/s]. */
  private static double speed(List<Runner.Look> looks, int at) {
    int a = at;
    int b = at;
    while (a > 0 && looks.get(at).time_s() - looks.get(a - 1).time_s() <= OVER_S) {
      a--;
    }
    while (b < looks.size() - 1 && looks.get(b + 1).time_s() - looks.get(at).time_s() <= OVER_S) {
      b++;
    }
    double span = looks.get(b).time_s() - looks.get(a).time_s();
    return span <= 0 ? 0 : (looks.get(b).x() - looks.get(a).x()) / span;
  }

  private static Passage between(List<Runner.Look> looks, double[] speed, int from, int last, boolean right, double size) {
    double[] fast = Arrays.copyOfRange(speed, from, last + 1);
    for (int i = 0; i < fast.length; i++) {
      fast[i] = Math.abs(fast[i]);
    }
    Arrays.sort(fast);
    List<Double> rises = rises(looks.subList(from, last + 1), size);
    double bounce = rises.stream().mapToDouble(d -> d).max().orElse(0);
    int flights = (int) rises.stream().filter(r -> r >= BOUNDS).count();
    boolean landed = looks.get(looks.size() - 1).time_s() - looks.get(last).time_s() > 0.3;
    return new Passage(looks.get(from).time_s(), looks.get(last).time_s(), right, fast[fast.length >> 1], bounce, flights, landed);
  }

  /** Every rise of the hips from a lowest place to the next highest [lengths]. */
  private static List<Double> rises(List<Runner.Look> looks, double size) {
    List<Double> out = new ArrayList<>();
    double low = Double.NaN;
    double high = Double.NaN;
    for (Runner.Look l : looks) {
      double up = -l.y() / size;
      if (Double.isNaN(low) || (up < low && Double.isNaN(high))) {
        low = up;
      } else if (Double.isNaN(high)) {
        high = up > low + 0.02 ? up : Double.NaN;
      } else if (up > high) {
        high = up;
      } else if (up < high - 0.02) {
        out.add(high - low);
        low = up;
        high = Double.NaN;
      }
    }
    if (!Double.isNaN(high)) {
      out.add(high - low);
    }
    return out;
  }

  /** Whether it is a rep: a run with the rises of bounds in it. */
  boolean isRep() {
    return flights >= 1;
  }

  /** How sure that is, 0 to 1 (judgement): by the number of bounds seen and whether the landing was. */
  double sure() {
    return Math.min(0.97, (flights >= 2 ? 0.8 : 0.6) + (landed ? 0.1 : 0) + Math.min(0.1, Math.max(0, bounce - BOUNDS)));
  }
}
