package boundwright.season.year;

/** What a plan is judged by, in this order, each in a unit that a coach can weigh; never added up. */
public enum Level {
  /** What the guard refuses, a taper that is none, a place with too many: nothing of it is ever published [contacts over, at least 1 each]. */
  REFUSED("refused", "contacts over"),
  /** Wishes that are not met: sessions of a week by kind, and wishes for a day. */
  WISHES("wishes not met", "wishes"),
  /** Distance from the load that is wanted of each week. */
  OFF("off the load wanted", "standing-bound contacts"),
  /** What the guard cautions against. */
  CAUTIONS("cautions", "cautions"),
  /** Days on which the coach watches another place at the same time, one for each place beyond the first. */
  PLACES("days at two places", "days"),
  /** Contacts by which the legs differ, week by week. */
  UNEQUAL("unequal legs", "contacts"),
  /** Days that differ from what was published. */
  CHANGES("changed days", "days"),
  /** Sessions that repeat the one before. */
  SAME("repeated sessions", "sessions");

  private final String label;
  private final String unit;

  Level(String label, String unit) {
    this.label = label;
    this.unit = unit;
  }

  /** The entry of a score that stands for it. */
  public long of(long[] total) {
    return total[ordinal()];
  }

  /** Its place in the order, 0 the first: where it stands in arrays. */
  public int at() {
    return ordinal();
  }

  /** In words. */
  public String label() {
    return label;
  }

  /** What is counted. */
  public String unit() {
    return unit;
  }
}
