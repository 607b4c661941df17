package boundwright.picture;

/** The outline of a shoe sole seen from above, toe to the right. Own drawing. */
public final class Sole {
  /** A right foot of length 1 about its middle: the curves of a closed path, x and y in turn. */
  private static final double[] RIGHT = {
    -0.50, 0.00,
    -0.50, -0.17, -0.34, -0.19, -0.22, -0.16,
    -0.10, -0.13, -0.02, -0.16, 0.08, -0.21,
    0.26, -0.29, 0.50, -0.22, 0.50, -0.04,
    0.50, 0.14, 0.32, 0.23, 0.14, 0.22,
    0.00, 0.21, -0.10, 0.15, -0.22, 0.17,
    -0.36, 0.19, -0.50, 0.16, -0.50, 0.00
  };

  private Sole() {}

  /** The path of a sole of this length with its middle at (x, y); a left foot is a right one mirrored. */
  public static String path(double x, double y, double length, boolean right) {
    double side = right ? 1 : -1;
    StringBuilder out = new StringBuilder(160);
    for (int i = 0; i < RIGHT.length; i += 2) {
      out.append(i == 0 ? "M" : i % 6 == 2 ? "C" : " ")
          .append(StripPaths.number(x + length * RIGHT[i]))
          .append(' ')
          .append(StripPaths.number(y + side * length * RIGHT[i + 1]));
    }
    return out.append('Z').toString();
  }
}
