package boundwright.picture;

import boundwright.load.Band;
import boundwright.load.GuardLimits;
import boundwright.load.account.DayLoad;
import boundwright.load.account.LegWeek;
import boundwright.picture.strip.RunwayStrip.Width;
import java.time.LocalDate;
import java.util.List;

/**
 * What each leg did, week by week, in standing-bound contacts beside the athlete's own weeks: the geometry of one picture, ready to be drawn. Units
 * are those of the drawing, y downwards. The left leg stands on the left, outlined; the right leg on the right, filled; both
 * are stacked by rung from standing upwards, the faster the darker (filled) or the closer hatched (outlined), with the
 * steps written in. A roof over the two shows both legs together, which the lines of caution and refusal are about.
 *
 * <p>Below are the sessions of the same weeks in jump contacts, against the handbooks' limits of a single session.
 *
 * @param width of the drawing
 * @param height of the drawing
 * @param form wide for desk and paper, narrow for a phone
 * @param title what the picture is, in a line
 * @param said what can be read from it, in sentences
 * @param rules hairlines of the scale and the two ground lines
 * @param bars one for each week, leg and rung with contacts
 * @param roofs one for each week with contacts
 * @param limits of the weeks and of the sessions
 * @param stems one for each session
 * @param swatches how the rungs are drawn
 * @param words everything written
 */
public record LoadPicture(
    double width,
    double height,
    Width form,
    String title,
    String said,
    List<Rule> rules,
    List<Bar> bars,
    List<Roof> roofs,
    List<Limit> limits,
    List<Stem> stems,
    List<Swatch> swatches,
    List<Lettering> words) {

  /** Takes copies. */
  public LoadPicture {
    rules = List.copyOf(rules);
    bars = List.copyOf(bars);
    roofs = List.copyOf(roofs);
    limits = List.copyOf(limits);
    stems = List.copyOf(stems);
    swatches = List.copyOf(swatches);
    words = List.copyOf(words);
  }

  /**
   * Draws the weeks.
   *
   * @param weeks oldest first, see {@link LegWeek#of}; at least one
   * @param days the days with work; those outside the weeks are passed over
   * @param session limits of a session for this athlete [jump contacts]
   * @param limits those that a week is held to beside the athlete's own weeks
   * @param form wide or narrow
   */
  public static LoadPicture of(List<LegWeek> weeks, List<DayLoad> days, Band session, GuardLimits limits, Width form) {
    return new LoadDrawing(weeks, days, session, limits, form).draw();
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
   * A straight horizontal line.
   *
   * @param ground whether bars or stems stand on it
   */
  public record Rule(double left, double right, double y, boolean ground) {}

  /**
   * One leg from one rung in one week.
   *
   * @param week 0 for the oldest
   * @param filled right
   * @param steps the rung, or {@link LegWeek#OTHER}
   * @param units standing-bound contacts
   * @param y its upper edge
   * @param fill colour of its ground
   * @param hatch lines across it; empty when filled, or from standing
   */
  public record Bar(
      int week, boolean filled, int steps, double units, double x, double y, double width, double height, String fill, String hatch) {}

  /**
   * Both legs together.
   *
   * @param units standing-bound contacts
   * @param path a line over both bars with its two ends turned down
   */
  public record Roof(int week, double units, double y, String path) {}

  /**
   * A limit.
   *
   * @param week 0 for the oldest; -1 for the limit of a session, which is the same in all of them
   * @param refuses whether it is refused above it (a full line) or care is asked (dashed)
   * @param contacts the limit, of weeks in standing-bound contacts, of a session in jump contacts
   * @param path the line, with a gap where a figure stands
   */
  public record Limit(int week, boolean refuses, double contacts, double y, String path) {}

  /**
   * A session.
   *
   * @param date the day
   * @param contacts of both legs
   * @param top its upper end
   * @param ground its lower end
   */
  public record Stem(LocalDate date, int contacts, double x, double top, double ground) {}

  /** How a rung is drawn: a small outlined and a small filled square. */
  public record Swatch(int steps, double x, double y, double size, String fill, String hatch) {}
}
