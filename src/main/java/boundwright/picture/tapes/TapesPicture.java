package boundwright.picture.tapes;

import boundwright.picture.Lettering;
import boundwright.picture.StripPaths;
import boundwright.picture.strip.RunwayStrip.Dot;
import boundwright.quantity.LengthUnit;
import java.util.List;

/**
 * The runway from above with every tape of the day on it: from left to right with the sand at the right end where all names find
 * room below it, else from the sand downwards with the names beside it. All lengths are units of the drawing.
 *
 * @param width of the drawing
 * @param height of the drawing
 * @param along whether the runway lies from left to right
 * @param title what the picture is, in a line
 * @param said what can be read from it, in sentences
 * @param runway the brick
 * @param sand the sand at its end
 * @param grains dots in the sand
 * @param scale strokes of the scale, as a path
 * @param bars the tapes
 * @param leaders from each tape to its figure, as paths
 * @param words figures, names and the scale's labels
 */
public record TapesPicture(
    double width, double height, boolean along, String title, String said, Box runway, Box sand, List<Dot> grains, String scale, List<Bar> bars,
    List<String> leaders, List<Lettering> words) {
  /** Takes copies. */
  public TapesPicture {
    grains = List.copyOf(grains);
    bars = List.copyOf(bars);
    leaders = List.copyOf(leaders);
    words = List.copyOf(words);
  }

  /**
   * A tape to be drawn.
   *
   * @param at_m from the near edge of the sand [m]
   * @param sure whether it is good enough; if not, it is drawn as an outline
   * @param lines under its figure, each of names or a drill and names
   */
  public record Laid(double at_m, boolean sure, List<String> lines) {
    /** Takes a copy. */
    public Laid {
      lines = List.copyOf(lines);
    }
  }

  /** A rectangle. */
  public record Box(double x, double y, double width, double height) {}

  /**
   * A tape across the runway.
   *
   * @param hollow drawn as an outline: not sure
   */
  public record Bar(Box box, boolean hollow) {}

  /** For a desk; {@code laid} in any order. */
  public static TapesPicture wide(List<Laid> laid, LengthUnit unit) {
    return new TapesDrawing(laid, unit).wide();
  }

  /** For a phone. */
  public static TapesPicture narrow(List<Laid> laid, LengthUnit unit) {
    return new TapesDrawing(laid, unit).down();
  }

  /** {@link #width} as written in the drawing. */
  public String widthText() {
    return StripPaths.number(width);
  }

  /** {@link #height} as written in the drawing. */
  public String heightText() {
    return StripPaths.number(height);
  }
}
