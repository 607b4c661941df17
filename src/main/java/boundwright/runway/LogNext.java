package boundwright.runway;

import org.jspecify.annotations.Nullable;

/**
 * What logging the next rep should add, because the mark would gain by it.
 *
 * @param way which of the three ways
 * @param tapeToSand_m where the tape goes for two taps, to the near edge of the sand [m]; null when something is measured
 * @param inHundredAfter chance expected afterwards that a rep counts from the then best mark, in whole reps in a hundred
 * @param said what to do, in one short sentence
 * @param why what is expected of it, and what of two taps from the best mark instead
 */
public record LogNext(Way way, @Nullable Double tapeToSand_m, int inHundredAfter, String said, String why) {
  /** The three ways. */
  public enum Way {
    /** Two reps tapped from a tape laid where a tap is no foregone conclusion. */
    TAPE,
    /** The last footprint of one rep measured. */
    MEASURE_LAST,
    /** Every footprint and the landing of one rep measured. */
    MEASURE
  }
}
