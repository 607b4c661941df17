package boundwright.jump;

import boundwright.evidence.JumpSources;
import boundwright.evidence.Source;
import boundwright.quantity.LengthUnit;

/** To what a distance is rounded down. */
public enum MeasureRule {
  /** To the lesser centimetre (World Athletics; read). */
  CENTIMETRE("to the centimetre below", 0.01, JumpSources.FOUL_RULE),
  /** To the lesser quarter inch (United States high school; read). */
  QUARTER_INCH("to the quarter inch below", LengthUnit.INCH_M / 4, JumpSources.BOARDS_SCHOOL);

  private final String label;
  private final double step;
  private final Source source;

  MeasureRule(String label, double step, Source source) {
    this.label = label;
    this.step = step;
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

  /** A distance rounded down [m]; one that is written to the step already stays what it is. */
  public double down(double metres) {
    return metres(steps(metres));
  }

  /** So many steps in metres. */
  public double metres(long steps) {
    return this == CENTIMETRE ? steps / 100.0 : steps * step;
  }

  /** How many whole steps a distance has; equal marks have equal steps. */
  public long steps(double metres) {
    return (long) Math.floor(metres / step + 1e-6);
  }
}
