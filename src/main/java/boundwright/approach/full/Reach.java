package boundwright.approach.full;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * From how many steps a squad has jumped, and so of which others something can be told: near those by its jumps, further by the first guess.
 *
 * @param least fewest steps that anybody has jumped from
 * @param most most steps that anybody has jumped from
 */
record Reach(int least, int most) {
  private static final String FAR =
      " is too far from that; the first guess speaks of " + FullRunModel.GUESS_FROM + " to " + FullRunModel.GUESS_TO + " steps. Log a jump of anybody from ";

  /** Of these jumps, one at least. */
  static Reach of(List<SeenDistance> seen) {
    return new Reach(seen.stream().mapToInt(SeenDistance::steps).min().orElseThrow(), seen.stream().mapToInt(SeenDistance::steps).max().orElseThrow());
  }

  private boolean bySquad(int steps) {
    return steps >= least - FullRunModel.FURTHEST && steps <= most + FullRunModel.FURTHEST;
  }

  /** The first guess goes between two numbers of steps of which it speaks both. */
  private boolean byGuess(int steps) {
    return speaksOf(steps) && most >= FullRunModel.GUESS_FROM && least <= FullRunModel.GUESS_TO;
  }

  private static boolean speaksOf(int steps) {
    return steps >= FullRunModel.GUESS_FROM && steps <= FullRunModel.GUESS_TO;
  }

  /** Whether anything is told of so many steps. */
  boolean tells(int steps) {
    return bySquad(steps) || byGuess(steps);
  }

  /** Why nothing is told of so many steps and what would change it, or null. */
  @Nullable String missing(int steps) {
    if (tells(steps)) {
      return null;
    }
    return steps > most
        ? "Nobody here has jumped from more than " + most + " steps, and " + steps + FAR + (speaksOf(steps) ? FullRunModel.GUESS_FROM : steps - FullRunModel.FURTHEST) + " steps or more."
        : "Nobody here has jumped from fewer than " + least + " steps, and " + steps + FAR + (steps + FullRunModel.FURTHEST) + " steps or fewer.";
  }

  /** The sentence that the first guess answers and no jumps of the squad, or null. */
  @Nullable String guess(int steps) {
    return bySquad(steps)
        ? null
        : "A first guess: nobody here has jumped from " + (steps > most ? "more than " + most : "fewer than " + least) + " steps yet.";
  }
}
