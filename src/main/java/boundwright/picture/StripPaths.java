package boundwright.picture;

import boundwright.picture.strip.RunwayStrip.Dot;
import boundwright.picture.strip.StripDrawing;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/** The shapes of the strip as SVG paths, and the numbers in them. */
public final class StripPaths {
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

  /** A few grains, the same every time. */
  public static List<Dot> grains(double from, double to, double top, double bottom) {
    Random random = new Random(19);
    List<Dot> out = new ArrayList<>();
    double high = bottom - top + 2 * StripDrawing.STAND_OUT - 4;
    int count = (int) Math.min(90, (to - from) * high / 70);
    for (int i = 0; i < count; i++) {
      double x = from + 2 + random.nextDouble() * (to - from - 4);
      double y = top - StripDrawing.STAND_OUT + 2 + random.nextDouble() * high;
      out.add(new Dot(round(x), round(y), round(0.5 + 0.5 * random.nextDouble())));
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
    return Math.round(value * 100) / 100.0;
  }

  /** A number for a path: two decimals at most, never with an exponent. */
  public static String number(double value) {
    long hundredths = Math.round(value * 100);
    if (hundredths % 100 == 0) {
      return Long.toString(hundredths / 100);
    }
    String sign = hundredths < 0 ? "-" : "";
    long size = Math.abs(hundredths);
    return sign + size / 100 + "." + (size % 100 < 10 ? "0" : "") + size % 100;
  }
}
