package boundwright.picture;

import boundwright.picture.strip.RunwayStrip.Dot;
import boundwright.picture.strip.StripDrawing;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/** The shapes of the strip as SVG paths, and the numbers in them. */
public final class StripPaths {
  /** No drawing is as wide, in hundredths of its unit. */
  private static final double MOST = 2e9;

  private StripPaths() {}

  /** A soft lens from one point to another, thickest in the middle. */
  public static String lens(double from, double to, double y, double bulge) {
    double middle = (from + to) / 2;
    double shoulder = (to - from) / 5;
    return "M" + number(from) + " " + number(y)
        + "C" + number(from + shoulder) + " " + number(y) + " " + number(middle - shoulder) + " " + number(y - bulge / 2)
        + " " + number(middle) + " " + number(y - bulge / 2)
        + "S" + number(to - shoulder) + " " + number(y) + " " + number(to) + " " + number(y)
        + "C" + number(to - shoulder) + " " + number(y) + " " + number(middle + shoulder) + " " + number(y + bulge / 2)
        + " " + number(middle) + " " + number(y + bulge / 2)
        + "S" + number(from + shoulder) + " " + number(y) + " " + number(from) + " " + number(y) + "Z";
  }

  /** A flight {@code high} above the ground at its middle. */
  public static String arc(double from, double to, double ground, double high) {
    return "M" + number(from) + " " + number(ground) + "Q" + number((from + to) / 2) + " " + number(ground - 2 * high) + " "
        + number(to) + " " + number(ground);
  }

  /** A bracket that opens upwards. */
  public static String bracket(double from, double to, double open, double closed) {
    return "M" + number(from) + " " + number(open) + "V" + number(closed) + "H" + number(to) + "V" + number(open);
  }

  /** A zigzag gap across the runway at {@code at}: here a stretch of the run-up is left out. */
  public static String gap(double at, double top, double bottom) {
    double step = (bottom - top + 4) / 6;
    StringBuilder out = new StringBuilder("M").append(number(at)).append(' ').append(number(top - 2));
    for (int i = 1; i <= 6; i++) {
      out.append('L').append(number(at + (i % 2 == 1 ? -4 : 0))).append(' ').append(number(top - 2 + i * step));
    }
    for (int i = 6; i >= 0; i--) {
      out.append('L').append(number(at + 6 + (i % 2 == 1 ? -4 : 0))).append(' ').append(number(top - 2 + i * step));
    }
    return out.append('Z').toString();
  }

  private static final int MOST_GRAINS = 90;
  /** Where grains lie along and across, and how large they are, each as a part of what there is. */
  private static final double[] GRAINS = new double[3 * MOST_GRAINS];

  static {
    Random random = new Random(19);
    for (int i = 0; i < GRAINS.length; i++) {
      GRAINS[i] = random.nextDouble();
    }
  }

  /** A few grains, the same every time. */
  public static List<Dot> grains(double from, double to, double top, double bottom) {
    List<Dot> out = new ArrayList<>();
    double high = bottom - top + 2 * StripDrawing.STAND_OUT - 4;
    int count = (int) Math.min(MOST_GRAINS, (to - from) * high / 70);
    for (int i = 0; i < count; i++) {
      double x = from + 2 + GRAINS[3 * i] * (to - from - 4);
      double y = top - StripDrawing.STAND_OUT + 2 + GRAINS[3 * i + 1] * high;
      out.add(new Dot(round(x), round(y), round(0.5 + 0.5 * GRAINS[3 * i + 2])));
    }
    return out;
  }

  /** Width of a figure set in the house's bold face, near enough to lay a line beneath it. */
  public static double textWidth(String text, double size) {
    double em = 0;
    for (int i = 0; i < text.length(); i++) {
      em +=
          switch (text.charAt(i)) {
            case ' ', '.', 'i', '-' -> 0.27;
            case 'f', 't', '/' -> 0.40;
            case 'm' -> 0.95;
            default -> 0.62;
          };
    }
    return em * size;
  }

  /** To two decimals. */
  public static double round(double value) {
    return hundredths(value) / 100;
  }

  /** A number for a path: two decimals at most, never with an exponent. In whole numbers of 32 bits, which a browser has. */
  public static String number(double value) {
    double all = Math.max(-MOST, Math.min(MOST, hundredths(value)));
    int size = (int) Math.abs(all);
    String whole = (all < 0 ? "-" : "") + size / 100;
    int rest = size % 100;
    return rest == 0 ? whole : whole + (rest < 10 ? ".0" : ".") + rest;
  }

  private static double hundredths(double value) {
    return Math.floor(value * 100 + 0.5);
  }
}
