package boundwright.season.order;

import java.util.List;

/**
 * Something that is left out so that the session fits.
 *
 * @param kind what
 * @param drill from 0
 * @param set the set that is left out, from 1; 0 where it is not a whole set
 * @param reps that each of them does less of it
 * @param steps approach steps of those it is for
 * @param athletes their places in the list of the session, from 0
 */
public record Drop(Kind kind, int drill, int set, int reps, int steps, List<Integer> athletes) {
  /** What is left out, least wanted first. */
  public enum Kind {
    /** No place is open for it. */
    CLOSED,
    /** A set after the first. */
    SET,
    /** Reps after the first, of the one set. */
    REP,
    /** A drill whose sequence they know. */
    DRILL,
    /** A drill whose sequence is new to them. */
    NEW
  }

  /** Takes a copy. */
  public Drop {
    athletes = List.copyOf(athletes);
  }
}
