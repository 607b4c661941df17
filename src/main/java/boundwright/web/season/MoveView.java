package boundwright.web.season;

import java.time.LocalDate;
import java.util.List;

/**
 * Where a session may go.
 *
 * @param season its number
 * @param title whose session of which day
 * @param session what is moved, in a few words
 * @param athlete number
 * @param from the day on which it lies
 * @param draft number of the proposal in which it lies, 0 for none
 * @param before a day of the week before
 * @param after a day of the week after
 * @param days of the week that is shown
 */
public record MoveView(long season, String title, String session, long athlete, LocalDate from, long draft, LocalDate before, LocalDate after, List<Day> days) {
  /** Takes a copy. */
  public MoveView {
    days = List.copyOf(days);
  }

  /**
   * A day.
   *
   * @param date as 2026-10-06
   * @param name in words
   * @param mark {@code here}, {@code allowed}, {@code costs} or {@code refused}
   * @param answer the same in words
   * @param said what it costs or which rule refuses it, or empty
   * @param then what would be done, where it is not the same session; or empty
   */
  public record Day(LocalDate date, String name, String mark, String answer, String said, String then) {
    /** Whether it may be put there. */
    public boolean open() {
      return mark.equals("allowed") || mark.equals("costs");
    }
  }
}
