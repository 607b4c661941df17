package boundwright.flight;

import org.jspecify.annotations.Nullable;

/**
 * How far days off move an athlete: factors on the variances that {@link Wander} gives the level and the difference of the legs after a
 * break, learned from the breaks that were seen before, of this athlete and of the squad. A break is closed on the third day after it: what
 * is believed then of the change, the square of its mean and its variance, over the variance that was taken, is one showing; the factor
 * is their mean, begun as if {@value #WORTH} breaks had shown 1 (expectation and one step of maximisation; the worth is judgement). Immutable.
 *
 * @param shown how many breaks were seen, of the squad and of this athlete
 * @param levels their showings for the level, added
 * @param sides likewise for the legs' difference
 * @param own how many of them are this athlete's
 * @param ownLevels their showings for the level, added
 * @param ownSides likewise for the legs' difference
 * @param open the break that is not closed yet, or null
 */
record Breaks(int shown, double levels, double sides, int own, double ownLevels, double ownSides, @Nullable Open open) {
  /** No break was seen. */
  static final Breaks NONE = new Breaks(0, 0, 0, 0, 0, 0, null);
  /** Breaks that the stated factor of 1 is worth. */
  static final int WORTH = 4;
  /** Days after a break on which it is looked at, all but the last. */
  private static final int DAYS = 2;
  private static final double LEAST = 0.25;
  private static final double MOST = 4;

  /**
   * A break whose days after are being logged.
   *
   * @param days logged after it
   * @param level as it was expected
   * @param side likewise
   */
  record Open(int days, Expected level, Expected side) {}

  /**
   * What was expected of one unknown on the first day after a break.
   *
   * @param mean of it
   * @param variance without the break
   * @param added by the break
   * @param factor that was taken for it
   */
  record Expected(double mean, double variance, double added, double factor) {
    /** The square of the break's change as it is believed now, over the variance that a factor of 1 gives it. */
    double showing(double mean, double variance) {
      double gain = added / (this.variance + added);
      double change = gain * (mean - this.mean);
      return factor * (change * change + added * (1 - gain) + gain * gain * variance) / added;
    }
  }

  /** What these breaks of others say, before this athlete's first. */
  static Breaks of(int shown, double levels, double sides) {
    return new Breaks(shown, levels, sides, 0, 0, 0, null);
  }

  double levelFactor() {
    return factor(levels);
  }

  double sideFactor() {
    return factor(sides);
  }

  private double factor(double sum) {
    return Math.max(LEAST, Math.min(MOST, (WORTH + sum) / (WORTH + shown)));
  }

  /** A new day is opened after some were logged: a break whose days are enough is closed. */
  Breaks dayOver(Belief now) {
    Open o = open;
    if (o == null) {
      return this;
    }
    if (o.days() + 1 < DAYS) {
      return new Breaks(shown, levels, sides, own, ownLevels, ownSides, new Open(o.days() + 1, o.level(), o.side()));
    }
    double level = o.level().showing(now.mean(Traits.LEVEL), now.variance(Traits.LEVEL));
    double side = o.side().showing(now.mean(Traits.SIDE), now.variance(Traits.SIDE));
    return new Breaks(shown + 1, levels + level, sides + side, own + 1, ownLevels + level, ownSides + side, null);
  }

  /** The same after another break. */
  Breaks opened(Open another) {
    return new Breaks(shown, levels, sides, own, ownLevels, ownSides, another);
  }
}
