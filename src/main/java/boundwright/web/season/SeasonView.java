package boundwright.web.season;

import boundwright.picture.season.SeasonPicture;
import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The page of a season.
 *
 * @param season which, or null when there is none yet
 * @param others seasons to change to
 * @param plan what was published of it, or null
 * @param deeds what can be done with it, or null when there is none yet
 * @param calendars who has an address
 * @param shown an address that was just made, or null: it is shown once
 * @param refused why a file was not taken, or empty
 * @param said what was just done, or empty
 */
public record SeasonView(
    @Nullable Head season, List<Other> others, @Nullable Planned plan, @Nullable DeedsView deeds, List<CalendarRow> calendars, @Nullable Shown shown, String refused, String said) {
  /** Takes copies. */
  public SeasonView {
    others = List.copyOf(others);
    calendars = List.copyOf(calendars);
  }

  /**
   * A season.
   *
   * @param from first day, in words
   * @param to last day, in words
   * @param athletes how many, in words
   * @param meets each in a line
   * @param week the Monday whose week is shown first
   * @param stale the newest published version if the season was changed since it was made, else 0
   */
  public record Head(long id, String name, String from, String to, String athletes, List<String> meets, LocalDate week, int stale) {
    /** Takes a copy. */
    public Head {
      meets = List.copyOf(meets);
    }
  }

  /** Another season. */
  public record Other(long id, String name) {}

  /**
   * A published plan, drawn.
   *
   * @param version its number
   * @param todayX where today stands in the drawing
   */
  public record Planned(int version, long todayX, SeasonPicture head, List<Row> rows) {
    /** Takes a copy. */
    public Planned {
      rows = List.copyOf(rows);
    }
  }

  /**
   * An athlete's row.
   *
   * @param most of one leg in a week, in whole standing-bound contacts
   */
  public record Row(long id, String athlete, String most, SeasonPicture picture) {}

  /**
   * A calendar that can be subscribed to.
   *
   * @param athlete number, 0 for the squad
   * @param name whose
   * @param since when its address was made, or empty if it has none
   */
  public record CalendarRow(long athlete, String name, String since) {}

  /**
   * An address that was just made.
   *
   * @param name whose calendar
   * @param address to subscribe to
   * @param onlyHere whether other devices cannot reach it
   */
  public record Shown(String name, String address, boolean onlyHere) {}
}
