package boundwright.flight;

import boundwright.athlete.Level;
import boundwright.footfall.Flight;
import boundwright.footfall.FlightKind;
import boundwright.footfall.Sequence;
import org.hipparchus.util.FastMath;

/**
 * The flights of a typical athlete of a level: the prior's middle, from which each athlete is learned as a deviation.
 *
 * <p>Standing: judgement of the makers. The shape is simple: approach steps give a speed, speed goes towards what
 * bounding alone can hold, and a flight's length is a straight line in speed, shorter for a bound and a little longer
 * for the last jump. For the middle level it gives a standing triple of about 7.4 m, a triple jump from 12 steps of
 * about 12.1 m. Nothing but the first guess and the scale of the learning rests on it.
 */
final class NominalFlights {
  /** Speed of the first take-off from standing, and the speed a full run-up tends to, middle level [m/s]. */
  private static final double STANDING_SPEED = 3.8;
  private static final double FULL_SPEED = 8.8;
  /** Approach steps in which the difference falls to 1/e. */
  private static final double STEPS_CONSTANT = 5.0;
  /** Speed that bounding alone holds [m/s], and the share of the difference to it kept from contact to contact. */
  private static final double HELD_SPEED = 5.5;
  private static final double KEPT = 0.88;

  private NominalFlights() {}

  /** Length of each flight [m]. */
  static double[] lengths(Level level, Sequence sequence, int steps) {
    double[] out = new double[sequence.size()];
    double excess = entrySpeed(steps) - HELD_SPEED;
    for (Flight f : sequence.flights()) {
      double v = HELD_SPEED + excess * FastMath.pow(KEPT, f.order() - 1);
      out[f.order() - 1] = size(level) * share(f.kind()) * (0.9 + 0.4 * v);
    }
    return out;
  }

  /** Speed into the first contact after this many steps, all levels' shape [m/s]. */
  static double entrySpeed(int steps) {
    return FULL_SPEED - (FULL_SPEED - STANDING_SPEED) * FastMath.exp(-steps / STEPS_CONSTANT);
  }

  /** Relative speed of a level. */
  static double speedOf(Level level) {
    return switch (level) {
      case BEGINNER -> 0.90;
      case INTERMEDIATE, NOT_SET -> 1.0;
      case ADVANCED -> 1.08;
    };
  }

  private static double size(Level level) {
    return switch (level) {
      case BEGINNER -> 0.83;
      case INTERMEDIATE, NOT_SET -> 1.0;
      case ADVANCED -> 1.2;
    };
  }

  private static double share(FlightKind kind) {
    return switch (kind) {
      case HOP -> 1.0;
      case BOUND -> 0.90;
      case JUMP -> 1.17;
    };
  }
}
