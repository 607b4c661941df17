package boundwright.picture;

import boundwright.approach.aim.AimAdvice;
import boundwright.approach.aim.Goal;
import boundwright.approach.aim.JumpForm;
import boundwright.footfall.Foot;
import boundwright.picture.strip.RunwayStrip;
import boundwright.quantity.LengthUnit;
import java.util.List;

/**
 * What an aim is worth: the board at the right as on the runway, the aim behind it to the left. Above, what the attempts
 * bring in the end; below, the chance of a foul; on the runway, the foot where it falls now and where it should fall.
 * Units are those of the drawing, y downwards.
 *
 * @param width of the drawing
 * @param height of the drawing
 * @param title what the picture is, in a line
 * @param said what can be read from it, in sentences
 * @param top upper edge of the worth's field
 * @param floor lower edge of it
 * @param foulTop upper edge of the fouls' field
 * @param foulFloor lower edge of it
 * @param left left edge of both fields
 * @param right right edge of both fields
 * @param runwayTop upper edge of the runway
 * @param runwayBottom lower edge of the runway
 * @param lineX the take-off line
 * @param grid thin lines
 * @param worth the curve of the worth
 * @param fouls the curve of the foul chance
 * @param foulArea the same, closed to its floor
 * @param range aims that could be best, given how well the spread is known: left end and right end
 * @param rails upright lines at the aim and where the foot falls now
 * @param bands where nine feet in ten fall
 * @param prints the feet
 * @param texts everything written
 */
public record AimPicture(
    double width,
    double height,
    String title,
    String said,
    double top,
    double floor,
    double foulTop,
    double foulFloor,
    double left,
    double right,
    double runwayTop,
    double runwayBottom,
    double lineX,
    String grid,
    String worth,
    String fouls,
    String foulArea,
    String range,
    List<Rail> rails,
    List<RunwayStrip.Band> bands,
    List<RunwayStrip.Print> prints,
    List<SharesPicture.Text> texts) {
  /** Takes copies. */
  public AimPicture {
    rails = List.copyOf(rails);
    bands = List.copyOf(bands);
    prints = List.copyOf(prints);
    texts = List.copyOf(texts);
  }

  /**
   * Draws it.
   *
   * @param form of the athlete
   * @param goal what the attempts are for
   * @param attempts 1 to 6
   * @param advice the advised aim and the present one, for the same form, goal and attempts
   * @param takeOff the foot that takes off
   */
  public static AimPicture of(JumpForm form, Goal goal, int attempts, AimAdvice advice, Foot takeOff, LengthUnit unit) {
    return new AimDrawing(form, goal, attempts, advice, takeOff, unit).draw();
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
   * An upright line through both fields down to the runway.
   *
   * @param advised the advised aim, solid; else the present one, dashed
   * @param path of the line
   * @param worthY where it meets the curve of the worth
   * @param foulY where it meets the curve of the fouls
   */
  public record Rail(boolean advised, double x, double worthY, double foulY, String path) {}
}
