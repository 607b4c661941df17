package boundwright.store.movein;

/** What comes first in a day such as 3.11.2026. */
public enum DayOrder {
  /** 3.11. is in November. */
  DAY_FIRST("day-first", "day, month, year"),
  /** 3/11 is in March. */
  MONTH_FIRST("month-first", "month, day, year");

  private final String key;
  private final String label;

  DayOrder(String key, String label) {
    this.key = key;
    this.label = label;
  }

  /** The word on the command line. */
  public String key() {
    return key;
  }

  /** As it is called on the screen. */
  public String label() {
    return label;
  }
}
