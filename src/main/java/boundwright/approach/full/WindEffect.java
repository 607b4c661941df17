package boundwright.approach.full;

import boundwright.quantity.Estimate;
import org.jspecify.annotations.Nullable;

/**
 * What wind, warmth and a wet runway do to a jump of 13 m; one that was never noted is left out of everything. The wind starts from 7.6 cm per m/s
 * (the triple jump's one qualification on one morning, memory: a wide spread) with the bend of the long jump (still = mark - .031 w + .0027 w2,
 * Murrie; read in an abstract); warmth and wet start from nothing, since nothing published was found. The spreads are judgement.
 *
 * @param wind_m won per m/s of tail wind, at little wind [m], or null when no wind was noted
 * @param warmth_m won per degree Celsius [m], or null
 * @param wet_m won on a wet runway [m], usually below 0, or null
 * @param bend_m won per square of the wind [m]
 */
public record WindEffect(@Nullable Estimate wind_m, @Nullable Estimate warmth_m, @Nullable Estimate wet_m, double bend_m) {
  static final double PER_MPS = 0.076;
  static final double PER_MPS_SD = 0.05;
  static final double BEND = -0.0027;
  static final double BEND_SD = 0.003;
  static final double PER_DEGREE_SD = 0.01;
  static final double WET_SD = 0.15;

  /** Whether an effect is known and tells a side of 0. */
  public static boolean told(@Nullable Estimate e) {
    return e != null && e.told();
  }
}
