package boundwright.footfall;

import java.util.List;

/**
 * The named teaching routine, in the order in which it is taught, first from standing (common practice).
 */
public enum Routine {
  /** Alternate-leg bounds. */
  ALTERNATE("Alternate", "RL x5"),
  /** Consecutive hops on the right. */
  RIGHTS("Right, right, right", "R x6"),
  /** Consecutive hops on the left. */
  LEFTS("Left, left, left", "L x6"),
  /** Two and two. */
  TWO_AND_TWO("Two and two", "RRLL RRLL RR"),
  /** Hop and step of the event, repeated. */
  HOP_STEP("Hop and step", "RRL x2");

  /** The rungs of the progression in approach steps; 0 is standing (common practice). */
  public static final List<Integer> RUNGS = List.of(0, 2, 4, 6, 8, 10, 12);

  private final String title;
  private final Sequence sequence;

  Routine(String title, String letters) {
    this.title = title;
    this.sequence = Sequence.parse(letters);
  }

  /** The drill's name for the coach. */
  public String title() {
    return title;
  }

  /** The usual form of the drill. */
  public Sequence sequence() {
    return sequence;
  }
}
