package boundwright.season;

import boundwright.evidence.Source;
import boundwright.evidence.Standing;
import boundwright.quantity.RefusedException;
import java.time.Month;
import java.util.List;

/**
 * What happens to a season that nobody plans. Standing of the defaults: judgement; a coach who knows the ground and the squad writes their
 * own.
 *
 * @param grassClosed share of the days of each month on which the grass cannot be used, January first, 0 to 1 each
 * @param awayPerYear how often a year an athlete is away or held for some days beyond what the season knows, 0 to 26
 * @param awayDays how long that lasts on average [days], 1 to 60
 */
public record Unplanned(List<Double> grassClosed, double awayPerYear, double awayDays) {
  /** Nothing happens but what is planned. */
  public static final Unplanned NOTHING = new Unplanned(List.of(0., 0., 0., 0., 0., 0., 0., 0., 0., 0., 0., 0.), 0, 1);
  /** The defaults. */
  public static final Unplanned USUAL = new Unplanned(List.of(.35, .30, .25, .20, .15, .10, .10, .10, .15, .25, .35, .35), 1.5, 9);

  /** Where the defaults come from. */
  public static final Source SOURCE =
      new Source("unplanned", "Days on which rain closes the grass, and days away or held that no season knows beforehand; all in the season's file", "the makers",
          Standing.JUDGEMENT);

  /** Takes a copy; refuses rates out of range. */
  public Unplanned {
    grassClosed = List.copyOf(grassClosed);
    if (grassClosed.size() != Month.values().length) {
      throw new RefusedException(grassClosed.size() + " shares of days with the grass closed; needed is one for each of the twelve months.");
    }
    for (Month m : Month.values()) {
      double share = grassClosed.get(m.getValue() - 1);
      if (!(share >= 0 && share <= 1)) {
        throw new RefusedException("The grass closed on a share of " + share + " of the days of " + m + " is out of range: 0 to 1.");
      }
    }
    if (!(awayPerYear >= 0 && awayPerYear <= 26)) {
      throw new RefusedException("Away or held " + awayPerYear + " times a year is out of range: 0 to 26. Usual is 1.5.");
    }
    if (!(awayDays >= 1 && awayDays <= 60)) {
      throw new RefusedException("Away or held for " + awayDays + " days on average is out of range: 1 to 60. Usual is 9.");
    }
  }

  /** The share of days on which the grass is closed in a month. */
  public double grassClosed(Month month) {
    return grassClosed.get(month.getValue() - 1);
  }
}
