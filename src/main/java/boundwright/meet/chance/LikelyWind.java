package boundwright.meet.chance;

import boundwright.approach.run.RunLimits;
import boundwright.quantity.Limits;

/**
 * How winds will be along the runway: each meet has a wind of its own, and each attempt a gust about that.
 *
 * @param mean usual wind of a meet [m/s], + from behind
 * @param meetSd how much meets differ [m/s]
 * @param gustSd how much attempts of a meet differ [m/s]
 */
public record LikelyWind(double mean, double meetSd, double gustSd) {
  /** No usual side, meets within about 1.3 m/s of still air and gusts of 0.8 (judgement). */
  public static final LikelyWind USUAL = new LikelyWind(0, 1.3, 0.8);

  /** Refuses winds in which nobody jumps. */
  public LikelyWind {
    RunLimits.wind(mean);
    Limits.within("spread of the wind from meet to meet", meetSd, 0, 5, "m/s", "1.3 is usual.");
    Limits.within("spread of the wind from attempt to attempt", gustSd, 0, 5, "m/s", "0.8 is usual.");
  }
}
