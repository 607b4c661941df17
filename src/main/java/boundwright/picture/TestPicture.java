package boundwright.picture;

import boundwright.picture.strip.RunwayStrip.Width;
import boundwright.quantity.LengthUnit;
import boundwright.readiness.TestError;
import boundwright.readiness.TestScore;
import boundwright.readiness.TestTrend;
import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * One athlete's scores in one test over time. Each score stands with the test's typical error to either side; the ground
 * behind them is what that error explains of a change from the first comparable score (minimal detectable change); the
 * athlete's own line in the squad's trend is drawn with its 90 % interval. Scores by another protocol than the latest are
 * crosses and not compared. A test of the left leg has outlined dots, all others filled ones. Units are those of the
 * drawing, y downwards.
 *
 * @param width of the drawing
 * @param height of the drawing
 * @param form wide for desk and paper, narrow for a phone
 * @param title what the picture is, in a line
 * @param said what can be read from it, in sentences
 * @param filled whether dots are filled
 * @param grid hairlines of the scale, and the ground line
 * @param band what the error explains, or null when the error is not known
 * @param trend the line, or null when there is none
 * @param dots the scores, oldest first
 * @param words everything written
 */
public record TestPicture(
    double width,
    double height,
    Width form,
    String title,
    String said,
    boolean filled,
    List<Grid> grid,
    @Nullable Band band,
    @Nullable Trend trend,
    List<Dot> dots,
    List<Lettering> words) {

  /** Takes copies. */
  public TestPicture {
    grid = List.copyOf(grid);
    dots = List.copyOf(dots);
    words = List.copyOf(words);
  }

  /**
   * Draws one test.
   *
   * @param scores of one athlete in one test and from the same steps, at least one; any order
   * @param error of the test in this squad, or null when it is not known
   * @param trend of the squad in the same test, or null when there is none
   * @param unit in which lengths are written
   * @param form wide or narrow
   * @throws boundwright.quantity.RefusedException without a score
   */
  public static TestPicture of(List<TestScore> scores, @Nullable TestError error, @Nullable TestTrend trend, LengthUnit unit, Width form) {
    return new TestDrawing(scores, error, trend, unit, form, false).draw();
  }

  /**
   * As {@link #of}, for those who do not coach: the scores and what the test can miss by, said in plain words, without the squad's trend.
   */
  public static TestPicture plain(List<TestScore> scores, @Nullable TestError error, LengthUnit unit, Width form) {
    return new TestDrawing(scores, error, null, unit, form, true).draw();
  }

  /** {@link #width} as written in the drawing. */
  public String widthText() {
    return StripPaths.number(width);
  }

  /** {@link #height} as written in the drawing. */
  public String heightText() {
    return StripPaths.number(height);
  }

  /** A horizontal line. */
  public record Grid(double left, double right, double y, boolean ground) {}

  /** What the error of the test explains: all changes that end within. */
  public record Band(double x, double top, double width, double height) {
    /** Its middle, the first score. */
    public double middle() {
      return top + height / 2;
    }
  }

  /**
   * The athlete's own line.
   *
   * @param line its middle
   * @param interval its two edges, nine in ten
   */
  public record Trend(String line, String interval) {}

  /**
   * A score.
   *
   * @param date when
   * @param value the score in the unit of the test
   * @param compared whether it was done as the latest was
   * @param whisker a line over the typical error to either side; empty when it is not known or the score is not compared
   */
  public record Dot(LocalDate date, double value, boolean compared, double x, double y, String whisker) {
    /** A cross, for a score that is not compared. */
    public String cross() {
      return "M" + StripPaths.number(x - 3.5) + " " + StripPaths.number(y - 3.5) + "l7 7M" + StripPaths.number(x - 3.5) + " "
          + StripPaths.number(y + 3.5) + "l7 -7";
    }
  }
}
