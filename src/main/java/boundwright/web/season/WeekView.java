package boundwright.web.season;

import boundwright.season.sheet.WeekSheet.Cell;
import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A week on the phone: day by day, who does what.
 *
 * @param season its number
 * @param name of the season
 * @param title which week
 * @param before a day of the week before
 * @param after a day of the week after
 * @param of a day of this week
 * @param days Monday to Sunday
 * @param draft what waits to be published and is shown, or null
 */
public record WeekView(long season, String name, String title, LocalDate before, LocalDate after, LocalDate of, List<Day> days, @Nullable Draft draft) {
  /** Takes a copy. */
  public WeekView {
    days = List.copyOf(days);
  }

  /**
   * What waits to be published.
   *
   * @param number which proposal
   * @param changed how many days change, in a sentence
   * @param against why it cannot be published; empty if it can
   */
  public record Draft(long number, String changed, List<String> against) {
    /** Takes a copy. */
    public Draft {
      against = List.copyOf(against);
    }
  }

  /**
   * A day.
   *
   * @param date which
   * @param title in words
   * @param today whether it is today
   * @param open whether it is shown unfolded: today, or the first day of another week on which somebody has something to do
   * @param who how many have something to do, in words
   * @param meets what meets there are, or empty
   * @param lines athletes who have something to do
   */
  public record Day(LocalDate date, String title, boolean today, boolean open, String who, String meets, List<Line> lines) {
    /** Takes a copy. */
    public Day {
      lines = List.copyOf(lines);
    }
  }

  /**
   * An athlete on a day.
   *
   * @param why address that says why, or empty if there is no session
   * @param move address that says where it may go, or empty if it may not
   */
  public record Line(String athlete, Cell cell, String why, String move) {}
}
