package boundwright.picture;

import boundwright.flight.Rep;
import boundwright.picture.strip.RunwayStrip.Width;
import boundwright.readiness.DrillFamily;
import boundwright.readiness.GateAnswer;
import java.util.List;

/**
 * The ladder of approach steps for each family of drills: where the athlete stands, which reps were judged on which rung, and
 * what the gate answers. Units are those of the drawing, y downwards; standing is the lowest rung. A clean rep is a filled
 * mark, a faulty one an outlined mark with a stroke through it, in the order done.
 *
 * @param width of the drawing
 * @param height of the drawing
 * @param form wide for desk and paper (ladders side by side), narrow for a phone (one below the other)
 * @param title what the picture is, in a line
 * @param said what can be read from it, in sentences
 * @param ladders one for each answer
 * @param words everything written
 */
public record LadderPicture(
    double width, double height, Width form, String title, String said, List<Ladder> ladders, List<Lettering> words) {

  /** Takes copies. */
  public LadderPicture {
    ladders = List.copyOf(ladders);
    words = List.copyOf(words);
  }

  /**
   * Draws the ladders.
   *
   * @param answers the gate's, one for each family
   * @param reps of the athlete in the days that the gate looks at; those that were not judged are passed over
   * @param form wide or narrow
   */
  public static LadderPicture of(List<GateAnswer> answers, List<Rep> reps, Width form) {
    return new LadderDrawing(answers, reps, form).draw();
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
   * The ladder of one family.
   *
   * @param family of drills
   * @param rails the two uprights
   * @param rungs from standing upwards
   * @param marks the judged reps
   * @param arrow from the rung up or down to where the gate says to go; empty when it says stay
   */
  public record Ladder(DrillFamily family, String rails, List<Rung> rungs, List<Mark> marks, String arrow) {
    /** Takes copies. */
    public Ladder {
      rungs = List.copyOf(rungs);
      marks = List.copyOf(marks);
    }
  }

  /**
   * A rung.
   *
   * @param steps approach steps
   * @param here whether the athlete stands on it
   * @param foot the print of a foot on it; empty where the athlete does not stand
   */
  public record Rung(int steps, boolean here, double left, double right, double y, String foot) {}

  /**
   * A judged rep.
   *
   * @param steps the rung it was done from
   * @param clean nothing was seen wrong
   */
  public record Mark(int steps, boolean clean, double x, double y, double radius) {
    /** The stroke through a faulty one. */
    public String stroke() {
      double reach = radius * 1.35;
      return "M" + StripPaths.number(x - reach) + " " + StripPaths.number(y + reach) + "L" + StripPaths.number(x + reach) + " "
          + StripPaths.number(y - reach);
    }
  }
}
