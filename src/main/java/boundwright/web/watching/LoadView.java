package boundwright.web.watching;

import boundwright.athlete.Athlete;
import boundwright.evidence.Source;
import boundwright.footfall.Foot;
import boundwright.load.DayVerdict;
import boundwright.load.LoadSources;
import boundwright.load.Season;
import boundwright.load.SeasonStart;
import boundwright.load.account.ContactWeights;
import boundwright.load.account.DayLoad;
import boundwright.load.account.LastWeek;
import boundwright.load.account.LegCounts;
import boundwright.load.account.LegLoad;
import boundwright.load.account.LoadScale;
import boundwright.load.account.OtherWork;
import boundwright.load.rating.RatedWeek;
import boundwright.picture.LoadPicture;
import boundwright.web.page.Figures;
import boundwright.web.page.Written;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * What the legs of one athlete did.
 *
 * @param athlete whose
 * @param day the one verdict of the day
 * @param wide the picture for a desk
 * @param narrow the picture for a phone
 * @param week contacts of the seven days up to today
 * @param month contacts of the four weeks up to today
 * @param weekUnits the same seven days weighed
 * @param monthUnits the same four weeks weighed
 * @param other what else the legs did in seven days, oldest first
 * @param lastWeek what was said of the weeks before the log, or null
 * @param season the part of the year today, in words
 * @param ownSeasons from when a part of the year holds for this athlete alone
 * @param impacts the drills of the plan with a figure per contact
 * @param rated the seven days of ratings, or null when nothing was rated lately
 * @param lately mean daily load, weighted to the last 7 days
 * @param longer the same to the last 28
 * @param written what became of the forms
 * @param token makes a double tap one entry
 * @param today the day
 */
public record LoadView(
    Athlete athlete,
    DayVerdict day,
    LoadPicture wide,
    LoadPicture narrow,
    LegCounts week,
    LegCounts month,
    Account weekUnits,
    Account monthUnits,
    List<OtherWork> other,
    @Nullable LastWeek lastWeek,
    String season,
    List<SeasonStart> ownSeasons,
    List<Impact> impacts,
    @Nullable RatedWeek rated,
    double lately,
    double longer,
    Written written,
    String token,
    LocalDate today) {
  /**
   * Some days weighed [standing-bound contacts], with the power of the settings and with 4 and 9.
   *
   * @param usual with the power of the settings
   * @param low with power 4
   * @param high with power 9
   */
  public record Account(LegLoad usual, LegLoad low, LegLoad high) {
    static Account of(List<DayLoad> days, ContactWeights weights) {
      return new Account(
          sum(days, weights, weights.scale().power()), sum(days, weights, LoadScale.LEAST_POWER), sum(days, weights, LoadScale.MOST_POWER));
    }

    private static LegLoad sum(List<DayLoad> days, ContactWeights weights, double power) {
      return days.stream().map(d -> weights.of(d, power)).reduce(LegLoad.NONE, LegLoad::plus);
    }

    /** Of one leg, written: {@code 84 (70 to 96)}; the band only where it is wide enough to be seen. */
    public String of(Foot foot) {
      long from = Math.round(Math.min(low.units(foot), high.units(foot)));
      long to = Math.round(Math.max(low.units(foot), high.units(foot)));
      return Math.round(usual.units(foot)) + (from == to ? "" : " (" + from + " to " + to + ")");
    }
  }

  /**
   * A way to enter other work in two taps: what, and how much.
   *
   * @param kind what
   * @param name in words
   * @param amounts buttons: what is sent, and what is written on it
   */
  public record Taps(OtherWork.Kind kind, String name, Map<String, String> amounts) {}

  /** What can be entered in two taps; anything else in the fields below. */
  public static List<Taps> taps() {
    return List.of(
        new Taps(
            OtherWork.Kind.BOUNDS, "Bounds not logged one by one",
            amounts("20/0", "20 from standing", "40/0", "40 from standing", "20/4", "20 from 4 steps", "20/8", "20 from 8 steps")),
        new Taps(OtherWork.Kind.SPRINT, "Sprints", amounts("120", "120 m", "240", "240 m", "400", "400 m")),
        new Taps(OtherWork.Kind.WEIGHTS, "Weights for the legs", amounts("4", "4 sets", "8", "8 sets", "12", "12 sets")),
        new Taps(OtherWork.Kind.BOXES, "Boxes, on two feet", amounts("20/0.2", "20 of 20 cm", "20/0.4", "20 of 40 cm", "40/0.4", "40 of 40 cm")),
        new Taps(OtherWork.Kind.SPORT, "Other sport, 60 minutes", amounts("60/3", "easy", "60/5", "middling", "60/8", "hard")));
  }

  private static Map<String, String> amounts(String... pairs) {
    Map<String, String> out = new LinkedHashMap<>();
    for (int i = 0; i < pairs.length; i += 2) {
      out.put(pairs[i], pairs[i + 1]);
    }
    return out;
  }

  /** The parts of the year. */
  public List<Season> seasons() {
    return List.of(Season.values());
  }

  /** A day as it is read. */
  public String day(LocalDate date) {
    return Figures.day(date, today);
  }

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
    List<Row> work = new ArrayList<>();
    month.byWork().forEach((w, n) -> work.add(new Row(w, week.byWork().getOrDefault(w, LegCounts.Legs.NONE), n)));
    return List.of(
        new Block("what", work), new Block("taking off for a", kinds), new Block("approach", steps), new Block("on", surfaces));
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
