package boundwright.picture.growth;

import boundwright.picture.Lettering;
import java.util.List;

/**
 * How somebody grew, ready to be drawn: above, heights as dots on the curve with its band; below, how fast, with its band and the speed above which it
 * is fast. Days run the same in both. Units are those of the drawing, y downwards.
 *
 * @param width of the drawing
 * @param height of the drawing
 * @param title what it is, in a line
 * @param said what can be read from it, in sentences
 * @param shapes from the ground up
 * @param dots the heights
 * @param words everything written
 */
public record GrowthPicture(double width, double height, String title, String said, List<Shape> shapes, List<Dot> dots, List<Lettering> words) {
  /** Takes copies. */
  public GrowthPicture {
    shapes = List.copyOf(shapes);
    dots = List.copyOf(dots);
    words = List.copyOf(words);
  }

  /**
   * One form.
   *
   * @param path its outline
   * @param fill colour, or {@code none}
   * @param stroke colour, or {@code none}
   * @param thickness of the stroke
   * @param dashes of the stroke, or {@code none}
   */
  public record Shape(String path, String fill, String stroke, double thickness, String dashes) {}

  /** A height. */
  public record Dot(double x, double y) {}
}
