package boundwright.jump.takeoff;

import boundwright.flight.Projectile;
import boundwright.quantity.Estimate;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.random.RandomGenerator;
import org.jspecify.annotations.Nullable;

/**
 * The take-off angle that carries this athlete furthest along their own trade of speed for angle, within the angles that they have
 * shown. Heights and take-off and landing distance are held at their usual values, although they change a little with the angle
 * (Linthorne, Guzman and Bridgett 2005; abstract read), so it is the flight's best angle.
 *
 * @param trade speed by angle
 * @param best_deg the best angle [degrees]
 * @param worth_m what the best angle's middle value is worth over the usual angle [m]
 * @param cannotTell why it is not told, a sentence with what is needed; null when it is
 */
public record BestAngle(SpeedForAngle trade, Estimate best_deg, Estimate worth_m, @Nullable String cannotTell) {
  /** Fewest take-offs, and least spread of their angles [degrees], from which an angle is told (judgement). */
  public static final int FEWEST = 8;
  public static final double LEAST_SPREAD_DEG = 1.0;

  private static final int DRAWS = 1000;
  private static final double STEP_DEG = 0.1;

  /**
   * From measured take-offs.
   *
   * @param all at least one
   * @param random seed it to get the same answer twice
   */
  public static BestAngle of(List<TakeOff> all, RandomGenerator random) {
    SpeedForAngle trade = SpeedForAngle.of(all);
    Usual high = Usual.of(all.stream().mapToDouble(TakeOff::takeOffHeight_m).toArray());
    Usual low = Usual.of(all.stream().mapToDouble(TakeOff::landingHeight_m).toArray());
    double[] best = new double[DRAWS];
    SpeedForAngle.Line[] lines = new SpeedForAngle.Line[DRAWS];
    double[] drop = new double[DRAWS];
    for (int d = 0; d < DRAWS; d++) {
      lines[d] = trade.draw(random);
      drop[d] = high.draw(random) - low.draw(random);
      best[d] = optimum(lines[d], drop[d], trade.least_deg(), trade.most_deg());
    }
    Estimate angle = middle(best);
    double[] worth = new double[DRAWS];
    for (int d = 0; d < DRAWS; d++) {
      worth[d] = flight(lines[d], drop[d], angle.p50()) - flight(lines[d], drop[d], trade.middle_deg());
    }
    return new BestAngle(trade, angle, middle(worth), cannotTell(trade, angle));
  }

  private static @Nullable String cannotTell(SpeedForAngle trade, Estimate angle) {
    if (trade.takeOffs() < FEWEST) {
      return "A best angle needs at least " + FEWEST + " measured take-offs; there are " + trade.takeOffs() + ". Measure more.";
    }
    if (trade.sd_deg() < LEAST_SPREAD_DEG) {
      return String.format(
          Locale.ROOT, "The take-offs are too much alike: their angles scatter by %.1f degrees, and %.1f are needed. Add pop-ups from a short run.",
          trade.sd_deg(), LEAST_SPREAD_DEG);
    }
    Estimate slope = trade.slope();
    if (!slope.told()) {
      return String.format(
          Locale.ROOT, "The speed is not seen to change with the angle (%+.2f to %+.2f m/s a degree). Measure more take-offs, steeper and flatter ones.",
          slope.p05(), slope.p95());
    }
    double shown = trade.most_deg() - trade.least_deg();
    if (angle.p95() - angle.p05() > 0.8 * shown) {
      return String.format(
          Locale.ROOT, "The best angle may be almost any of those shown (%.1f to %.1f degrees of %.1f to %.1f). Measure more take-offs.",
          angle.p05(), angle.p95(), trade.least_deg(), trade.most_deg());
    }
    return null;
  }

  /** Whether the best angle lies at the end of what was shown, so that it may lie beyond. */
  public boolean onTheEdge() {
    return best_deg.p50() < trade.least_deg() + STEP_DEG || best_deg.p50() > trade.most_deg() - STEP_DEG;
  }

  /** The sentence for the coach. */
  public String words() {
    if (cannotTell != null) {
      return "The data cannot tell. " + cannotTell;
    }
    if (!(worth_m.p05() > 0)) {
      return String.format(Locale.ROOT, "No other angle is seen to carry further. The usual take-off is %.1f degrees.", trade.middle_deg());
    }
    return String.format(
            Locale.ROOT, "%.1f degrees would carry %.0f cm further. The usual take-off is %.1f; nine times in ten the gain lies between %.0f and %.0f cm.",
            best_deg.p50(), 100 * worth_m.p50(), trade.middle_deg(), 100 * worth_m.p05(), 100 * worth_m.p95())
        + (onTheEdge() ? " It is the end of what was shown: the best may lie beyond." : "");
  }

  /** Flight of the centre of mass [m] at an angle, the speed along the line, the sand so much below the take-off. */
  static double flight(SpeedForAngle.Line line, double drop_m, double angle_deg) {
    double v = Math.max(line.at(angle_deg), 0.1);
    double a = Math.toRadians(angle_deg);
    return new Projectile(v * Math.cos(a), v * Math.sin(a), Math.max(drop_m, 0), 0).distance();
  }

  /** The angle of the longest flight between two angles [degrees], to a tenth. */
  static double optimum(SpeedForAngle.Line line, double drop_m, double from_deg, double to_deg) {
    double best = from_deg;
    double most = Double.NEGATIVE_INFINITY;
    int steps = (int) Math.ceil((to_deg - from_deg) / STEP_DEG);
    for (int i = 0; i <= steps; i++) {
      double angle = Math.min(from_deg + i * STEP_DEG, to_deg);
      double x = flight(line, drop_m, angle);
      if (x > most) {
        most = x;
        best = angle;
      }
    }
    return best;
  }

  /** 5-50-95 % of draws, which are sorted. */
  static Estimate middle(double[] draws) {
    Arrays.sort(draws);
    int n = draws.length;
    return new Estimate(draws[n / 20], draws[n / 2], draws[n - 1 - n / 20]);
  }
}
