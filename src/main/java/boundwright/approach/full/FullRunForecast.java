package boundwright.approach.full;

import boundwright.inference.Mixture;
import boundwright.quantity.Estimate;
import java.util.ArrayList;
import java.util.List;

/**
 * What is believed of an athlete's jumps today from a number of steps, in still air.
 *
 * @param steps of the run-up
 * @param forms the athlete's form at several sets of spreads, each with its weight
 */
public record FullRunForecast(int steps, List<Form> forms) {
  /**
   * A form that is believed possible.
   *
   * @param weight 0 to 1; all add up to 1
   * @param level_m mean distance [m]
   * @param levelSd_m how well it is known [m]
   * @param daySd_m how much a day differs from the level [m]
   * @param jumpSd_m how much a jump differs from its day [m]
   * @param wanderSd_m how far the level wanders in one day [m]; in d days by the root of d times that
   * @param wind_m won per m/s of tail wind [m]
   * @param windSd_m how well that is known [m]
   * @param windBend_m won per square of the wind [m]
   */
  public record Form(
      double weight,
      double level_m,
      double levelSd_m,
      double daySd_m,
      double jumpSd_m,
      double wanderSd_m,
      double wind_m,
      double windSd_m,
      double windBend_m) {}

  /** Takes a copy. */
  public FullRunForecast {
    forms = List.copyOf(forms);
  }

  /** The mean of many jumps [m]. */
  public Estimate level_m() {
    return spread(false).estimate();
  }

  /** A single jump on some day [m]. */
  public Estimate jump_m() {
    return spread(true).estimate();
  }

  /** Chance that a single jump is at least so long [m]. */
  public double chance(double distance_m) {
    return 1 - spread(true).below(distance_m);
  }

  /** A single jump so many days before or after [m]: the level has wandered since. */
  Estimate jump_m(long daysAway) {
    return spread(true, daysAway).estimate();
  }

  private Mixture spread(boolean single) {
    return spread(single, 0);
  }

  private Mixture spread(boolean single, long daysAway) {
    List<Mixture.Part> parts = new ArrayList<>();
    for (Form f : forms) {
      double more = single ? Math.hypot(f.daySd_m, f.jumpSd_m) : 0;
      more = Math.hypot(more, f.wanderSd_m * Math.sqrt((double) daysAway));
      parts.add(new Mixture.Part(f.level_m, Math.hypot(f.levelSd_m, more), f.weight));
    }
    return new Mixture(parts);
  }
}
