package boundwright.bench;

import boundwright.athlete.Athlete;
import boundwright.athlete.Level;
import boundwright.footfall.Foot;
import boundwright.footfall.Sequence;
import boundwright.runway.DayPlan;
import boundwright.runway.Drill;
import java.util.List;
import java.util.Locale;

/** Who is measured with: invented athletes of every level, leg and approach, and one day for all. */
final class InventedSquad {
  /** Three drills, two of them into sand. */
  static final DayPlan DAY =
      new DayPlan(
          "Invented day",
          List.of(
              new Drill(Sequence.parse("RL x5"), null, 2, 2, false),
              new Drill(Sequence.parse("RRL x2"), null, 2, 3, true),
              new Drill(Sequence.parse("RRL"), 4, 1, 4, true)));

  private static final List<Level> LEVELS = List.of(Level.BEGINNER, Level.INTERMEDIATE, Level.ADVANCED);

  private InventedSquad() {}

  /** The athlete with this number, 1 the first; not stored yet. */
  static Athlete athlete(int number) {
    return athlete(number, LEVELS.get(number % LEVELS.size()), 2 * (number % 7));
  }

  /** The same, of this level and approach. */
  static Athlete athlete(int number, Level level, int steps) {
    return new Athlete(0, String.format(Locale.ROOT, "Invented %02d", number), level, number % 4 == 0 ? Foot.LEFT : Foot.RIGHT, steps);
  }
}
