package boundwright.load;

import boundwright.athlete.Surface;
import boundwright.footfall.Flight;
import boundwright.footfall.FlightKind;
import boundwright.footfall.Foot;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * Contacts of each leg over some days, counted three ways. A contact counts for the kind of flight that it takes off for: the leg
 * that does the work of it.
 *
 * @param all of both legs
 * @param byKind by the flight that the contact takes off for
 * @param bySteps by approach steps, fewest first
 * @param bySurface by what was bounded on
 */
public record LegCounts(
    Legs all, Map<FlightKind, Legs> byKind, Map<Integer, Legs> bySteps, Map<Surface, Legs> bySurface) {
  /**
   * Contacts of the two legs.
   *
   * @param right on the right
   * @param left on the left
   */
  public record Legs(int right, int left) {
    /** None. */
    public static final Legs NONE = new Legs(0, 0);

    private Legs plus(Legs other) {
      return new Legs(right + other.right, left + other.left);
    }

    /** Of both. */
    public int both() {
      return right + left;
    }
  }

  /** Counts these days. */
  public static LegCounts of(List<DayLoad> days) {
    Legs all = Legs.NONE;
    Map<FlightKind, Legs> byKind = new EnumMap<>(FlightKind.class);
    Map<Integer, Legs> bySteps = new TreeMap<>();
    Map<Surface, Legs> bySurface = new EnumMap<>(Surface.class);
    for (DayLoad day : days) {
      for (Work w : day.work()) {
        Legs legs = new Legs(w.contacts(Foot.RIGHT), w.contacts(Foot.LEFT));
        all = all.plus(legs);
        bySteps.merge(w.approachSteps(), legs, Legs::plus);
        bySurface.merge(w.surface(), legs, Legs::plus);
        for (Flight f : w.sequence().flights()) {
          byKind.merge(f.kind(), f.from() == Foot.RIGHT ? new Legs(w.reps(), 0) : new Legs(0, w.reps()), Legs::plus);
        }
      }
    }
    return new LegCounts(all, byKind, bySteps, bySurface);
  }
}
