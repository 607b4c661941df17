package boundwright.season.order;

import boundwright.athlete.Surface;
import boundwright.footfall.Sequence;
import boundwright.quantity.LengthUnit;
import boundwright.runway.Window;
import java.util.ArrayList;
import java.util.List;
import java.util.random.RandomGenerator;

/** Invented squads and sessions in the size of real ones: drills of the teaching routine, two to four reps, unlike steps and marks. */
final class InventedSessions {
  private static final String[] SAND = {"RLRL", "RRL", "RRLRRL", "LLRLLR", "RRLL", "RL x3"};
  private static final String[] FLAT = {"RL x5", "R x6", "L x6", "RRLL x2"};
  private static final int[] STEPS = {0, 0, 2, 4, 4, 6, 6, 8, 10, 12};

  private InventedSessions() {}

  /** What is varied. */
  record Shape(int athletes, int pits, int lanes, int flatDrills, int sandDrills, int coaches, boolean mixedSteps, OrderSettings.Watch watch) {}

  static SessionAsk of(Shape shape, RandomGenerator random) {
    OrderSettings base = OrderSettings.DEFAULT;
    OrderSettings settings =
        new OrderSettings(
            shape.pits, shape.lanes, shape.flatDrills == 0 ? 0 : 3, Surface.GRASS, shape.coaches, shape.watch, 90, base.step_s(), base.contact_s(),
            base.clearSand_s(), base.clearFlat_s(), base.say_s(), base.rest());
    List<SessionDrill> drills = new ArrayList<>();
    for (int d = 0; d < shape.flatDrills + shape.sandDrills; d++) {
      boolean sand = d >= shape.flatDrills;
      String[] from = sand ? SAND : FLAT;
      drills.add(
          new SessionDrill(
              Sequence.parse(from[random.nextInt(from.length)]), sand, 1 + random.nextInt(2), 2 + random.nextInt(2), settings.watches(sand),
              !sand && d == 0));
    }
    int squad = STEPS[random.nextInt(STEPS.length)];
    List<OrderAthlete> athletes = new ArrayList<>();
    for (int a = 0; a < shape.athletes; a++) {
      int steps = shape.mixedSteps ? STEPS[random.nextInt(STEPS.length)] : squad;
      double stride = 1.5 + 0.08 * steps + 0.4 * random.nextDouble();
      List<OrderAthlete.Part> parts = new ArrayList<>();
      for (SessionDrill d : drills) {
        double mark = stride * d.sequence().size() + random.nextDouble(-0.3, 0.3);
        double half = 0.1 + 0.3 * random.nextDouble();
        parts.add(new OrderAthlete.Part(steps, 0, d.inSand() ? new Window(mark - half, mark + half) : null, random.nextInt(4) == 0));
      }
      athletes.add(new OrderAthlete(a + 1, "Athlete " + (a + 1), parts));
    }
    return new SessionAsk(
        athletes, drills, settings.places(Surface.TRACK), settings.coaches(), List.of(), 90, List.of(), LengthUnit.METRES, settings);
  }
}
