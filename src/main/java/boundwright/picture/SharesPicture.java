package boundwright.picture;

import boundwright.jump.BestShares;
import boundwright.jump.PhaseClass;
import boundwright.jump.ReferenceJump;
import boundwright.jump.Shares;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The triangle of shares: hop to the left, jump to the right, step upwards. It shows the part of the triangle in which
 * jumps lie, with the athlete's own jumps, what they have shown that they can reach, the plateau around their best
 * shares, and published jumps as what they are. Units are those of the drawing, y downwards.
 *
 * @param width of the drawing
 * @param height of the drawing
 * @param title what the picture is, in a line
 * @param said what can be read from it, in sentences
 * @param classes the parts of the triangle that belong to a class
 * @param grid thin lines of equal share
 * @param frame outline of the triangle
 * @param reachable outline of the shares within what was shown, or empty
 * @param plateau outline of the shares within 5 cm of the best, or empty
 * @param marks jumps, best and references, drawn in this order
 * @param keys what the marks mean, below the triangle
 * @param texts everything else that is written
 */
public record SharesPicture(
    double width,
    double height,
    String title,
    String said,
    List<Area> classes,
    String grid,
    String frame,
    String reachable,
    String plateau,
    List<Mark> marks,
    List<KeyLine> keys,
    List<Text> texts) {
  /** Takes copies. */
  public SharesPicture {
    classes = List.copyOf(classes);
    marks = List.copyOf(marks);
    keys = List.copyOf(keys);
    texts = List.copyOf(texts);
  }

  /**
   * A jump of the athlete.
   *
   * @param shares of its three lengths
   * @param newest whether it is the last one entered
   */
  public record Shown(Shares shares, boolean newest) {}

  /**
   * Draws the triangle.
   *
   * @param jumps of the athlete, any number
   * @param best their best shares, or null while too few jumps are measured with speeds
   * @param references published jumps to show
   * @param threshold of the classes, in percentage points
   */
  public static SharesPicture of(
      List<Shown> jumps, @Nullable BestShares best, List<ReferenceJump> references, double threshold) {
    return new SharesDrawing(jumps, best, references, threshold).draw();
  }

  /** {@link #width} as written in the drawing. */
  public String widthText() {
    return StripPaths.number(width);
  }

  /** {@link #height} as written in the drawing. */
  public String heightText() {
    return StripPaths.number(height);
  }

  /**
   * The part of the triangle in which a class rules.
   *
   * @param of which
   * @param path its outline
   */
  public record Area(PhaseClass of, String path) {}

  /** What a mark stands for, and so its shape. */
  public enum Kind {
    /** A jump of the athlete: a dot. */
    JUMP,
    /** The newest jump: a dot in a ring. */
    NEWEST,
    /** As they jump now, by their usual speeds: a ring with a cross. */
    NOW,
    /** Their best: a lozenge. */
    BEST,
    /** Their best, on the edge of what was shown: a lozenge with a bar. */
    BEST_ON_BOUND,
    /** A published jump: a square with its number. */
    REFERENCE,
    /** In the key: a patch of the plateau. */
    PLATEAU,
    /** In the key: a patch of what was shown. */
    REACHABLE
  }

  /**
   * A mark.
   *
   * @param number of a reference, else empty
   */
  public record Mark(Kind kind, double x, double y, String number) {}

  /**
   * A line of the key.
   *
   * @param mark as it is drawn above
   * @param said what it is
   */
  public record KeyLine(Mark mark, double x, double y, String said) {}

  /**
   * A word or figure.
   *
   * @param turn degrees about its own point
   * @param strong whether it is set bold
   */
  public record Text(double x, double y, double size, String anchor, double turn, boolean strong, String said) {
    /** As an SVG transform. */
    public String transform() {
      return "rotate(" + StripPaths.number(turn) + " " + StripPaths.number(x) + " " + StripPaths.number(y) + ")";
    }
  }
}
