package boundwright.approach.aim;

import boundwright.approach.board.BoardSeen;
import boundwright.approach.board.BoardSpread;
import boundwright.quantity.LengthUnit;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Where an athlete's foot falls at the board, and where to aim.
 *
 * @param seen the attempts it rests on, oldest first, in training and in meets
 * @param board mean gap and spread at the planned start mark; of an empty log the makers' first guess
 * @param effective the form learned, or null with too few marks
 * @param plan the aim, or null when the data cannot tell
 * @param advice what to do with the start mark, or null when the data cannot tell
 * @param from what it rests on, a sentence
 * @param cannotTell why there is no aim, with the least that is needed; null when there is one
 */
public record AimAnswer(
    List<BoardSeen> seen,
    BoardSpread board,
    @Nullable EffectiveForm effective,
    @Nullable AimPlan plan,
    @Nullable AimAdvice advice,
    String from,
    @Nullable String cannotTell) {
  /** Takes a copy. */
  public AimAnswer {
    seen = List.copyOf(seen);
  }

  /** The sentence for the coach: how far to move the start, with the foul chance before and after; or what is missing. */
  public String words(LengthUnit unit) {
    AimAdvice told = advice;
    return told == null ? "The data cannot tell. " + (cannotTell == null ? "" : cannotTell) : told.words(unit);
  }
}
