package boundwright.season.year;

import java.util.Locale;

/** What a plan is judged by, in this order, each in a unit that a coach can weigh; never added up. */
public enum Level {
  /** What the guard refuses, a taper that is none, a place with too many: nothing of it is ever published [contacts over, at least 1 each]. */
  REFUSED(0, "refused", "contacts over"),
  /** Wishes that are not met: sessions of a week by kind, and wishes for a day. */
  WISHES(1, "wishes not met", "wishes"),
  /** Distance from the load that is wanted of each week. */
  OFF(2, "off the load wanted", "standing-bound contacts"),
  /** What the guard cautions against. */
  CAUTIONS(3, "cautions", "cautions"),
  /** Days on which the coach watches another place at the same time, one for each place beyond the first. */
  PLACES(4, "days at two places", "days"),
  /** Contacts by which the legs differ, week by week. */
  UNEQUAL(5, "unequal legs", "contacts"),
  /** Days that differ from what was published. */
  CHANGES(6, "changed days", "days"),
  /** Sessions that repeat the one before. */
  SAME(7, "repeated sessions", "sessions");

  private final int at;
  private final String label;
  private final String unit;

  Level(int at, String label, String unit) {
    this.at = at;
    this.label = label;
    this.unit = unit;
  }

  /** The entry of a score that stands for it. */
  public long of(long[] total) {
    return total[at];
  }

  /** Its place in the order, 0 the first: where it stands in arrays. */
  public int at() {
    return at;
  }

  /** In words. */
  public String label() {
    return label;
  }

  /** So many of it: {@code 1 wish}, {@code 1,204 standing-bound contacts}. */
  public String said(long much) {
    String one = this == WISHES ? "wish" : this == REFUSED ? "contact over" : unit.substring(0, unit.length() - 1);
    return String.format(Locale.ROOT, "%,d %s", much, much == 1 ? one : unit);
  }

  /** What is counted. */
  public String unit() {
    return unit;
  }
}
