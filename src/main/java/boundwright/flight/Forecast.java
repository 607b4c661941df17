package boundwright.flight;

import boundwright.footfall.Sequence;
import boundwright.quantity.Estimate;

/**
 * Where the contacts of one rep will fall, as the model sees it before the rep: a joint normal distribution of the
 * positions of contacts 2 to n and of the landing, measured from the take-off mark, forward [m].
 */
public final class Forecast {
  private final Sequence sequence;
  private final int approachSteps;
  private final double[] mean;
  private final double[] sd;
  private final double together;
  private final double placementSd;
  private final int repsAtRung;

  /**
   * Index i of {@code mean} and {@code sd} is contact i + 2; the last is the landing. {@code together} is the covariance of the
   * last contact and the landing [m2].
   */
  Forecast(
      Sequence sequence, int approachSteps, double[] mean, double[] sd, double together, double placementSd, int repsAtRung) {
    this.sequence = sequence;
    this.approachSteps = approachSteps;
    this.mean = mean;
    this.sd = sd;
    this.together = together;
    this.placementSd = placementSd;
    this.repsAtRung = repsAtRung;
  }

  /** The sequence that was asked. */
  public Sequence sequence() {
    return sequence;
  }

  /** The approach steps that were asked. */
  public int approachSteps() {
    return approachSteps;
  }

  /** Reps that this athlete logged from this rung. */
  public int repsAtRung() {
    return repsAtRung;
  }

  /** Whether this rung was never tried, so that the forecast rests on the other rungs and the prior. */
  public boolean extrapolated() {
    return repsAtRung == 0;
  }

  /** Mean position of a contact [m]; contact 1 is the one at the mark, {@code size() + 1} is the landing. */
  public double mean(int contact) {
    return contact == 1 ? 0 : mean[contact - 2];
  }

  /** Standard deviation of that position [m]. */
  public double sd(int contact) {
    return contact == 1 ? placementSd : sd[contact - 2];
  }

  /** How the last contact and the landing move together: their covariance [m2]. */
  public double lastContactWithLanding() {
    return together;
  }

  /** Position of a contact, 1 to {@code size()}, with its 90 % interval [m]. */
  public Estimate position(int contact) {
    return Estimate.normal(mean(contact), sd(contact));
  }

  /** Position of the landing with its 90 % interval [m]. */
  public Estimate landing() {
    return position(sequence.size() + 1);
  }
}
