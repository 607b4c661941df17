package boundwright.web.squad;

import boundwright.athlete.Athlete;
import boundwright.runway.DayPlan;
import boundwright.web.page.Figures;
import java.util.List;

/**
 * The squad of the day: a list on a phone, athletes by drills on a desk. Both are one table, of which a phone shows the column of the
 * drill that is chosen.
 *
 * @param plan the drills
 * @param date today in words
 * @param chosen number of the drill whose marks a phone shows, 1 for the first; 0 if the plan has none
 * @param asked what the address asks for
 * @param all how many athletes there are, here or not
 * @param roll who is here, in words
 * @param heads one for each column
 * @param lines one for each athlete who is here and asked for
 * @param said what is said once for those whom it concerns
 * @param loads what body and load say of those who are not simply allowed
 * @param loadInShort the same in a line, or empty
 * @param groups all groups
 */
public record SquadView(
    DayPlan plan,
    String date,
    int chosen,
    Asked asked,
    int all,
    String roll,
    List<Head> heads,
    List<Line> lines,
    List<Together> said,
    List<Together> loads,
    String loadInShort,
    List<GroupLink> groups) {

  /**
   * What the address asks for.
   *
   * @param query part of a name, or empty
   * @param group number of a group, or 0 for all
   * @param sort the column: {@code name}, {@code load}, or {@code mark}, {@code chance}, {@code last} with the number of a drill
   * @param down whether the largest comes first
   */
  public record Asked(String query, long group, String sort, boolean down) {
    /** The direction of a column as ears are told it. */
    String aria(String column) {
      return !column.equals(sort) ? "none" : down ? "descending" : "ascending";
    }
  }

  /**
   * A column.
   *
   * @param label what it is
   * @param how the drill's approach and dose, or empty
   * @param drill number of the drill, 0 for none
   * @param sorts what it can be sorted by
   * @param aria the direction in which it is sorted now: ascending, descending or none
   */
  public record Head(String label, String how, int drill, List<Sort> sorts, String aria) {}

  /** A way to sort: its name, where the link leads, and whether it is the present one. */
  public record Sort(String label, String href, boolean now) {}

  /**
   * One athlete.
   *
   * @param athlete who
   * @param cells one for each drill; empty if bounding is stopped
   * @param load {@code allowed}, {@code caution}, {@code refused} or {@code no bounding}
   * @param answer the verdict's label
   * @param common whether the same is said of everybody, so that a phone need not say it in every line
   * @param contacts contacts so far and with the plan
   * @param href where the name leads
   */
  public record Line(Athlete athlete, List<Cell> cells, String load, String answer, boolean common, String contacts, String href) {}

  /**
   * What an athlete has in a drill.
   *
   * @param drill its number
   * @param mark the mark to the sand, in figures and units; empty on the flat
   * @param open whether a mark works, or it is a beginning
   * @param chance in words
   * @param certain whether a phone need not say it: it is what was asked, or is said once of all beginnings
   * @param last the newest result in it, or empty
   * @param steps from where, in words; empty if the head says it of all
   */
  public record Cell(int drill, List<Figures.Part> mark, boolean open, String chance, boolean certain, String last, String steps) {}

  /** What holds of several athletes: their names (empty: of all), what, and what is folded below it. */
  public record Together(String names, String said, List<String> folded) {}

  /** A group: its number, its name, where it leads, whether it is the present one. */
  public record GroupLink(long id, String name, String href, boolean now) {}
}
