package boundwright.season.conflict;

/**
 * One thing that must hold.
 *
 * @param kind what it is
 * @param athlete place in the squad; -1 for all
 * @param at day, week, or place in a list, as {@code kind} says
 * @param what kind of session or place, as {@code kind} says; else -1
 * @param least how many, where something is counted; else 0
 */
public record Demand(Kind kind, int athlete, int at, int what, int least) {
  /** What must hold. */
  public enum Kind {
    /** The coach: sessions of a kind in a week; {@code at} the week, {@code what} the kind's place, {@code least} how many. */
    SESSIONS,
    /** The coach: a wish for a day is met; {@code at} the day, {@code what} the kind's place or -1 for rest. */
    DAY_WISH,
    /** The coach: the athlete jumps at a meet; {@code at} its day. */
    MEET,
    /** The athlete is not there; {@code at} the place in the list of days away. */
    AWAY,
    /** No more at a place on a day than it takes; {@code at} the day, {@code what} the place. */
    CAPACITY,
    /** The load falls before a main meet; {@code at} the place in the list of tapers. */
    TAPER,
    /** Days between hard sessions, looked back from a day; {@code at} the day. */
    SPACING,
    /** Seven days up to a day beside the athlete's own weeks; {@code at} the day. */
    OWN_WEEKS;

    /** Whether the coach insists on it; the others are rules, places and days away. */
    public boolean insisted() {
      return this == SESSIONS || this == DAY_WISH || this == MEET;
    }
  }

  static Demand sessions(int athlete, int week, int kind, int least) {
    return new Demand(Kind.SESSIONS, athlete, week, kind, least);
  }

  static Demand of(Kind kind, int athlete, int at, int what) {
    return new Demand(kind, athlete, at, what, 0);
  }
}
