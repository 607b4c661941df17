package boundwright.runway;

import java.util.List;

/**
 * The fewest tapes that serve every window of the day, with the proof that fewer cannot.
 *
 * @param tapes from the nearest to the sand outwards
 * @param proof as many wishes as there are tapes, no two of whose windows share a mark: each needs a tape of its own
 * @param without wishes whose window is empty; no tape serves them
 */
public record Tapes(List<Tape> tapes, List<Wish> proof, List<Wish> without) {
  /** Takes copies. */
  public Tapes {
    tapes = List.copyOf(tapes);
    proof = List.copyOf(proof);
    without = List.copyOf(without);
  }

  /**
   * One athlete's need for one drill.
   *
   * @param athlete name
   * @param drill what they do, for example {@code RRL x2 from 4 steps}
   * @param advice the marks
   */
  public record Wish(String athlete, String drill, MarkAdvice advice) {
    /** Whether a tape can serve it: a mark works, or it is a beginning. */
    public boolean served() {
      return advice.works() != null;
    }
  }

  /**
   * One strip of tape across the runway.
   *
   * @param markToSand_m where it lies, from the near edge of the sand [m]
   * @param serves whom it serves
   */
  public record Tape(double markToSand_m, List<Wish> serves) {
    /** Takes a copy. */
    public Tape {
      serves = List.copyOf(serves);
    }
  }
}
