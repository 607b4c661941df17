package boundwright.picture;

/** How a rung is told from another without colour alone: the faster, the darker a filled ground and the closer the hatching. */
public final class RungInk {
  /** From standing to twelve steps and beyond, pale brick to ink. */
  private static final String[] FILLS = {"#e2bba7", "#cf9075", "#bb6448", "#a03f29", "#7d2f1d", "#562114", "#2a130c"};
  /** Space between hatching lines, drawing units; none from standing. */
  private static final double[] SPACES = {0, 9, 6.5, 4.8, 3.6, 2.7, 2.0};
  private static final int FIRST_DARK = 2;
  /** Work without a run-up of its own: paler than standing, and hatched level. */
  private static final String OTHER_FILL = "#f0dfcb";
  private static final double OTHER_SPACE = 4;

  private RungInk() {}

  static String fill(int steps) {
    return steps < 0 ? OTHER_FILL : FILLS[depth(steps)];
  }

  /** How words on the filled ground are set. */
  static Lettering.Style on(int steps) {
    return depth(steps) >= FIRST_DARK ? Lettering.Style.ON_DARK : Lettering.Style.BOLD;
  }

  static String name(int steps) {
    return steps < 0 ? "other work" : steps == 0 ? "standing" : steps == 1 ? "1 step" : steps + " steps";
  }

  private static int depth(int steps) {
    return Math.min(FILLS.length - 1, Math.max(0, steps + 1) / 2);
  }

  /** Lines that rise to the right across a rectangle, for the outlined leg. */
  public static String hatch(int steps, double x, double y, double width, double height) {
    if (steps < 0) {
      return level(x, y, width, height);
    }
    double space = SPACES[depth(steps)];
    if (space == 0) {
      return "";
    }
    StringBuilder out = new StringBuilder();
    // a line x + y = c for each c; it enters at the left or lower edge and leaves at the upper or right one
    double first = Math.ceil((x + y) / space) * space;
    for (double c = first; c < x + width + y + height; c += space) {
      double fromX = Math.max(x, c - (y + height));
      double toX = Math.min(x + width, c - y);
      if (toX - fromX > 0.3) {
        out.append('M').append(StripPaths.number(fromX)).append(' ').append(StripPaths.number(c - fromX)).append('L')
            .append(StripPaths.number(toX)).append(' ').append(StripPaths.number(c - toX));
      }
    }
    return out.toString();
  }

  private static String level(double x, double y, double width, double height) {
    StringBuilder out = new StringBuilder();
    for (double at = y + OTHER_SPACE / 2; at < y + height; at += OTHER_SPACE) {
      out.append('M').append(StripPaths.number(x)).append(' ').append(StripPaths.number(at)).append('H').append(StripPaths.number(x + width));
    }
    return out.toString();
  }
}
