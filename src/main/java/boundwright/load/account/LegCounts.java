package boundwright.load.account;

import boundwright.athlete.Surface;
import boundwright.footfall.Flight;
import boundwright.footfall.FlightKind;
import boundwright.footfall.Foot;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * Contacts of each leg over some days, counted four ways. A contact counts for the kind of flight that it takes off for: the leg
 * that does the work of it; that of a run-through for the hop.
 *
 * @param all of both legs, bounds and boxes that were not logged one by one with them
 * @param byWork by what was done
 * @param byKind by the flight that the contact takes off for; boxes are left out
 * @param bySteps by approach steps, fewest first; boxes are left out
 * @param bySurface by what was bounded on, where it is known
 */
public record LegCounts(
    Legs all, Map<String, Legs> byWork, Map<FlightKind, Legs> byKind, Map<Integer, Legs> bySteps, Map<Surface, Legs> bySurface) {
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
    Map<String, Legs> byWork = new LinkedHashMap<>();
    Map<FlightKind, Legs> byKind = new EnumMap<>(FlightKind.class);
    Map<Integer, Legs> bySteps = new TreeMap<>();
    Map<Surface, Legs> bySurface = new EnumMap<>(Surface.class);
    for (DayLoad day : days) {
      for (Work w : day.work()) {
        Legs legs = new Legs(w.contacts(Foot.RIGHT), w.contacts(Foot.LEFT));
        all = all.plus(legs);
        byWork.merge(w.kind().label(), legs, Legs::plus);
        bySteps.merge(w.approachSteps(), legs, Legs::plus);
        bySurface.merge(w.surface(), legs, Legs::plus);
        for (Flight f : w.sequence().flights()) {
          FlightKind kind = w.kind() == Work.Kind.RUN_THROUGH ? FlightKind.HOP : f.kind();
          byKind.merge(kind, f.from() == Foot.RIGHT ? new Legs(w.reps(), 0) : new Legs(0, w.reps()), Legs::plus);
        }
      }
      for (OtherWork o : day.other()) {
        if (o.jumpContacts() > 0) {
          Legs legs = new Legs(o.jumpContacts(Foot.RIGHT), o.jumpContacts(Foot.LEFT));
          all = all.plus(legs);
          byWork.merge(o.kind().label(), legs, Legs::plus);
          if (o.kind() == OtherWork.Kind.BOUNDS) {
            byKind.merge(FlightKind.BOUND, legs, Legs::plus);
            bySteps.merge((int) o.grade(), legs, Legs::plus);
          }
        }
      }
    }
    return new LegCounts(all, byWork, byKind, bySteps, bySurface);
  }
}
