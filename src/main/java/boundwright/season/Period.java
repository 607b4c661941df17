package boundwright.season;

import boundwright.load.Season;
import java.time.LocalDate;

/**
 * A part of the year that begins on a day and lasts until the next begins.
 *
 * @param kind which part
 * @param from its first day
 */
public record Period(Kind kind, LocalDate from) {
  /** The parts of a year (common practice). */
  public enum Kind {
    /** General preparation, 8 to 12 weeks. */
    GENERAL("general preparation", Season.OFF_SEASON),
    /** Specific preparation, 6 to 8 weeks. */
    SPECIFIC("specific preparation", Season.PRE_SEASON),
    /** Before the meets, 4 to 6 weeks. */
    PRE_COMPETITION("pre-competition", Season.PRE_SEASON),
    /** The meets, 8 to 12 weeks. */
    COMPETITION("competition", Season.IN_SEASON),
    /** Rest, 2 to 4 weeks. */
    REST("rest", Season.OFF_SEASON);

    private final String label;
    private final Season season;

    Kind(String label, Season season) {
      this.label = label;
      this.season = season;
    }

    /** In words, as in the file of a season. */
    public String label() {
      return label;
    }

    /** As the guard's limits know it. */
    public Season season() {
      return season;
    }
  }
}
