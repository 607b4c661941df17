package boundwright.picture.strip;

import static boundwright.picture.StripPaths.round;
import static boundwright.picture.StripPaths.textWidth;

import boundwright.picture.strip.RunwayStrip.Text;
import boundwright.picture.strip.RunwayStrip.Tick;
import boundwright.quantity.LengthUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleUnaryOperator;

/**
 * The scale along a strip: a tick every metre with every fifth labelled, closer where there is room; or every foot or
 * five feet. Where labels would touch, every second one of them.
 *
 * @param tick_m from tick to tick [m]
 * @param label ticks from label to label
 * @param each how many units of the coach lie in a tick
 * @param suffix the unit's sign
 */
record StripScale(double tick_m, int label, int each, String suffix) {
  /** Room for a label of three figures and its unit, in drawing units. */
  private static final double LABEL = textWidth("100 m", 12);
  private static final int MOST_TICKS = 200;

  /** The scale for a picture with this many drawing units in a metre. */
  static StripScale of(LengthUnit unit, double perMetre) {
    StripScale close = close(unit, perMetre);
    int label = close.label;
    while (label < MOST_TICKS && label * close.tick_m * perMetre < LABEL) {
      label *= 2;
    }
    return new StripScale(close.tick_m, label, close.each, close.suffix);
  }

  private static StripScale close(LengthUnit unit, double perMetre) {
    if (unit == LengthUnit.METRES) {
      return new StripScale(1, perMetre >= 44 ? 1 : 5, 1, " m");
    }
    double perFoot = perMetre * LengthUnit.FOOT_M;
    if (perFoot >= 5) {
      return new StripScale(LengthUnit.FOOT_M, perFoot >= 44 ? 1 : perFoot >= 11 ? 5 : 10, 1, " ft");
    }
    return new StripScale(5 * LengthUnit.FOOT_M, 2, 5, " ft");
  }

  /**
   * The ticks of a picture of one row, as far as they lie in it.
   *
   * @param x where in the drawing so many metres from the scale's nought lie
   * @param width of the drawing
   * @param bottom lower edge of the runway
   * @param size of the labels
   * @param texts to which they are added
   */
  List<Tick> ticks(DoubleUnaryOperator x, double width, double bottom, double size, List<Text> texts) {
    List<Tick> out = new ArrayList<>();
    for (int k = 0; k < MOST_TICKS; k++) {
      double along = x.applyAsDouble(k * tick_m);
      if (along < 2 || along > width - 2) {
        break;
      }
      boolean labelled = k % label == 0;
      out.add(new Tick(round(along), bottom, labelled ? 6 : 3.5));
      double half = textWidth(write(k), size) / 2;
      if (labelled && along > half && along < width - half) {
        texts.add(new Text(round(along), bottom + 19, size, "middle", Text.Tone.SCALE, write(k)));
      }
    }
    return out;
  }

  String write(int tick) {
    return tick * each + suffix;
  }
}
