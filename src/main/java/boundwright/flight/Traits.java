package boundwright.flight;

import boundwright.athlete.Athlete;
import boundwright.athlete.Surface;
import boundwright.footfall.Flight;
import boundwright.footfall.FlightKind;
import boundwright.footfall.Foot;
import boundwright.footfall.Sequence;
import org.hipparchus.util.FastMath;

/**
 * The unknowns of one athlete, all relative to {@link NominalFlights}: a flight's length is nominal x (1 + what its
 * traits add up to + the day + the rep + its own scatter). This class says which traits a flight has and how far each
 * may be from 0 before anything is logged (standard deviations; standing: judgement).
 */
final class Traits {
  static final int LEVEL = 0;
  /** How fast the level changes, a 30 days. */
  static final int SPEED = 1;
  /** How much longer the flights from the right leg are than those from the left. */
  static final int SIDE = 2;
  private static final int KIND = 3;
  /** How much longer the last flight is than its share of the nominal. */
  static final int JUMP = KIND + 2;
  private static final int LEG = KIND + 3;
  private static final int HOP_AGAIN = LEG + 3;
  private static final int FIRST = HOP_AGAIN + 1;
  private static final int ENTRY = FIRST + 1;
  private static final int FADE = ENTRY + 1;
  private static final int ENTRY_FAST = FADE + 1;
  private static final int FADE_FAST = ENTRY_FAST + 1;
  private static final int KIND_FAST = FADE_FAST + 1;
  private static final int SURFACE = KIND_FAST + 3;
  /** First of the 27 deviations by approach steps. */
  static final int RUNG = SURFACE + 5;
  /** The good or bad day. */
  static final int DAY = RUNG + Athlete.MAX_STEPS + 1;
  /** How many unknowns. */
  static final int COUNT = DAY + 1 + DrillSlots.MOST;
  /** First of the deviations of single drills, see {@link DrillSlots}. */
  static final int DRILL = DAY + 1;

  /** Rungs closer than about this many steps resemble each other. */
  private static final double RUNG_REACH = 6;
  private static final double LEVEL_SD = 0.13;
  private static final double RUNG_SD = 0.05;
  /** Standing is no shorter run-up: what it has of its own. */
  private static final double STANDING_SD = 0.03;
  private static final double RUNG_SLOPE_SD = 0.15;
  private static final double ENTRY_KEPT = 0.75;

  private Traits() {}

  /** The traits in which athletes of one squad tell of each other: all that is no side, no surface, no day and no drill. */
  static int[] shared() {
    int[] out = {
      LEVEL, KIND, KIND + 1, JUMP, HOP_AGAIN, FIRST, ENTRY, FADE, ENTRY_FAST, FADE_FAST, KIND_FAST, KIND_FAST + 1,
      KIND_FAST + 2, RUNG, RUNG + 2, RUNG + 4, RUNG + 6, RUNG + 8, RUNG + 10, RUNG + 12
    };
    return out;
  }

  /** What is believed before anything is known but the level; the day and the drills are opened when they come. */
  static Belief prior() {
    Belief b = new Belief(COUNT);
    spread(b, LEVEL, 1, LEVEL_SD);
    spread(b, SPEED, 1, Wander.SPEED_SD);
    spread(b, SIDE, 1, 0.06);
    spread(b, KIND, 2, 0.06);
    spread(b, JUMP, 1, 0.125);
    spread(b, LEG, 3, 0.02);
    spread(b, HOP_AGAIN, 1, 0.05);
    spread(b, FIRST, 1, 0.05);
    spread(b, ENTRY, 1, 0.06);
    spread(b, FADE, 1, 0.08);
    spread(b, ENTRY_FAST, 1, 0.08);
    spread(b, FADE_FAST, 1, 0.08);
    spread(b, KIND_FAST, 3, 0.05);
    spread(b, SURFACE, 5, 0.03);
    for (int i = 0; i <= Athlete.MAX_STEPS; i++) {
      for (int j = 0; j <= i; j++) {
        double apart = Math.sqrt(3) * (i - j) / RUNG_REACH;
        double near = RUNG_SD * RUNG_SD * (1 + apart) * FastMath.exp(-apart);
        b.setCovariance(RUNG + i, RUNG + j, near + RUNG_SLOPE_SD * RUNG_SLOPE_SD * fast(i) * fast(j));
      }
    }
    b.diffuse(RUNG, STANDING_SD * STANDING_SD);
    return b;
  }

  private static void spread(Belief b, int from, int count, double sd) {
    for (int i = from; i < from + count; i++) {
      b.setCovariance(i, i, sd * sd);
    }
  }

  /**
   * Adds {@code weight} times the traits of one flight to {@code h}.
   *
   * @param flight which of {@code sequence}
   * @param steps approach steps
   * @param surface what is bounded on
   * @param slot of the drill, -1 if it has none
   */
  static void add(double[] h, double weight, Sequence sequence, Flight flight, int steps, Surface surface, int slot) {
    int kind = place(flight.kind());
    double fast = fast(steps);
    int order = flight.order();
    double entry = FastMath.pow(ENTRY_KEPT, order - 1);
    double fade = (order - 1) / 10.0;
    h[LEVEL] += weight;
    h[SIDE] += flight.from() == Foot.RIGHT ? weight / 2 : -weight / 2;
    h[KIND + kind] += weight;
    h[LEG + kind] += flight.from() == Foot.RIGHT ? weight / 2 : -weight / 2;
    if (order > 1
        && flight.kind() == FlightKind.HOP
        && sequence.contacts().get(order - 2) == flight.from()) {
      h[HOP_AGAIN] += weight;
    }
    if (order == 1) {
      h[FIRST] += weight;
    }
    h[ENTRY] += weight * entry;
    h[FADE] += weight * fade;
    h[ENTRY_FAST] += weight * entry * fast;
    h[FADE_FAST] += weight * fade * fast;
    h[KIND_FAST + kind] += weight * fast;
    h[SURFACE + place(surface)] += weight;
    h[RUNG + steps] += weight;
    h[DAY] += weight;
    if (slot >= 0) {
      h[DRILL + slot] += weight;
    }
  }

  private static int place(FlightKind kind) {
    return switch (kind) {
      case HOP -> 0;
      case BOUND -> 1;
      case JUMP -> 2;
    };
  }

  /** Place of a surface among the five. */
  static int place(Surface surface) {
    return switch (surface) {
      case GRASS -> 0;
      case SPRUNG_FLOOR -> 1;
      case RAISED_RUNWAY -> 2;
      case TRACK -> 3;
      case CONCRETE -> 4;
    };
  }

  /** Approach steps on a scale where 12 is 1. */
  private static double fast(int steps) {
    return steps / 12.0;
  }
}
