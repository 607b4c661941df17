package boundwright.meet;

import boundwright.evidence.JumpSources;
import boundwright.evidence.Source;
import boundwright.jump.CombinedTable;
import boundwright.quantity.RefusedException;
import java.util.List;
import java.util.Locale;

/** By which rule the winds of a combined event count for records of its total; editions differ, so it is a setting of the meet. */
public enum CombinedWind {
  /** Since 2010: the average over the events of which the wind is measured. */
  AVERAGE("the average of the measured events up to +2.0 m/s", JumpSources.COMBINED_WIND),
  /** Before: none above +4.0, or the average. */
  NONE_ABOVE_FOUR_OR_AVERAGE("none above +4.0 m/s, or their average up to +2.0", JumpSources.COMBINED_WIND_OLD);

  private static final double NONE_ABOVE = 4.0;
  private static final double ROUNDING = 1e-9;

  private final String label;
  private final Source source;

  CombinedWind(String label, Source source) {
    this.label = label;
    this.source = source;
  }

  /** In words for the coach. */
  public String label() {
    return label;
  }

  /** Where it stood. */
  public Source source() {
    return source;
  }

  /**
   * Whether a total counts for records.
   *
   * @param measured wind of each event of which it was measured [m/s], + from behind, at least one; of the long jump that of the mark
   *     that counts
   */
  public boolean legal(List<Double> measured) {
    if (measured.isEmpty()) {
      throw new RefusedException("No wind was given. Give that of each event of which it was measured.");
    }
    double sum = 0;
    double most = Double.NEGATIVE_INFINITY;
    for (double w : measured) {
      double read = Wind.rounded(w);
      sum += read;
      most = Math.max(most, read);
    }
    boolean average = sum / measured.size() <= Wind.LIMIT + ROUNDING;
    return average || (this == NONE_ABOVE_FOUR_OR_AVERAGE && most <= NONE_ABOVE + ROUNDING);
  }

  /**
   * What the winds of the other measured events may add up to so that the average holds [m/s].
   *
   * @param measured of the long jump's mark that counts [m/s]
   */
  public double othersAtMost(double measured) {
    return CombinedTable.WIND_EVENTS * Wind.LIMIT - Wind.rounded(measured);
  }

  /** The wind of the mark that counts [m/s], and what it leaves to the others so that the total counts for records. */
  public String words(double measured) {
    double read = Wind.rounded(measured);
    String each = this == NONE_ABOVE_FOUR_OR_AVERAGE && read <= NONE_ABOVE + ROUNDING ? ", or neither above +4.0" : "";
    return String.format(Locale.ROOT, "wind %+.1f, the other %d up to %+.1f together%s", read, CombinedTable.WIND_EVENTS - 1, othersAtMost(measured), each);
  }

  /** What {@link #words} is about, a sentence. */
  public String about() {
    return "A total counts for records by " + label + "; beside each mark stands what it leaves to the other winds.";
  }
}
