package boundwright.runway;

import boundwright.flight.Forecast;
import boundwright.quantity.Estimate;
import boundwright.quantity.LengthUnit;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Where the tapes go for one athlete, one sequence and one rung, and why.
 *
 * @param forecast where each contact will fall, from the take-off mark
 * @param settings what was asked
 * @param markToSand_m take-off mark to the near edge of the sand from which a rep counts most likely [m]; in a beginning its mark
 * @param chance that a rep from that mark counts: ends in sand and keeps the last contact out of it, each by its margin; 0 to 1
 * @param window the marks from which a rep counts with the asked chance, or null if none does
 * @param beginning where to begin, when there is no history and no such mark; else null
 * @param learning two marks that teach the most when only taps are logged
 * @param startToMark length of the run-up [m]; all zero from standing
 * @param startMeasured how many measured run-ups of this athlete stand behind it
 * @param approachSpeed speed into the first contact [m/s]; 0 from standing
 * @param runwayNeeded_m start mark to sand at its 95 % point [m]
 * @param groundNeeded_m on the flat: start mark to landing at its 95 % point [m]
 * @param openers ways to open the window; empty when it is open
 * @param from what the lengths rest on, in a sentence
 * @param sure how sure that is, in a sentence
 * @param elsewhere in a sentence, where the reps were made if none was made on the surface asked for; else null
 * @param warnings what the coach must know before taping, most important first
 */
public record MarkAdvice(
    Forecast forecast,
    MarkSettings settings,
    double markToSand_m,
    double chance,
    @Nullable Window window,
    @Nullable Beginning beginning,
    LearningMarks learning,
    Estimate startToMark,
    int startMeasured,
    Estimate approachSpeed,
    double runwayNeeded_m,
    double groundNeeded_m,
    List<Opener> openers,
    String from,
    String sure,
    @Nullable String elsewhere,
    List<String> warnings) {

  /**
   * Marks from which one tap tells most: at each, landing in sand or staying before it has a chance of only
   * {@value #LEARNING_CHANCE}, so that a tap is seldom a foregone conclusion. Lay the tape at one and the other in turn.
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

  /** The marks that a tape may lie at: the window, or in a beginning those that do as well as its mark; null if there are none. */
  public @Nullable Window works() {
    return beginning == null ? window : new Window(beginning.from_m(), beginning.to_m());
  }

  /** The chance that the rep counts as it is shown: whole reps in a hundred, rounded down. */
  public int inHundred() {
    return InHundred.of(chance);
  }

  /** The warnings without that of a guessed start mark, for a page that asks for the one measure that helps most ({@link MeasureFirst}). */
  public List<String> warningsBesideStart(LengthUnit unit) {
    String guess = AdviceWarnings.guess(forecast, startToMark, unit);
    return warnings.stream().filter(w -> !w.equals(guess)).toList();
  }

  /** With one more warning, after the others. */
  MarkAdvice warning(String more) {
    List<String> all = new ArrayList<>(warnings);
    all.add(more);
    return new MarkAdvice(
        forecast, settings, markToSand_m, chance, window, beginning, learning, startToMark, startMeasured, approachSpeed, runwayNeeded_m,
        groundNeeded_m, openers, from, sure, elsewhere, all);
  }

  /** The chance that was asked of the rep, in whole reps in a hundred. */
  public int askedInHundred() {
    return InHundred.asked(settings.chance());
  }
}
