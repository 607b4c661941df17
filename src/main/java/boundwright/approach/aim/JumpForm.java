package boundwright.approach.aim;

import boundwright.inference.Normal;
import boundwright.jump.Event;
import boundwright.quantity.Limits;

/**
 * An athlete's form for the aim: effective distance and board gap are normal and independent (worked; a model, not a
 * law).
 *
 * @param event which jump
 * @param effectiveMean_m mean effective distance, toe to mark in the sand [m], within the event's limits
 * @param effectiveSd_m its standard deviation from attempt to attempt [m], 0.005 to 2
 * @param gapSd_m standard deviation of the board gap [m], 0.005 to 0.60
 */
public record JumpForm(Event event, double effectiveMean_m, double effectiveSd_m, double gapSd_m) {
  /** Refuses values outside their ranges. */
  public JumpForm {
    event.jump("mean effective distance", effectiveMean_m);
    Limits.within("spread of the effective distance", effectiveSd_m, 0.005, 2, "m", "0.10 to 0.30 m is usual.");
    Limits.within("spread of the board gap", gapSd_m, 0.005, 0.60, "m", "0.05 to 0.20 m is usual at the board.");
  }

  /** A form in the triple jump. */
  public JumpForm(double effectiveMean_m, double effectiveSd_m, double gapSd_m) {
    this(Event.TRIPLE_JUMP, effectiveMean_m, effectiveSd_m, gapSd_m);
  }

  /** Chance of a foul when aiming {@code aim_m} behind the line. */
  public double foulChance(double aim_m) {
    return Normal.below(-aim_m / gapSd_m);
  }

  /** The same form with another spread at the board [m]. */
  public JumpForm withGapSd(double sd) {
    return new JumpForm(event, effectiveMean_m, effectiveSd_m, sd);
  }

  double officialSd() {
    return Math.hypot(effectiveSd_m, gapSd_m);
  }
}
