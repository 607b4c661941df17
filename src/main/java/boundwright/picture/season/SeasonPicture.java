package boundwright.picture.season;

import boundwright.picture.Lettering;
import java.util.List;

/**
 * The head or one row of a season's table, ready to be drawn; head and rows of the same scale stand above each other week by week. Units are
 * those of the drawing, y downwards. Left legs are outlined, right legs filled.
 *
 * @param width of the drawing
 * @param height of the drawing
 * @param title what it is, in a line
 * @param said what can be read from it, in sentences
 * @param shapes from the ground up
 * @param words everything written
 */
public record SeasonPicture(double width, double height, String title, String said, List<Shape> shapes, List<Lettering> words) {
  /** Takes copies. */
  public SeasonPicture {
    shapes = List.copyOf(shapes);
    words = List.copyOf(words);
  }

  /**
   * One form.
   *
   * @param what it stands for
   * @param path its outline
   * @param fill colour, or {@code none}
   * @param stroke colour, or {@code none}
   * @param thickness of the stroke
   * @param dashes of the stroke, or {@code none}
   */
  public record Shape(What what, String path, String fill, String stroke, double thickness, String dashes) {}

  /** What a form stands for. */
  public enum What {
    /** A lighter week. */
    LIGHTER,
    /** The ground that bars stand on. */
    GROUND,
    /** Where a month or a week begins. */
    RULE,
    /** A leg's load as planned. */
    PLANNED,
    /** A leg's load as done. */
    DONE,
    /** What is wanted of a week. */
    WANTED,
    /** The day it is looked at. */
    TODAY,
    /** A meet. */
    MEET,
    /** A day on which an approach is decided. */
    DECISION,
    /** A longer approach begins. */
    STEPS,
    /** A test week. */
    TEST,
    /** How likely an approach is. */
    CHANCE,
    /** Where the load of most simulated seasons lies. */
    BAND
  }

  /**
   * How wide and high, in drawing units.
   *
   * @param week width of a week
   * @param row height of an athlete's row
   * @param type size of figures and names
   * @param small size of the days above the weeks and the numbers of the meets
   */
  public record Size(double week, double row, double type, double small) {
    /** For a screen: nothing below 12 pixels. */
    public static final Size SCREEN = new Size(20, 50, 12, 12);
  }
}
