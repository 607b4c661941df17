package boundwright.runway;

import boundwright.flight.Forecast;
import boundwright.quantity.Estimate;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Where the tapes go for one athlete, one sequence and one rung, and why.
 *
 * @param forecast where each contact will fall, from the take-off mark
 * @param settings what was asked
 * @param markToSand_m take-off mark to the near edge of the sand that makes the smaller of the two chances largest [m]
 * @param chanceInSand from that mark, the chance to end in sand by the margin, 0 to 1
 * @param chanceClear from that mark, the chance that the last contact is clear of the sand by the margin, 0 to 1
 * @param window the marks that reach the asked chance, or null if none does
 * @param learning two marks that teach the most when only taps are logged
 * @param startToMark length of the run-up [m]; all zero from standing
 * @param startMeasured how many measured run-ups of this athlete stand behind it
 * @param approachSpeed speed into the first contact [m/s]; 0 from standing
 * @param runwayNeeded_m start mark to sand at its 95 % point [m]
 * @param groundNeeded_m on the flat: start mark to landing at its 95 % point [m]
 * @param openers ways to open the window; empty when it is open
 * @param from what the lengths rest on, in a sentence
 * @param sure how sure that is, in a sentence
 * @param warnings what the coach must know before taping, most important first
 */
public record MarkAdvice(
    Forecast forecast,
    MarkSettings settings,
    double markToSand_m,
    double chanceInSand,
    double chanceClear,
    @Nullable Window window,
    LearningMarks learning,
    Estimate startToMark,
    int startMeasured,
    Estimate approachSpeed,
    double runwayNeeded_m,
    double groundNeeded_m,
    List<Opener> openers,
    String from,
    String sure,
    List<String> warnings) {

  /**
   * Marks from which one tap tells most: at each, one of the two chances is only {@value #LEARNING_CHANCE}, so that a tap
   * is seldom a foregone conclusion. Lay the tape at one and the other in turn.
   *
   * @param near_m nearer the sand: the last contact is at stake [m]
   * @param far_m farther from the sand: reaching it is at stake [m]
   */
  public record LearningMarks(double near_m, double far_m) {}

  /** Chance at stake at a learning mark (judgement: in simulation it learns fast and still succeeds seven times in ten). */
  public static final double LEARNING_CHANCE = 0.7;

  /** Takes copies. */
  public MarkAdvice {
    openers = List.copyOf(openers);
    warnings = List.copyOf(warnings);
  }

  /** The smaller of the two chances at the advised mark, 0 to 1. */
  public double smallerChance() {
    return Math.min(chanceInSand, chanceClear);
  }
}
