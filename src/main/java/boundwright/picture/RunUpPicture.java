package boundwright.picture;

import boundwright.approach.run.RunUpPlan;
import boundwright.approach.run.RunwaySpread;
import boundwright.approach.run.StepModel;
import boundwright.footfall.Foot;
import boundwright.picture.strip.RunwayStrip;
import boundwright.quantity.LengthUnit;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The full run-up from above, start mark at the left, board at the right: each step's foot, the three marks, and below
 * the runway, enlarged, how widely the foot falls at each step and where steering starts. Right feet lie in the lower
 * half, filled; left feet in the upper half, outlined. Units are those of the drawing, y downwards.
 *
 * @param width of the drawing
 * @param height of the drawing
 * @param form wide for desk and paper, narrow for a phone
 * @param title what the picture is, in a line
 * @param said what can be read from it, in sentences
 * @param top upper edge of the runway
 * @param bottom lower edge of the runway
 * @param boardX the take-off line
 * @param marks start, the coach's check mark, the athlete's early mark
 * @param prints the feet
 * @param ticks the scale along the runway
 * @param grid thin lines of the spread's field
 * @param spreads the spread at each step, or none when too few runs are measured
 * @param steering bracket over the steps in which the athlete steers, or empty
 * @param texts everything written
 */
public record RunUpPicture(
    double width,
    double height,
    RunwayStrip.Width form,
    String title,
    String said,
    double top,
    double bottom,
    double boardX,
    List<Mark> marks,
    List<RunwayStrip.Print> prints,
    List<RunwayStrip.Tick> ticks,
    String grid,
    List<Spread> spreads,
    String steering,
    List<SharesPicture.Text> texts) {
  /** Takes copies. */
  public RunUpPicture {
    marks = List.copyOf(marks);
    prints = List.copyOf(prints);
    ticks = List.copyOf(ticks);
    spreads = List.copyOf(spreads);
    texts = List.copyOf(texts);
  }

  /**
   * Draws it.
   *
   * @param plan start mark, check mark, early mark
   * @param steps the athlete's step lengths
   * @param spread along the runway, or null while it is not known
   * @param takeOff the foot of the last step
   */
  public static RunUpPicture of(
      RunUpPlan plan, StepModel steps, @Nullable RunwaySpread spread, Foot takeOff, LengthUnit unit, RunwayStrip.Width form) {
    return new RunUpDrawing(plan, steps, spread, takeOff, unit, form).draw();
  }

  /** {@link #width} as written in the drawing. */
  public String widthText() {
    return StripPaths.number(width);
  }

  /** {@link #height} as written in the drawing. */
  public String heightText() {
    return StripPaths.number(height);
  }

  /** A mark beside the runway, with the stem to its figure. */
  public record Mark(double x, String stem) {}

  /**
   * The spread at one step.
   *
   * @param x the step's place
   * @param floor where the bar stands
   * @param y top of the bar, the middle of what is believed
   * @param least its 5 % end
   * @param most its 95 % end
   */
  public record Spread(double x, double floor, double y, double least, double most) {}
}
