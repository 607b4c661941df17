package boundwright.footfall;

import java.util.List;

/**
 * The long jump's drills from a short run, shortest first (common practice). The steps before the take-off belong to the run-up, so that
 * they count neither as bounds of this athlete nor as contacts of the load; the one contact is the take-off into the sand.
 */
public enum LongDrill {
  /** Two running steps and a jump. */
  RUN_RUN_JUMP("Run, run, jump", 2),
  /** The last two steps before the board set down as in the full jump. */
  LAST_TWO("Last two steps, jump", 4),
  /** A whole jump from a short run. */
  POP_UP("Pop-up", 6);

  private final String title;
  private final int steps;

  LongDrill(String title, int steps) {
    this.title = title;
    this.steps = steps;
  }

  /** The drill's name for the coach. */
  public String title() {
    return title;
  }

  /** Usual approach steps. */
  public int steps() {
    return steps;
  }

  /** The take-off from a foot. */
  public Sequence sequence(Foot takeOff) {
    return Sequence.of(List.of(takeOff));
  }
}
