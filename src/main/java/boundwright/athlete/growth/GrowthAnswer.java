package boundwright.athlete.growth;

import boundwright.quantity.Estimate;
import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What is said of somebody's growth.
 *
 * @param measured what was measured, oldest first
 * @param speed_cm_y how fast they grow now [cm/y], or null when it is not told
 * @param speedMissing why not, a sentence; null when it is told
 * @param fast that they grow fast, or did not long ago; null if not
 * @param offset years from the peak of the height spurt on the day of the last height, or null
 * @param offsetMissing why not, a sentence; null when there is one, or when nothing is said of growth
 * @param measureOn when to measure next, today at the earliest; null when nothing is asked for
 * @param measureWhy why then, a sentence; empty without a day
 * @param curve height and speed looked back on, oldest first; empty where fewer than two days were measured
 * @param settings by which it was said
 */
public record GrowthAnswer(
    List<Measurement> measured,
    @Nullable Estimate speed_cm_y,
    @Nullable String speedMissing,
    @Nullable FastGrowth fast,
    @Nullable MaturityOffset offset,
    @Nullable String offsetMissing,
    @Nullable LocalDate measureOn,
    String measureWhy,
    List<GrowthTrend.Point> curve,
    GrowthSettings settings) {
  /** Takes copies. */
  public GrowthAnswer {
    measured = List.copyOf(measured);
    curve = List.copyOf(curve);
  }

  /** The newest measurement, or null. */
  public @Nullable Measurement last() {
    return measured.isEmpty() ? null : measured.get(measured.size() - 1);
  }
}
