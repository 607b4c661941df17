package boundwright.flight;

import boundwright.athlete.Level;

/** Usual relative standard deviations by level, on which an athlete's own factors stand ({@link Scatter}; judgement). */
final class Spread {
  private Spread() {}

  /** Of the day. */
  static double day(Level level) {
    return level == Level.BEGINNER ? 0.028 : level == Level.INTERMEDIATE ? 0.024 : 0.021;
  }

  /** Of the rep, shared by its flights. */
  static double rep(Level level) {
    return level == Level.BEGINNER ? 0.034 : level == Level.INTERMEDIATE ? 0.029 : 0.024;
  }

  /** Of a single flight. */
  static double flight(Level level) {
    return level == Level.BEGINNER ? 0.055 : level == Level.INTERMEDIATE ? 0.045 : 0.038;
  }
}
