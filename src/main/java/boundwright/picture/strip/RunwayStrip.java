package boundwright.picture.strip;

import boundwright.picture.StripPaths;
import boundwright.quantity.LengthUnit;
import boundwright.runway.MarkAdvice;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The runway seen from above, with the feet that will fall on it: the geometry of one picture, ready to be drawn. All
 * lengths here are units of the drawing (one CSS pixel when it is shown at its own width), x to the right in the
 * direction of travel, y downwards. A long sequence is folded into rows as text is into lines.
 *
 * <p>Right feet lie in the lower half, filled; left feet in the upper half, outlined. Nothing is told by colour alone.
 *
 * @param width of the drawing
 * @param height of the drawing
 * @param form wide for desk and paper, narrow for a phone
 * @param flat whether there is no sand and distances count from the take-off mark
 * @param bandOpacity how strongly bands are laid on, 0 to 1
 * @param title what the picture is, in a line
 * @param said what can be read from it, in sentences
 * @param rows from the start of the runway to its end
 */
public record RunwayStrip(
    double width, double height, Width form, boolean flat, double bandOpacity, String title, String said, List<Row> rows) {

  /** Takes a copy. */
  public RunwayStrip {
    rows = List.copyOf(rows);
  }

  /** {@link #width} as written in the drawing. */
  public String widthText() {
    return StripPaths.number(width);
  }

  /** {@link #height} as written in the drawing. */
  public String heightText() {
    return StripPaths.number(height);
  }

  /** The two widths in which the strip is drawn. */
  public enum Width {
    /** 720 units, for a desk and for paper. */
    WIDE(720, "strip-wide"),
    /** 328 units, for a phone held upright: one of 360 less its edges, so that a unit is a pixel there. */
    NARROW(328, "strip-narrow");

    private final double units;
    private final String cssClass;

    Width(double units, String cssClass) {
      this.units = units;
      this.cssClass = cssClass;
    }

    /** Width of the drawing, its own units. */
    public double units() {
      return units;
    }

    /** Class of the drawing in the style sheet. */
    public String cssClass() {
      return cssClass;
    }
  }

  /** The wide strip of a drill that ends in sand, distances from the near edge of the sand. */
  public static RunwayStrip of(MarkAdvice advice, LengthUnit unit) {
    return of(advice, unit, Width.WIDE);
  }

  /** The strip of a drill that ends in sand, in the width asked. */
  public static RunwayStrip of(MarkAdvice advice, LengthUnit unit, Width width) {
    return new StripDrawing(advice, unit, width, false).draw();
  }

  /** The wide strip of a drill on the flat, distances from the take-off mark. */
  public static RunwayStrip ofFlat(MarkAdvice advice, LengthUnit unit) {
    return ofFlat(advice, unit, Width.WIDE);
  }

  /** The strip of a drill on the flat, in the width asked. */
  public static RunwayStrip ofFlat(MarkAdvice advice, LengthUnit unit, Width width) {
    return new StripDrawing(advice, unit, width, true).draw();
  }

  /**
   * One stretch of the runway. Its parts keep the x of the whole runway; the row shows {@code x} to {@code x + width}.
   *
   * @param x where the stretch begins
   * @param width how long it is
   * @param y top of the row in the drawing
   * @param height of the row
   * @param top upper edge of the runway in the row
   * @param bottom lower edge of the runway in the row
   * @param sandX where the sand begins, or null if it does not in this row
   * @param grains dots in the sand
   * @param breakPath outline of the break in the run-up, or null
   * @param ticks the scale
   * @param bands where contacts will fall, 5 to 95 %, on the runway
   * @param whiskers the same below the runway, without overlap
   * @param tapes start mark and take-off mark
   * @param bracket the window, or null
   * @param arcs the flights
   * @param prints the feet
   * @param texts everything written
   */
  public record Row(
      double x,
      double width,
      double y,
      double height,
      double top,
      double bottom,
      @Nullable Double sandX,
      List<Dot> grains,
      @Nullable String breakPath,
      List<Tick> ticks,
      List<Band> bands,
      List<Whisker> whiskers,
      List<Tape> tapes,
      @Nullable Bracket bracket,
      List<Arc> arcs,
      List<Print> prints,
      List<Text> texts) {
    /** The part of the runway's own space that the row shows. */
    public String viewBox() {
      return StripPaths.number(x) + " 0 " + StripPaths.number(width) + " " + StripPaths.number(height);
    }

    /** Right edge of what the row shows. */
    public double right() {
      return x + width;
    }
  }

  /** A grain of sand. */
  public record Dot(double x, double y, double r) {}

  /**
   * A stroke of the scale, hanging from the runway's lower edge.
   *
   * @param length of the stroke
   */
  public record Tick(double x, double y, double length) {}

  /**
   * The soft band under a foot.
   *
   * @param left its 5 % point
   * @param right its 95 % point
   * @param path a lens from one to the other
   */
  public record Band(double left, double right, String path) {}

  /**
   * The 90 % interval of a contact or of the landing, below the runway.
   *
   * @param contact of which it is; one more than the sequence has for the landing
   * @param lane 0 is the uppermost
   * @param filled whether the dot at the median is filled (right, and the landing)
   * @param landing whether it is the landing's
   */
  public record Whisker(
      int contact, double left, double middle, double right, double y, int lane, boolean filled, boolean landing) {}

  /**
   * A tape across the runway.
   *
   * @param x its middle
   * @param hollow drawn as an outline: no place is good enough
   * @param stemTop where the stem of its figure ends
   * @param flagTo how far the line under its figure goes
   */
  public record Tape(double x, double y, double height, boolean hollow, double stemTop, double flagTo) {}

  /** The window: the tape may lie anywhere between. */
  public record Bracket(double left, double right, String path) {}

  /** A flight. */
  public record Arc(double left, double right, Kind kind, String path) {
    /** How a flight is drawn. */
    public enum Kind {
      /** High, solid. */
      HOP,
      /** Low, solid. */
      BOUND,
      /** High, heavy, dashed. */
      JUMP
    }
  }

  /**
   * The print of a foot.
   *
   * @param contact 1 for the first; one more than the sequence has for the landing
   * @param filled right
   */
  public record Print(int contact, double x, double y, double length, boolean filled, String path) {}

  /**
   * A word or figure.
   *
   * @param anchor start, middle or end, as in SVG
   */
  public record Text(double x, double y, double size, String anchor, Tone tone, String said) {
    /** What a text is, and so how it is set. */
    public enum Tone {
      /** A mark's distance: big and bold. */
      FIGURE,
      /** A small word in spaced capitals. */
      CAPTION,
      /** A label of the scale. */
      SCALE,
      /** A contact's number on the runway. */
      COUNT
    }
  }
}
