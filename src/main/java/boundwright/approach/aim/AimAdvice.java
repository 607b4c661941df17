package boundwright.approach.aim;

import boundwright.approach.board.BoardSpread;
import boundwright.jump.JumpLimits;
import boundwright.quantity.LengthUnit;
import java.util.Locale;

/**
 * What the coach reads: how far to move the start mark so that the foot falls where it pays most, with the foul chance
 * before and after.
 *
 * @param now the athlete's present mean gap, kept for all attempts
 * @param best the best fixed aim
 * @param nearest_m best aim if the spread at the board is as small as it may be (5 %) [m]
 * @param furthest_m best aim if it is as large as it may be (95 %) [m]
 * @param biasHalf_m how well the present mean gap is known, half the 90 % interval [m]
 */
public record AimAdvice(FixedAim now, FixedAim best, double nearest_m, double furthest_m, double biasHalf_m) {
  /** The advice for a log. */
  public static AimAdvice of(BoardSpread board, JumpForm form, Goal goal, int attempts) {
    double bias = Math.min(Math.max(board.mean_m().p50(), JumpLimits.MIN_GAP_M), JumpLimits.MAX_GAP_M);
    FixedAim best = FixedAim.best(form, goal, attempts);
    double one = FixedAim.best(form.withGapSd(tame(board.sd_m().p05())), goal, attempts).aim_m();
    double other = FixedAim.best(form.withGapSd(tame(board.sd_m().p95())), goal, attempts).aim_m();
    return new AimAdvice(
        FixedAim.at(form, goal, attempts, bias), best, Math.min(one, other), Math.max(one, other), board.mean_m().halfWidth());
  }

  /**
   * The advice for a form that was given, with the present mean gap taken as known.
   *
   * @param meanGap_m where the foot falls now [m], -0.60 to 2.00
   */
  public static AimAdvice given(JumpForm form, Goal goal, int attempts, double meanGap_m) {
    FixedAim best = FixedAim.best(form, goal, attempts);
    return new AimAdvice(FixedAim.at(form, goal, attempts, meanGap_m), best, best.aim_m(), best.aim_m(), 0);
  }

  private static double tame(double sd) {
    return Math.min(Math.max(sd, 0.005), 0.60);
  }

  /** How far to move the start mark [m]; + is back, away from the board, which moves the foot back as far. */
  public double moveStart_m() {
    return best.aim_m() - now.aim_m();
  }

  /** Whether the move is larger than the doubt about where the foot falls now. */
  public boolean told() {
    return Math.abs(moveStart_m()) > biasHalf_m;
  }

  /** The sentence for the coach. */
  public String words(LengthUnit unit) {
    double move = moveStart_m();
    String fouls =
        String.format(Locale.ROOT, " Foul chance now %.0f %%, then %.0f %%.", 100 * now.foulChance(), 100 * best.foulChance());
    if (Math.abs(move) < 0.01) {
      return "Leave the start mark: the foot falls where it pays." + fouls;
    }
    String what = "Move the start " + (move > 0 ? "back " : "forward ") + length(unit, Math.abs(move)) + "." + fouls;
    return told() ? what : what + " The log is short: where the foot falls now is known to "
        + length(unit, biasHalf_m) + " either way.";
  }

  private static String length(LengthUnit unit, double metres) {
    return unit == LengthUnit.METRES ? String.format(Locale.ROOT, "%.0f cm", 100 * metres) : unit.write(metres);
  }
}
