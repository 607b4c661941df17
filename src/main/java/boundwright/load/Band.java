package boundwright.load;

import boundwright.quantity.RefusedException;

/**
 * Two limits of one thing: above {@code caution} the guard says caution, above {@code refuse} it refuses.
 *
 * @param caution the last value that is simply allowed
 * @param refuse the last value that is not refused, at least {@code caution}
 */
public record Band(double caution, double refuse) {
  /** Refuses a band that is upside down. */
  public Band {
    if (!(caution >= 0 && caution <= refuse)) {
      throw new RefusedException(
          "Limits of " + caution + " (caution) and " + refuse + " (refused) are the wrong way round: caution comes first.");
    }
  }

  /** What the guard says of a value. */
  public Answer judge(double value) {
    return value > refuse ? Answer.REFUSED : value > caution ? Answer.CAUTION : Answer.ALLOWED;
  }
}
