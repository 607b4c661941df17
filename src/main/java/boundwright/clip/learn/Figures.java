package boundwright.clip.learn;

/**
 * What a reading gets right of the touchdowns that are known. Right, off, wrong foot and missed add up to them.
 *
 * @param known touchdowns on one foot
 * @param right found with the right foot within 2.5 frames (or 40 ms where that is longer)
 * @param off found with the right foot, further off
 * @param wrongFoot found with the other foot
 * @param missed not found
 * @param extra found where there is none
 * @param byHand touchdowns set by hand that were found with the right foot
 * @param framesOff how far off those are in the mean, early or late [frames]; NaN where there are none
 */
public record Figures(int known, int right, int off, int wrongFoot, int missed, int extra, int byHand, double framesOff) {
  /** Nothing yet. */
  public static final Figures NONE = new Figures(0, 0, 0, 0, 0, 0, 0, Double.NaN);

  /** What a coach would have to put right. */
  public int faults() {
    return off + wrongFoot + missed + extra;
  }

  /** Both together. */
  public Figures and(Figures o) {
    int n = byHand + o.byHand;
    double sum = (byHand == 0 ? 0 : byHand * framesOff) + (o.byHand == 0 ? 0 : o.byHand * o.framesOff);
    return new Figures(
        known + o.known, right + o.right, off + o.off, wrongFoot + o.wrongFoot, missed + o.missed, extra + o.extra, n, n == 0 ? Double.NaN : sum / n);
  }
}
