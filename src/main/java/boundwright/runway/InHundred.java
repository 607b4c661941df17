package boundwright.runway;

/**
 * A chance as a coach reads it: whole reps in a hundred, rounded down. Whether a mark is good enough is decided on this figure
 * and on no other, so that what is shown and what is said never disagree.
 */
public final class InHundred {
  /** So that nine tenths, worked out a last digit short, are nine tenths. */
  private static final double LAST_DIGIT = 1e-9;

  private InHundred() {}

  /** The figure for a chance of 0 to 1: 0 to 99, because nobody can promise every rep. */
  public static int of(double chance) {
    return Math.max(0, Math.min(99, (int) Math.floor(chance * 100 + LAST_DIGIT)));
  }

  /** The figure that answers a chance that was asked, 0.5 to 0.99: a fraction of a rep asks for the next whole one. */
  public static int asked(double chance) {
    return (int) Math.ceil(chance * 100 - LAST_DIGIT);
  }

  /** The figure in words: {@code 90 in 100}, {@code under 1 in 100}. */
  public static String said(int inHundred) {
    return inHundred < 1 ? "under 1 in 100" : inHundred + " in 100";
  }
}
