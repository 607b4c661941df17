package boundwright.season.order;

import boundwright.athlete.Surface;
import boundwright.quantity.LengthUnit;
import boundwright.quantity.RefusedException;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;

/**
 * A session whose order is asked.
 *
 * @param athletes who is here and bounds, in the order of the list, 1 to 80
 * @param drills in order
 * @param places that are open
 * @param coaches who watch, each one rep at a time
 * @param helpers who do not bound, watch nobody, and can measure and move tapes
 * @param minutes left for bounding [min]
 * @param liked_m marks at which a tape lies if that needs no more tapes: those of the day's tapes [m]
 * @param unit in which marks are written
 * @param settings seconds and rests
 */
public record SessionAsk(
    List<OrderAthlete> athletes,
    List<SessionDrill> drills,
    List<Place> places,
    int coaches,
    List<String> helpers,
    int minutes,
    List<Double> liked_m,
    LengthUnit unit,
    OrderSettings settings) {
  /** Most athletes of a session. */
  public static final int MOST_ATHLETES = 80;
  /** Most coaches who watch. */
  public static final int MOST_COACHES = 10;
  /** Longest session [min]. */
  public static final int MOST_MINUTES = 300;
  private static final int MOST_REPS = 3000;

  /** Takes copies; refuses what cannot be ordered. */
  public SessionAsk {
    athletes = List.copyOf(athletes);
    drills = List.copyOf(drills);
    places = List.copyOf(places);
    helpers = List.copyOf(helpers);
    liked_m = List.copyOf(liked_m);
    if (athletes.isEmpty()) {
      throw new RefusedException("Nobody who may bound is here, so there is no order. Say who is here.");
    }
    if (athletes.size() > MOST_ATHLETES) {
      throw new RefusedException(
          athletes.size() + " athletes are too many for one session; the limit is " + MOST_ATHLETES + ". Make groups and order each.");
    }
    if (drills.isEmpty()) {
      throw new RefusedException("The session has no drill, so there is no order. Write the plan of the day first.");
    }
    OrderSettings.whole("coaches", coaches, 0, MOST_COACHES);
    OrderSettings.whole("minutes", minutes, 1, MOST_MINUTES);
    Set<String> names = new HashSet<>();
    int reps = 0;
    for (OrderAthlete a : athletes) {
      if (a.parts().size() != drills.size()) {
        throw new RefusedException(
            a.name() + " has " + a.parts().size() + " drills and the session " + drills.size() + ". Give each athlete one part for each drill.");
      }
      if (!names.add(a.name())) {
        throw new RefusedException("Two athletes are called '" + a.name() + "'. Tell them apart, as the track does.");
      }
      reps += drills.stream().mapToInt(d -> d.sets() * d.reps()).sum();
    }
    if (reps > MOST_REPS) {
      throw new RefusedException("This session has " + reps + " reps; the limit is " + MOST_REPS + ". Order the groups one by one.");
    }
    Set<String> called = new HashSet<>();
    for (Place p : places) {
      if (!called.add(p.name())) {
        throw new RefusedException("Two places are called '" + p.name() + "'. Give each a name of its own.");
      }
    }
    if (coaches == 0 && drills.stream().anyMatch(SessionDrill::watched)) {
      throw new RefusedException("A drill is to be watched and 0 coaches are here. Say who watches, or that it is not watched.");
    }
  }

  /** The same in so many minutes. */
  public SessionAsk within(int other) {
    return new SessionAsk(athletes, drills, places, coaches, helpers, other, liked_m, unit, settings);
  }

  /** The same with so many minutes less; at least one is left. */
  public SessionAsk lost(int less) {
    OrderSettings.whole("minutes lost", less, 0, MOST_MINUTES);
    if (less >= minutes) {
      throw new RefusedException(less + " minutes are lost of " + minutes + ": no time is left to bound. Warm down.");
    }
    return within(minutes - less);
  }

  /** The same without the places of a surface, or the place of a name. */
  public SessionAsk closed(String what) {
    String wanted = what.strip();
    List<Place> left =
        places.stream().filter(p -> !p.surface().label().equalsIgnoreCase(wanted) && !p.name().equalsIgnoreCase(wanted)).toList();
    if (left.size() == places.size()) {
      throw new RefusedException(
          "Nothing here is called '" + wanted + "', so nothing closes. It is one of: " + String.join(", ", closings(places)) + ".");
    }
    return new SessionAsk(athletes, drills, left, coaches, helpers, minutes, liked_m, unit, settings);
  }

  /** What can be closed of these places: their surfaces and their names; a name that is a surface's is said once, as case does not matter. */
  public static List<String> closings(List<Place> places) {
    TreeSet<String> seen = new TreeSet<>(String.CASE_INSENSITIVE_ORDER);
    return Stream.concat(places.stream().map(Place::surface).map(Surface::label), places.stream().map(Place::name)).filter(seen::add).toList();
  }

  /** What stays of the plan when everything is done that was not yet. */
  Doses all() {
    int[][][] out = new int[athletes.size()][drills.size()][];
    for (int a = 0; a < athletes.size(); a++) {
      for (int d = 0; d < drills.size(); d++) {
        int done = athletes.get(a).parts().get(d).done();
        SessionDrill drill = drills.get(d);
        int[] sets = new int[drill.sets()];
        for (int s = 0; s < sets.length; s++) {
          int here = Math.min(done, drill.reps());
          done -= here;
          sets[s] = drill.reps() - here;
        }
        out[a][d] = sets;
      }
    }
    return new Doses(out);
  }

  /** Whether some place is open for a drill. */
  boolean open(int drill) {
    return places.stream().anyMatch(p -> p.serves(drills.get(drill).inSand()) && (p.open_min() == null || p.open_min() > 0));
  }
}
