package boundwright.jump;

import boundwright.flight.ContactModel;
import boundwright.inference.Normal;
import boundwright.quantity.Estimate;
import boundwright.quantity.LengthUnit;
import boundwright.quantity.Limits;
import boundwright.quantity.RefusedException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.random.RandomGenerator;
import org.hipparchus.distribution.continuous.TDistribution;

/**
 * The shares that carry this athlete furthest, within the vertical speeds they have shown together and with a floor under the
 * step; how wide the plateau around them is; and whether the data can tell. A free search runs to its bounds (worked),
 * so the answer says when the optimum sits on one. Immutable.
 */
public final class BestShares {
  /** Total given up on the plateau [m]. */
  public static final double PLATEAU_M = 0.05;
  /** Chance from which the data are said to tell. */
  public static final double TELLS = 0.9;

  private static final int PER_PHASE = 49;
  private static final int PER_PHASE_DRAWN = 19;
  private static final int DRAWS = 300;
  /** Width of a cell of the share triangle. */
  private static final double CELL = 0.005;
  private static final int SIDE = (int) Math.round(1 / CELL) + 1;

  private final ContactLine line;
  private final ShareGrid grid;
  private final Option best;
  private final Option now;
  private final List<Option> cells;
  private final List<Option> plateau;
  private final List<Bound> bounds;
  private final Map<PhaseClass, Double> classChance;
  private final List<Estimate> optimum;
  /** Half the 90 % interval of the total as jumped now, from the jumps' own scatter [m]. */
  private final double nowHalf_m;

  /**
   * A way to share the jump out.
   *
   * @param shares of the effective distance
   * @param total_m effective distance under the middle line [m]
   * @param takeOffVy vertical speeds that make it [m/s]: hop, step, jump
   * @param point its place in the search that made it
   */
  public record Option(Shares shares, double total_m, List<Double> takeOffVy, int point) {
    /** Takes a copy. */
    public Option {
      takeOffVy = List.copyOf(takeOffVy);
    }
  }

  /**
   * A bound that the optimum sits on.
   *
   * @param phase whose vertical speed it is
   * @param upper at the largest shown, else the smallest
   */
  public record Bound(Phase phase, boolean upper) {}

  private BestShares(
      ContactLine line,
      ShareGrid grid,
      Option best,
      Option now,
      List<Option> cells,
      List<Bound> bounds,
      Map<PhaseClass, Double> classChance,
      List<Estimate> optimum,
      double nowHalf_m) {
    this.nowHalf_m = nowHalf_m;
    this.line = line;
    this.grid = grid;
    this.best = best;
    this.now = now;
    this.cells = cells;
    this.bounds = bounds;
    this.classChance = classChance;
    this.optimum = optimum;
    plateau = cells.stream().filter(c -> c.total_m() >= best.total_m() - PLATEAU_M).toList();
  }

  /**
   * Searches.
   *
   * @param stepFloor_m no step shorter than this [m]; {@link JumpProfile#shortestStep_m()} is usual
   * @param threshold class threshold in percentage points
   * @param random for the lines drawn from what is believed; seed it to get the same answer twice
   * @throws RefusedException if no jump keeps the floor
   */
  public static BestShares of(
      ContactLine line, JumpProfile profile, double stepFloor_m, double threshold, RandomGenerator random) {
    Limits.within("floor of the step", stepFloor_m, 0, 8, "m", "The shortest step shown is usual.");
    ShareGrid grid = new ShareGrid(line.form(), profile, PER_PHASE);
    double[] m = line.mean();
    double[] most = new double[SIDE * SIDE];
    int[] where = new int[SIDE * SIDE];
    double[] l = new double[3];
    int top = -1;
    double topTotal = 0;
    for (int p : grid.shown()) {
      if (grid.lengths(p, m[0], m[1], stepFloor_m - 1e-9, l)) {
        double total = l[0] + l[1] + l[2];
        if (total > topTotal) {
          topTotal = total;
          top = p;
        }
        int cell = ((int) (l[0] / total / CELL)) * SIDE + (int) (l[1] / total / CELL);
        if (total > most[cell]) {
          most[cell] = total;
          where[cell] = p;
        }
      }
    }
    if (top < 0) {
      throw new RefusedException(
          "No jump within what the athlete has shown keeps the step at " + stepFloor_m + " m. Lower the floor; the shortest step shown is "
              + Math.round(100 * profile.shortestStep_m()) / 100.0 + " m.");
    }
    List<Option> cells = new ArrayList<>();
    for (int c = 0; c < where.length; c++) {
      if (most[c] > 0) {
        cells.add(option(grid, where[c], m));
      }
    }
    cells.sort(Comparator.comparingDouble((Option o) -> o.shares().hop()).thenComparingDouble(o -> o.shares().step()));
    List<Bound> bounds = new ArrayList<>();
    for (int i = 0; i < 3; i++) {
      int edge = grid.edge(top, i);
      if (edge != 0) {
        bounds.add(new Bound(Phase.IN_ORDER.get(i), edge > 0));
      }
    }
    double[] usual = profile.phases().stream().mapToDouble(s -> s.takeOffVy().mean()).toArray();
    Drawn drawn = new Drawn(line, profile, stepFloor_m, threshold, random);
    int now = grid.nearest(usual);
    return new BestShares(
        line, grid, option(grid, top, m), option(grid, now, m), List.copyOf(cells), List.copyOf(bounds),
        drawn.classes, drawn.optimum, nowHalf(grid, now, m, profile));
  }

  /**
   * How well the total as jumped now is known where the line is: the usual vertical speeds are means of a few jumps. First order, with
   * the speeds' own errors and how they went together from jump to jump; Student's t.
   */
  private static double nowHalf(ShareGrid grid, int now, double[] m, JumpProfile profile) {
    double[] slope = new double[3];
    for (int i = 0; i < 3; i++) {
      int low = grid.beside(now, i, -1);
      int high = grid.beside(now, i, 1);
      double apart = grid.up(high)[i] - grid.up(low)[i];
      slope[i] = apart > 0 ? (total(grid, high, m) - total(grid, low, m)) / apart : 0;
    }
    double variance = 0;
    for (int i = 0; i < 3; i++) {
      for (int j = 0; j < 3; j++) {
        variance +=
            slope[i] * slope[j] * profile.phases().get(i).takeOffVy().error() * profile.phases().get(j).takeOffVy().error()
                * profile.correlation(i, j);
      }
    }
    double t = new TDistribution(Math.max(1, profile.jumps() - 1)).inverseCumulativeProbability(0.95);
    return t * Math.sqrt(Math.max(0, variance));
  }

  private static double total(ShareGrid grid, int point, double[] m) {
    double[] t = new double[3];
    grid.terms(point, t);
    return t[0] - m[0] * t[1] - m[1] * t[2];
  }

  private static Option option(ShareGrid grid, int point, double[] m) {
    double[] l = new double[3];
    if (!grid.lengths(point, m[0], m[1], 0, l)) {
      throw new RefusedException("Under the contact line as it is known the athlete would come to a stop. Measure more contacts.");
    }
    double[] up = grid.up(point);
    return new Option(Shares.ofLengths(l[0], l[1], l[2]), l[0] + l[1] + l[2], List.of(up[0], up[1], up[2]), point);
  }

  /** Where the optimum lies for lines drawn from what is believed, on a coarser grid. */
  private static final class Drawn {
    private final Map<PhaseClass, Double> classes = new EnumMap<>(PhaseClass.class);
    private final List<Estimate> optimum;

    Drawn(ContactLine line, JumpProfile profile, double floor, double threshold, RandomGenerator random) {
      ShareGrid coarse = new ShareGrid(line.form(), profile, PER_PHASE_DRAWN);
      int[] shown = coarse.shown();
      double[][] terms = new double[3][shown.length];
      double[] t = new double[3];
      for (int k = 0; k < shown.length; k++) {
        coarse.terms(shown[k], t);
        for (int i = 0; i < 3; i++) {
          terms[i][k] = t[i];
        }
      }
      double[][] shares = new double[3][DRAWS];
      double[] l = new double[3];
      int kept = 0;
      for (int d = 0; d < DRAWS; d++) {
        double[] a = line.draw(random);
        int top = top(coarse, shown, terms, a, floor, l);
        if (top >= 0) {
          Shares s = Shares.ofLengths(l[0], l[1], l[2]);
          classes.merge(s.classify(threshold), 1.0, Double::sum);
          for (int i = 0; i < 3; i++) {
            shares[i][kept] = s.of(Phase.IN_ORDER.get(i));
          }
          kept++;
        }
      }
      if (kept == 0) {
        throw new RefusedException("The contact line is too little known to search with it. Measure more contacts.");
      }
      double all = kept;
      classes.replaceAll((c, count) -> count / all);
      List<Estimate> out = new ArrayList<>();
      for (int i = 0; i < 3; i++) {
        double[] sorted = Arrays.copyOf(shares[i], kept);
        Arrays.sort(sorted);
        out.add(new Estimate(sorted[kept / 20], sorted[kept / 2], sorted[kept - 1 - kept / 20]));
      }
      optimum = List.copyOf(out);
    }

    /** The longest total that keeps the rules; the lengths are left in {@code l}. */
    private static int top(ShareGrid grid, int[] shown, double[][] terms, double[] a, double floor, double[] l) {
      int top = -1;
      double most = 0;
      for (int k = 0; k < shown.length; k++) {
        double total = terms[0][k] - a[0] * terms[1][k] - a[1] * terms[2][k];
        if (total > most && grid.lengths(shown[k], a[0], a[1], floor - 1e-9, l)) {
          most = total;
          top = shown[k];
        }
      }
      if (top >= 0) {
        grid.lengths(top, a[0], a[1], floor - 1e-9, l);
      }
      return top;
    }
  }

  /** The longest under the middle line. */
  public Option best() {
    return best;
  }

  /** As the athlete jumps now: their usual vertical speeds. */
  public Option now() {
    return now;
  }

  /** Every cell of the share triangle that can be reached, its longest jump, by hop share and then step share. */
  public List<Option> reachable() {
    return cells;
  }

  /** The cells within {@link #PLATEAU_M} of the best. */
  public List<Option> plateau() {
    return plateau;
  }

  /** The plateau's outline, counter-clockwise in the plane of hop share and step share; a point or line when it is thin. */
  public List<Shares> plateauOutline() {
    List<Shares> points = plateau.stream().map(Option::shares).toList();
    List<Shares> out = new ArrayList<>(half(points));
    List<Shares> back = half(points.stream().sorted(Comparator.comparingDouble(Shares::hop).thenComparingDouble(Shares::step).reversed()).toList());
    out.addAll(back);
    return out.isEmpty() ? points : List.copyOf(out);
  }

  /** One side of the convex hull of points in order (Andrew's monotone chain), without its last point. */
  private static List<Shares> half(List<Shares> points) {
    List<Shares> chain = new ArrayList<>();
    for (Shares p : points) {
      while (chain.size() >= 2 && turn(chain.get(chain.size() - 2), chain.get(chain.size() - 1), p) <= 0) {
        chain.remove(chain.size() - 1);
      }
      chain.add(p);
    }
    chain.remove(chain.size() - 1);
    return chain;
  }

  private static double turn(Shares a, Shares b, Shares c) {
    return (b.hop() - a.hop()) * (c.step() - a.step()) - (b.step() - a.step()) * (c.hop() - a.hop());
  }

  /** Width of a cell of the triangle, as a part of 1. */
  public double cellWidth() {
    return CELL;
  }

  /** Ends of the shown ranges that the best sits on; empty when it lies inside them. */
  public List<Bound> bounds() {
    return bounds;
  }

  /** Whether the best sits on the edge of what was shown together: it may lie beyond. */
  public boolean onEdge() {
    return grid.onEdge(best.point());
  }

  /** Chance that the best shares fall in each class; a class that never came up is missing. */
  public Map<PhaseClass, Double> classChance() {
    return Map.copyOf(classChance);
  }

  /** 5-50-95 % of the best hop, step and jump shares over the lines believed possible. */
  public List<Estimate> optimum() {
    return optimum;
  }

  /**
   * Chance that one way is longer than another for this athlete, given how well their line is known.
   *
   * @param a from {@link #best()}, {@link #now()} or {@link #reachable()} of this search
   */
  public double chanceLonger(Option a, Option b) {
    double[] d = difference(a, b);
    if (!againstNow(a, b)) {
      return line.chancePositive(d[0], d[1], d[2]);
    }
    Estimate e = longer(a, b);
    return e.halfWidth() > 0 ? Normal.below(e.p50() / (e.halfWidth() / Estimate.Z95)) : e.p50() > 0 ? 1 : 0;
  }

  /** How much longer {@code a} is than {@code b} [m]; against {@link #now()} also as well as the usual jump is known. */
  public Estimate longer(Option a, Option b) {
    double[] d = difference(a, b);
    Estimate e = line.estimate(d[0], d[1], d[2]);
    if (!againstNow(a, b)) {
      return e;
    }
    double half = Math.hypot(e.halfWidth(), nowHalf_m);
    return new Estimate(e.p50() - half, e.p50(), e.p50() + half);
  }

  private boolean againstNow(Option a, Option b) {
    return (a.point() == now.point()) != (b.point() == now.point());
  }

  private double[] difference(Option a, Option b) {
    double[] s = new double[3];
    double[] t = new double[3];
    grid.terms(a.point(), s);
    grid.terms(b.point(), t);
    return new double[] {s[0] - t[0], t[1] - s[1], t[2] - s[2]};
  }

  /** The reachable way nearest to given shares. */
  public Option nearest(Shares shares) {
    return cells.stream()
        .min(Comparator.comparingDouble((Option o) -> Math.hypot(o.shares().hop() - shares.hop(), o.shares().step() - shares.step())))
        .orElseThrow();
  }

  /** Whether the data tell that the best is longer than how they jump now. */
  public boolean told() {
    return best.point() != now.point() && chanceLonger(best, now) >= TELLS && line.contacts() > 0;
  }

  /** The line that was searched with. */
  public ContactModel middleLine() {
    return line.middle();
  }

  /** The sentences for the coach in metres. */
  public String words() {
    return words(LengthUnit.METRES);
  }

  /** The sentences for the coach. */
  public String words(LengthUnit unit) {
    StringBuilder out = new StringBuilder();
    double win = best.total_m() - now.total_m();
    String by = unit == LengthUnit.METRES ? Math.round(100 * Math.max(win, 0)) + " cm" : unit.write(Math.max(win, 0));
    if (win <= PLATEAU_M) {
      out.append("The athlete jumps on the plateau already: other shares would win at most ").append(by).append('.');
    } else if (told()) {
      Estimate longer = longer(best, now);
      out.append(String.format(Locale.ROOT, "%.0f / %.0f / %.0f %% would carry about %s further than now (%s to %s, nine times in ten).",
          100 * best.shares().hop(), 100 * best.shares().step(), 100 * best.shares().jump(), by, unit.writeSmall(Math.max(longer.p05(), 0)),
          unit.writeSmall(longer.p95())));
    } else {
      out.append("The data cannot tell whether other shares would carry further.");
    }
    if (onEdge()) {
      out.append(" The best sits on the edge of what was shown in one jump");
      for (int i = 0; i < bounds.size(); i++) {
        Bound b = bounds.get(i);
        out.append(i == 0 ? " (" : ", ").append(b.upper() ? "highest " : "flattest ").append(b.phase().label());
      }
      out.append(bounds.isEmpty() ? "" : ")").append(": it may lie beyond.");
    }
    return out.toString();
  }
}
