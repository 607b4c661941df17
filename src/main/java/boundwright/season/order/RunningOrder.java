package boundwright.season.order;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The session by the minute. Seconds count from its beginning.
 *
 * @param goes every rep, by its start
 * @param tapes every time a tape is laid, by its time
 * @param drops what is left out, in the order in which it was given up
 * @param finish_s when the last lane is clear [s]
 * @param bound_s the larger of rep time over lanes, watched time over coaches and the longest chain of work and rest [s]
 * @param least_s no order finishes before [s], at least {@code bound_s}
 * @param proven whether no order finishes before this one
 * @param longestWait_s the longest that somebody who is rested waits [s]
 * @param limit_s minutes that there are [s]
 * @param level whether nobody's legs are less even than planned
 */
public record RunningOrder(
    List<Go> goes,
    List<Lay> tapes,
    List<Drop> drops,
    int finish_s,
    int bound_s,
    int least_s,
    boolean proven,
    int longestWait_s,
    int limit_s,
    boolean level) {
  /** Takes copies. */
  public RunningOrder {
    goes = List.copyOf(goes);
    tapes = List.copyOf(tapes);
    drops = List.copyOf(drops);
  }

  /** Whether it ends in time. */
  public boolean fits() {
    return finish_s <= limit_s;
  }

  /** Athletes of all reps, by their start: what the runway page goes by. */
  public List<Long> athletes() {
    return goes.stream().map(Go::athleteId).toList();
  }

  /**
   * One rep.
   *
   * @param start_s when it starts [s]
   * @param landing_s when it has landed [s]
   * @param clear_s when the lane is clear for the next [s]
   * @param rested_s when the athlete is rested for the next rep [s]
   * @param athleteId who
   * @param name who
   * @param drill from 0
   * @param set from 1
   * @param rep in the set, from 1
   * @param steps approach steps
   * @param place where
   * @param lane at that place, from 1
   * @param mark_m the tape, from the near edge of the sand [m]; null on the flat, and where no mark is sure
   * @param watched whether a coach watches
   * @param measures who measures and rakes; null on the flat, and where nobody is free
   */
  public record Go(
      int start_s,
      int landing_s,
      int clear_s,
      int rested_s,
      long athleteId,
      String name,
      int drill,
      int set,
      int rep,
      int steps,
      String place,
      int lane,
      @Nullable Double mark_m,
      boolean watched,
      @Nullable String measures) {}

  /**
   * A tape is laid, or moved.
   *
   * @param time_s from when the runway is free for it [s]; 0: before the first rep
   * @param place where
   * @param from_m where it lay [m]; null: it is a new one
   * @param to_m where it goes [m]
   * @param by who does it; null where nobody but the coach is free
   */
  public record Lay(int time_s, String place, @Nullable Double from_m, double to_m, @Nullable String by) {}
}
