package boundwright.flight.season;

/** What happens to an athlete over a season, beside the form of the day (invented courses, no evidence about athletes). */
enum Scenario {
  /** Nothing. */
  STEADY,
  /** Flights grow by 5 % in six weeks after three steady ones. */
  PLUS_5,
  /** Flights grow by 8 % in six weeks after three steady ones. */
  PLUS_8,
  /** Four weeks off after five weeks; back some 4 % shorter, made good in three weeks. */
  FOUR_WEEKS_OFF,
  /** Three weeks off after four weeks; flights from one leg are back 14 % shorter, two thirds made good in five weeks. */
  ONE_LEG_BACK,
  /**
   * The body grows by 9 cm a year on 155 cm and flights with its power 1.5; how well the longer legs are used goes up and down by 3 % in five weeks,
   * and from leg to leg by 4 % in seven.
   */
  GROWING,
  /** Four weeks off after five weeks; flights from one leg are back 14 % shorter, two thirds made good in five weeks. */
  ONE_LEG_FOUR_WEEKS;

  /** Relative change of all flights on a day of the season, days from 0; {@code loss} is this athlete's own after time off. */
  double change(double day, double loss) {
    return switch (this) {
      case STEADY, ONE_LEG_BACK, ONE_LEG_FOUR_WEEKS -> 0;
      case GROWING -> 1.5 * 9.0 / 155 * day / 365 + 0.03 * Math.sin(2 * Math.PI * day / 35 + 300 * loss);
      case PLUS_5 -> 0.05 * Math.max(0, Math.min(1, (day - 21) / 42));
      case PLUS_8 -> 0.08 * Math.max(0, Math.min(1, (day - 21) / 42));
      case FOUR_WEEKS_OFF -> day < 63 ? 0 : -loss * Math.max(0, 1 - (day - 63) / 21);
    };
  }

  /** Relative change of the flights from the hurt leg. */
  double legChange(double day) {
    if (this == GROWING) {
      return 0.04 * Math.sin(2 * Math.PI * day / 49);
    }
    boolean oneLeg = this == ONE_LEG_BACK || this == ONE_LEG_FOUR_WEEKS;
    return !oneLeg || day < firstDayBack() ? 0 : -0.14 * Math.max(0.33, 1 - 0.67 * (day - firstDayBack()) / 35);
  }

  /** Whether there is training on this day of the season. */
  boolean trains(int day) {
    return switch (this) {
      case FOUR_WEEKS_OFF, ONE_LEG_FOUR_WEEKS -> day < 35 || day >= 63;
      case ONE_LEG_BACK -> day < 28 || day >= 49;
      default -> true;
    };
  }

  /** First day after the time off; beyond every season where there is none. */
  int firstDayBack() {
    return switch (this) {
      case FOUR_WEEKS_OFF, ONE_LEG_FOUR_WEEKS -> 63;
      case ONE_LEG_BACK -> 49;
      default -> Integer.MAX_VALUE;
    };
  }

  /** Day from which the model is judged: when the change begins. */
  int judgedFrom() {
    return firstDayBack() < Integer.MAX_VALUE ? firstDayBack() : 21;
  }

  /** How many weeks the season has. */
  int weeks() {
    return firstDayBack() < Integer.MAX_VALUE ? 12 : 9;
  }
}
