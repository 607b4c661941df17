package boundwright.footfall;

import boundwright.quantity.Limits;
import java.util.ArrayList;
import java.util.List;

/**
 * Take-offs repeated down the runway with running steps between them (common practice: run, run, jump over and over; pop-ups every
 * third or fifth contact). Every take-off lands on the free leg. Neither letters nor a {@link Sequence}: the running steps are no
 * bounds, and R and L between jumps would say that they are.
 *
 * <p>As many steps lead from a landing to the next take-off as feet come down between two take-offs, the landing's among them, and they
 * alternate. So a take-off is every {@code running + 1}-th contact; with an even number of running steps the take-off foot changes
 * from jump to jump, with an odd one it stays (worked: jump off L, R, L, jump off R; jump off L, R, L, R, jump off L).
 *
 * @param first foot of the first take-off
 * @param running running steps from a landing to the next take-off, 1 to {@value #MOST_RUNNING}
 * @param jumps take-offs, 2 to {@value #MOST_JUMPS}
 */
public record RunJumps(Foot first, int running, int jumps) {
  /** Most running steps between two take-offs (a limit of this program). */
  public static final int MOST_RUNNING = 8;
  /** Most take-offs of one rep (a limit of this program). */
  public static final int MOST_JUMPS = 12;
  /** Run, run, jump. */
  public static final int USUAL_RUNNING = 2;
  /** Take-offs of the usual form (common practice: three to six). */
  public static final int USUAL_JUMPS = 4;

  /** Refuses what is another drill. */
  public RunJumps {
    Limits.count("Running steps between take-offs", running, 1, MOST_RUNNING, "Without one they are bounds: write feet as R and L, as in RL x4.");
    Limits.count("Take-offs in one rep", jumps, 2, MOST_JUMPS, "A single one is the drill run-run-jump.");
  }

  /** Foot of a take-off, 1 to {@link #jumps}. */
  public Foot foot(int jump) {
    return changes() && jump % 2 == 0 ? first.other() : first;
  }

  /** Foot on which a take-off that does not end in the sand lands: the free leg. */
  public Foot landing(int jump) {
    return foot(jump).other();
  }

  /** Whether the take-off foot changes from jump to jump. */
  public boolean changes() {
    return running % 2 == 0;
  }

  /** Every how many-th contact is a take-off. */
  public int every() {
    return running + 1;
  }

  /** Take-offs of one leg. */
  public int count(Foot foot) {
    int ofFirst = changes() ? (jumps + 1) / 2 : jumps;
    return foot == first ? ofFirst : jumps - ofFirst;
  }

  /** Feet on the ground from the first take-off to the last, running steps with them. */
  public List<Foot> contacts() {
    List<Foot> out = new ArrayList<>();
    Foot now = first;
    for (int i = 0; i <= (jumps - 1) * every(); i++) {
      out.add(now);
      now = now.other();
    }
    return List.copyOf(out);
  }

  /** The same with another number of take-offs. */
  public RunJumps times(int count) {
    return new RunJumps(first, running, count);
  }

  /** The drill's name for the coach: {@code Run, run, jump x4}. */
  public String title() {
    return (running <= 3 ? "Run, " + "run, ".repeat(running - 1) : running + " running steps, ") + "jump x" + jumps;
  }

  /** Feet and rhythm in words. */
  public String said() {
    return "A take-off every " + nth(every()) + " contact, " + (changes() ? "feet in turn, first the " + first.label() : "always off the " + first.label())
        + ": " + count(Foot.RIGHT) + " right, " + count(Foot.LEFT) + " left. Each lands on the free leg.";
  }

  private static String nth(int n) {
    return n == 2 ? "second" : n == 3 ? "third" : n + "th";
  }
}
