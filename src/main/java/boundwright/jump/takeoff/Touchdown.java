package boundwright.jump.takeoff;

import boundwright.inference.LinearBelief;
import boundwright.quantity.Estimate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/**
 * What the foot's place at touchdown and the speed into the board do to this athlete's take-off: vertical speed made and forward speed
 * lost, each a plane over touchdown distance and speed. It describes how theirs went together, not what would happen if the foot were
 * put elsewhere.
 *
 * @param takeOffs it rests on: those with both measured
 * @param upPer_10cm vertical speed at take-off with the toe 10 cm further ahead [m/s]
 * @param lossPer_10cm forward speed lost with it [m/s]
 * @param cannotTell why it is not told, a sentence; null when it is
 */
public record Touchdown(int takeOffs, @Nullable Estimate upPer_10cm, @Nullable Estimate lossPer_10cm, @Nullable String cannotTell) {
  /** Fewest take-offs with a touchdown distance and a speed into the board (judgement). */
  public static final int FEWEST = 6;

  private static final double DECIMETRE = 0.1;

  /** From measured take-offs; those without a touchdown distance or a speed into the board are passed over. */
  public static Touchdown of(List<TakeOff> all) {
    List<double[]> rows = new ArrayList<>();
    for (TakeOff t : all) {
      Double d = t.touchdown_m();
      Double in = t.vxIn();
      Double loss = t.loss();
      if (d != null && in != null && loss != null) {
        rows.add(new double[] {d, in, t.vy(), loss});
      }
    }
    if (rows.size() < FEWEST) {
      return new Touchdown(
          rows.size(), null, null,
          "It needs at least " + FEWEST + " take-offs with touchdown distance and speed into the board; there are " + rows.size() + ".");
    }
    Estimate up = slope(rows, 2);
    Estimate loss = slope(rows, 3);
    boolean told = up.told() || loss.told();
    return new Touchdown(rows.size(), up, loss, told ? null : "Neither is seen to change with the foot's place; measure more take-offs.");
  }

  /** Change of a column with the toe 10 cm further ahead at the same speed. */
  private static Estimate slope(List<double[]> rows, int column) {
    double d = rows.stream().mapToDouble(r -> r[0]).average().orElseThrow();
    double v = rows.stream().mapToDouble(r -> r[1]).average().orElseThrow();
    double y = rows.stream().mapToDouble(r -> r[column]).average().orElseThrow();
    // wide first guesses: 5 m/s a metre, 1 m/s for each m/s, noise 0.2 m/s worth three take-offs (judgement)
    LinearBelief b = new LinearBelief(new double[] {y, 0, 0}, new double[] {2, 5, 1}, 0.2, 3);
    for (double[] r : rows) {
      b.tell(new double[] {1, r[0] - d, r[1] - v}, r[column], 1);
    }
    return b.estimate(new double[] {0, DECIMETRE, 0});
  }

  /** The sentence for the coach. */
  public String words() {
    Estimate up = upPer_10cm;
    Estimate loss = lossPer_10cm;
    if (cannotTell != null || up == null || loss == null) {
      return "The data cannot tell what the foot's place does. " + cannotTell;
    }
    return String.format(
        Locale.ROOT, "With the toe 10 cm further ahead at the same speed there went %s upwards and %s lost forwards.", part(up), part(loss));
  }

  private static String part(Estimate e) {
    return e.told()
        ? String.format(Locale.ROOT, "%+.2f m/s (%+.2f to %+.2f)", e.p50(), e.p05(), e.p95())
        : String.format(Locale.ROOT, "a change that cannot be told (%+.2f to %+.2f m/s)", e.p05(), e.p95());
  }
}
