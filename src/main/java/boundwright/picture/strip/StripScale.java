package boundwright.picture.strip;

import boundwright.quantity.LengthUnit;

/**
 * The scale along a strip: a tick every metre with every fifth labelled, closer where there is room; or every foot or
 * five feet.
 *
 * @param tick_m from tick to tick [m]
 * @param label ticks from label to label
 * @param each how many units of the coach lie in a tick
 * @param suffix the unit's sign
 */
record StripScale(double tick_m, int label, int each, String suffix) {
  /** The scale for a picture with this many drawing units in a metre. */
  static StripScale of(LengthUnit unit, double perMetre) {
    if (unit == LengthUnit.METRES) {
      return new StripScale(1, perMetre >= 44 ? 1 : 5, 1, " m");
    }
    double perFoot = perMetre * LengthUnit.FOOT_M;
    if (perFoot >= 5) {
      return new StripScale(LengthUnit.FOOT_M, perFoot >= 44 ? 1 : perFoot >= 11 ? 5 : 10, 1, " ft");
    }
    return new StripScale(5 * LengthUnit.FOOT_M, 2, 5, " ft");
  }

  String write(int tick) {
    return tick * each + suffix;
  }
}
