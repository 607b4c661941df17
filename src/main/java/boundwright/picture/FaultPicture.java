package boundwright.picture;

import boundwright.picture.strip.RunwayStrip.Width;
import boundwright.technique.FaultCatalogue;
import boundwright.technique.FaultTrends;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Which faults were seen on which contacts of a drill: one row for each fault, one column for each contact, headed by its foot
 * (right filled, left outlined). Each count is written, and laid on the darker the larger its share of the reps that were
 * judged on that contact. The contact to look at, one before the fault first shows, is framed. A long drill is folded into
 * blocks as text is into lines; contacts at its end on which nothing was seen are left out, and named.
 *
 * @param width of the drawing
 * @param height of the drawing
 * @param form wide for desk and paper, narrow for a phone
 * @param title what the picture is, in a line
 * @param said what can be read from it, in sentences
 * @param heads the feet over the columns
 * @param cells the counts
 * @param frames where to look
 * @param lines hairlines between the rows
 * @param words everything written
 */
public record FaultPicture(
    double width,
    double height,
    Width form,
    String title,
    String said,
    List<Head> heads,
    List<Cell> cells,
    List<Frame> frames,
    List<Line> lines,
    List<Lettering> words) {

  /** Takes copies. */
  public FaultPicture {
    heads = List.copyOf(heads);
    cells = List.copyOf(cells);
    frames = List.copyOf(frames);
    lines = List.copyOf(lines);
    words = List.copyOf(words);
  }

  /**
   * Draws the map of one drill.
   *
   * @param trends of the drill
   * @param faults the names of the faults
   * @param form wide or narrow
   */
  public static FaultPicture of(FaultTrends trends, FaultCatalogue faults, Width form) {
    return new FaultDrawing(trends, faults, form).draw();
  }

  /** {@link #width} as written in the drawing. */
  public String widthText() {
    return StripPaths.number(width);
  }

  /** {@link #height} as written in the drawing. */
  public String heightText() {
    return StripPaths.number(height);
  }

  /** The print of a foot over a column. */
  public record Head(int contact, boolean filled, String path) {}

  /**
   * A count.
   *
   * @param fault the fault's key
   * @param contact counted from 1; null for the column of reps in which it was not said where
   * @param count at least 1
   * @param of reps that were judged there
   * @param depth how dark, 0 to 1: the share
   */
  public record Cell(
      String fault, @Nullable Integer contact, int count, int of, double depth, double x, double y, double width, double height) {}

  /**
   * Where to look.
   *
   * @param fault the fault's key
   * @param contact counted from 1; 0 for the run-up
   */
  public record Frame(String fault, int contact, double x, double y, double width, double height) {}

  /** A hairline. */
  public record Line(double left, double right, double y) {}
}
