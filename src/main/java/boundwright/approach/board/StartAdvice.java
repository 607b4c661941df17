package boundwright.approach.board;

import boundwright.jump.JumpLimits;
import boundwright.quantity.Estimate;
import boundwright.quantity.LengthUnit;
import boundwright.quantity.Limits;
import java.util.Locale;

/**
 * Systematic against random error at the board: what moves with the start mark, and what does not.
 *
 * @param systematic_m mean gap less the aim [m]: + is short of it, the start can come forward
 * @param random_m spread of the gap [m]
 * @param verdict what to do
 * @param systematicPart part of the mean squared error that is systematic, 0 to 1
 */
public record StartAdvice(Estimate systematic_m, Estimate random_m, Verdict verdict, double systematicPart) {
  /** Spread from which the rhythm is worth training [m] (judgement; elite .05-.08, 12-13 years .10-.16, read in part). */
  public static final double DEFAULT_RHYTHM_M = 0.12;
  /** A start mark is not moved by less than this [m]. */
  public static final double LEAST_MOVE_M = 0.02;

  /** Fewest gaps from which the advice is given. */
  public static final int FEWEST = 4;

  /** What to do. */
  public enum Verdict {
    /** The mean is off the aim. */
    MOVE_START,
    /** The spread is wide; no start mark mends that. */
    TRAIN_RHYTHM,
    /** Both. */
    BOTH,
    /** Neither. */
    LEAVE,
    /** The data cannot tell. */
    CANNOT_TELL
  }

  /**
   * From a log at the board.
   *
   * @param aim_m board gap aimed at [m]
   * @param rhythm_m spread from which the rhythm is worth training [m]
   */
  public static StartAdvice of(BoardSpread board, double aim_m, double rhythm_m) {
    JumpLimits.gap(aim_m);
    Limits.within("spread that is worth training", rhythm_m, 0.02, 0.6, "m", "0.12 m is usual.");
    Estimate off = board.mean_m().plus(-aim_m);
    Estimate sd = board.sd_m();
    boolean move = off.told() && Math.abs(off.p50()) >= LEAST_MOVE_M;
    boolean wide = sd.p50() > rhythm_m;
    boolean thin = board.attempts() < FEWEST || (!move && off.halfWidth() > 0.10);
    Verdict verdict =
        thin
            ? Verdict.CANNOT_TELL
            : move && wide ? Verdict.BOTH : move ? Verdict.MOVE_START : wide ? Verdict.TRAIN_RHYTHM : Verdict.LEAVE;
    double part = off.p50() * off.p50() / (off.p50() * off.p50() + sd.p50() * sd.p50());
    return new StartAdvice(off, sd, verdict, part);
  }

  /** How far to move the start mark [m]; + is back, away from the board. 0 unless told to move it. */
  public double moveStart_m() {
    return verdict == Verdict.MOVE_START || verdict == Verdict.BOTH ? -systematic_m.p50() : 0;
  }

  /** The sentence for the coach. */
  public String words(LengthUnit unit) {
    double by = moveStart_m();
    String move = "Move the start mark " + (by > 0 ? "back " : "forward ")
        + (unit == LengthUnit.METRES ? String.format(Locale.ROOT, "%.0f cm", 100 * Math.abs(by)) : unit.write(Math.abs(by))) + ".";
    String rhythm = "Train the rhythm: the foot scatters by " + unit.writeSpread(random_m.p50()) + ", which no start mark mends.";
    return switch (verdict) {
      case MOVE_START -> move;
      case TRAIN_RHYTHM -> rhythm;
      case BOTH -> move + " " + rhythm;
      case LEAVE -> "Leave the start mark, and the rhythm is good.";
      case CANNOT_TELL -> "The data cannot tell yet: log more run-throughs with their board gap.";
    };
  }
}
