package boundwright.jump;

import boundwright.evidence.JumpSources;
import boundwright.evidence.Source;

/**
 * Points of the long jump in a combined event: {@code floor(a (cm - b)^c)} of the distance in whole centimetres, 0 up to {@code b}
 * (scoring tables for combined events; coefficients from memory, see {@link JumpSources#COMBINED_TABLES}).
 */
public enum CombinedTable {
  /** Men. */
  DECATHLON("decathlon", 0.14354, 220, 1.4),
  /** Women. */
  HEPTATHLON("heptathlon", 0.188807, 210, 1.41);

  /** Events of which the wind is measured: two sprints or hurdles, and the long jump (both combined events; memory). */
  public static final int WIND_EVENTS = 3;

  private final String label;
  private final double a;
  private final int b;
  private final double c;

  CombinedTable(String label, double a, int b, double c) {
    this.label = label;
    this.a = a;
    this.b = b;
    this.c = c;
  }

  /** In words for the coach. */
  public String label() {
    return label;
  }

  /** Where it stood. */
  public Source source() {
    return JumpSources.COMBINED_TABLES;
  }

  /** Points for a distance in whole centimetres; 0 for what is too short to count. */
  public int ofCentimetres(int centimetres) {
    return centimetres <= b ? 0 : (int) Math.floor(a * Math.pow(centimetres - b, c) + 1e-9);
  }

  /**
   * Points for a distance, which is rounded down to the centimetre first.
   *
   * @param metres 1 to 10
   */
  public int points(double metres) {
    Event.LONG_JUMP.jump(Event.LONG_JUMP.label(), metres);
    return ofCentimetres((int) MeasureRule.CENTIMETRE.steps(metres));
  }
}
