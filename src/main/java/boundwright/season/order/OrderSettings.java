package boundwright.season.order;

import boundwright.athlete.Surface;
import boundwright.footfall.Sequence;
import boundwright.quantity.Limits;
import java.util.ArrayList;
import java.util.List;

/**
 * What the coach set once for the order of a session. Seconds are judgement until a coach times a few reps; only the work to rest of
 * {@link RestRule} was read.
 *
 * @param pits how many pits can be used, 0 to 6
 * @param lanes runways at each pit, 1 to 4
 * @param flatLanes lanes of level ground, 0 to 8
 * @param flatSurface what the level ground is
 * @param coaches who watch, each one rep at a time, 0 to 10
 * @param watch which reps are watched
 * @param minutes usual time for bounding, warm-up not in it, 1 to 300 [min]
 * @param step_s an approach step takes [s]
 * @param contact_s a contact with its flight takes [s]
 * @param clearSand_s after the landing until the next may run: leave the sand, measure, rake; tapes move now [s]
 * @param clearFlat_s the same on level ground [s]
 * @param say_s a watched rep takes the coach so long after the landing [s]
 * @param rest the least rest
 */
public record OrderSettings(
    int pits,
    int lanes,
    int flatLanes,
    Surface flatSurface,
    int coaches,
    Watch watch,
    int minutes,
    double step_s,
    double contact_s,
    int clearSand_s,
    int clearFlat_s,
    int say_s,
    RestRule rest) {
  /** Which reps the coach's eyes are needed for. */
  public enum Watch {
    /** Every rep. */
    ALL,
    /** Reps that end in sand. */
    SAND,
    /** None. */
    NONE
  }

  /** One pit with one runway, three lanes of grass, one coach who watches the reps into sand, an hour. */
  public static final OrderSettings DEFAULT =
      new OrderSettings(1, 1, 3, Surface.GRASS, 1, Watch.SAND, 60, 0.3, 0.45, 25, 10, 10, RestRule.DEFAULT);

  /** Refuses what is out of range. */
  public OrderSettings {
    whole("pits", pits, 0, 6);
    whole("runways at a pit", lanes, 1, 4);
    whole("lanes of level ground", flatLanes, 0, 8);
    whole("coaches", coaches, 0, SessionAsk.MOST_COACHES);
    whole("minutes", minutes, 1, SessionAsk.MOST_MINUTES);
    whole("seconds to clear the sand", clearSand_s, 0, 300);
    whole("seconds to clear the level ground", clearFlat_s, 0, 300);
    whole("seconds of the coach's word", say_s, 0, 300);
    seconds("step of the approach", step_s, 0.1, 2);
    seconds("contact", contact_s, 0.1, 3);
  }

  static void whole(String what, int value, int least, int most) {
    Limits.count("A number of " + what, value, least, most, "Enter one within it.");
  }

  private static void seconds(String what, double value, double least, double most) {
    Limits.within(what, value, least, most, "s", "Time ten and divide.");
  }

  /** How long a rep takes from the first step to the landing [s]. */
  public int work_s(Sequence sequence, int steps) {
    return Math.max(1, (int) Math.ceil(steps * step_s + sequence.size() * contact_s));
  }

  /** How long a rep keeps its lane [s]. */
  public int hold_s(Sequence sequence, int steps, boolean inSand) {
    return work_s(sequence, steps) + (inSand ? clearSand_s : clearFlat_s);
  }

  /** Whether the coach watches such reps. */
  public boolean watches(boolean inSand) {
    return watch == Watch.ALL || (watch == Watch.SAND && inSand);
  }

  /** The places of a usual day. */
  public List<Place> places(Surface runway) {
    List<Place> out = new ArrayList<>();
    for (int i = 0; i < pits; i++) {
      out.add(new Place(pits == 1 ? "Pit" : "Pit " + (char) ('A' + i), true, false, lanes, runway, null));
    }
    if (flatLanes > 0) {
      out.add(new Place(flatSurface == Surface.GRASS ? "Grass" : "Level ground", false, true, flatLanes, flatSurface, null));
    }
    return List.copyOf(out);
  }

  /** The same with other places and coaches. */
  public OrderSettings with(int otherPits, int otherLanes, int otherFlatLanes, int otherCoaches) {
    return new OrderSettings(
        otherPits, otherLanes, otherFlatLanes, flatSurface, otherCoaches, watch, minutes, step_s, contact_s, clearSand_s, clearFlat_s, say_s, rest);
  }
}
