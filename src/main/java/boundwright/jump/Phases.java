package boundwright.jump;

import boundwright.quantity.Limits;
import boundwright.quantity.RefusedException;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * One triple jump as three lengths. Official = effective less toe-to-board (Hay; memory); which of the two the lengths
 * add up to depends on where the hop was measured from.
 *
 * @param hop_m first length [m], 0.5 to 9
 * @param step_m second [m], 0.3 to 8
 * @param jump_m third [m], 0.5 to 9
 * @param toeToBoard_m toe to take-off line [m], + behind the line; null when not measured
 * @param from where the hop begins
 */
public record Phases(double hop_m, double step_m, double jump_m, @Nullable Double toeToBoard_m, From from) {
  /** Where the hop's length begins. */
  public enum From {
    /** At the take-off line: the lengths add up to the official distance, as in published results. */
    BOARD,
    /** At the toe: the lengths add up to the effective distance. */
    TOE
  }

  /** Refuses lengths that nobody jumps (sanity limits; judgement). */
  public Phases {
    Limits.within("hop", hop_m, 0.5, 9, "m", "Check the unit.");
    Limits.within("step", step_m, 0.3, 8, "m", "Check the unit.");
    Limits.within("jump", jump_m, 0.5, 9, "m", "Check the unit.");
    Event.TRIPLE_JUMP.jump("triple jump", hop_m + step_m + jump_m);
    if (toeToBoard_m != null) {
      JumpLimits.gap(toeToBoard_m);
    }
  }

  /** Lengths from the take-off line, toe-to-board unknown. */
  public static Phases of(double hop, double step, double jump) {
    return new Phases(hop, step, jump, null, From.BOARD);
  }

  /** What the three lengths add up to [m]. */
  public double total_m() {
    return hop_m + step_m + jump_m;
  }

  /** The distance from the take-off line [m]. A foul has one too, but it does not count. */
  public double official_m() {
    return from == From.BOARD ? total_m() : total_m() - known();
  }

  /** The distance from the toe [m]. */
  public double effective_m() {
    return from == From.TOE ? total_m() : total_m() + known();
  }

  /** Whether {@link #official_m()} can be told. */
  public boolean knowsOfficial() {
    return from == From.BOARD || toeToBoard_m != null;
  }

  /** Whether {@link #effective_m()} can be told. */
  public boolean knowsEffective() {
    return from == From.TOE || toeToBoard_m != null;
  }

  /**
   * The three lengths with the hop from the toe [m], as speeds make them.
   *
   * @throws RefusedException if the hop was measured from the board and the toe-to-board was not
   */
  public List<Double> fromToe_m() {
    return List.of(from == From.TOE ? hop_m : hop_m + known(), step_m, jump_m);
  }

  /** The parts of {@link #total_m()}. */
  public Shares shares() {
    return Shares.ofLengths(hop_m, step_m, jump_m);
  }

  private double known() {
    if (toeToBoard_m == null) {
      throw new RefusedException(
          "The toe-to-board of this jump was not measured, so " + (from == From.TOE ? "the official" : "the effective")
              + " distance is not known. Enter it, or read the total.");
    }
    return toeToBoard_m;
  }
}
