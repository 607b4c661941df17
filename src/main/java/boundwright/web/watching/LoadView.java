package boundwright.web.watching;

import boundwright.athlete.Athlete;
import boundwright.evidence.Source;
import boundwright.footfall.Foot;
import boundwright.load.LegCounts;
import boundwright.load.LoadSources;
import boundwright.load.RatedWeek;
import boundwright.load.Verdict;
import boundwright.picture.LoadPicture;
import boundwright.web.page.Figures;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What the legs of one athlete did.
 *
 * @param athlete whose
 * @param guard what the guard says of today
 * @param wide the picture for a desk
 * @param narrow the picture for a phone
 * @param week contacts of the seven days up to today
 * @param month contacts of the four weeks up to today
 * @param impacts the drills of the plan with a figure per contact
 * @param rated the seven days of ratings, or null when nothing was rated lately
 * @param lately mean daily load, weighted to the last 7 days
 * @param longer the same to the last 28
 */
public record LoadView(
    Athlete athlete,
    Verdict guard,
    LoadPicture wide,
    LoadPicture narrow,
    LegCounts week,
    LegCounts month,
    List<Impact> impacts,
    @Nullable RatedWeek rated,
    double lately,
    double longer) {
  /**
   * A drill with the mean force of each contact.
   *
   * @param sequence as written
   * @param from in words
   * @param contacts in order
   */
  public record Impact(String sequence, String from, List<Contact> contacts) {}

  /**
   * A contact.
   *
   * @param number counted from 1
   * @param foot which
   * @param times mean force over body weight, as written
   */
  public record Contact(int number, Foot foot, String times) {}

  /**
   * A line of the table of contacts.
   *
   * @param name what is counted
   * @param week in seven days
   * @param month in four weeks
   */
  public record Row(String name, LegCounts.Legs week, LegCounts.Legs month) {}

  /**
   * Lines that belong together.
   *
   * @param heading what they are counted by
   * @param rows the lines
   */
  public record Block(String heading, List<Row> rows) {}

  /** The table: all, by kind of flight, by steps, by surface. Everything of the week is in the month too. */
  public List<Block> blocks() {
    List<Row> kinds = new ArrayList<>();
    month.byKind().forEach((k, n) -> kinds.add(new Row(k.label(), week.byKind().getOrDefault(k, LegCounts.Legs.NONE), n)));
    List<Row> steps = new ArrayList<>();
    month.bySteps().forEach((s, n) -> steps.add(new Row(Figures.rung(s), week.bySteps().getOrDefault(s, LegCounts.Legs.NONE), n)));
    List<Row> surfaces = new ArrayList<>();
    month.bySurface().forEach((s, n) -> surfaces.add(new Row(s.label(), week.bySurface().getOrDefault(s, LegCounts.Legs.NONE), n)));
    return List.of(
        new Block("taking off for a", kinds), new Block("approach", steps), new Block("on", surfaces));
  }

  /** Where the force comes from. */
  public Source force() {
    return LoadSources.MEAN_FORCE;
  }

  /** A figure with one decimal. */
  public String one(double value) {
    return Figures.fixed(value, 1);
  }
}
