package boundwright.season.sheet;

import boundwright.athlete.Athlete;
import boundwright.footfall.Foot;
import boundwright.season.Block;
import boundwright.season.Climb;
import boundwright.season.Meet;
import boundwright.season.Member;
import boundwright.season.SeasonInput;
import boundwright.season.SeasonPlan;
import boundwright.season.Session;
import boundwright.season.SessionKind;
import boundwright.season.Venue;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.temporal.TemporalAdjusters;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/**
 * One week by days and athletes.
 *
 * @param season its name
 * @param version of the plan
 * @param days Monday to Sunday; those outside the season too, so that a week looks like a week
 * @param meets what meets there are on each of them, in a line; empty for none
 * @param rows an athlete each
 */
public record WeekSheet(String season, int version, List<LocalDate> days, List<String> meets, List<Row> rows) {
  /** Takes copies. */
  public WeekSheet {
    days = List.copyOf(days);
    meets = List.copyOf(meets);
    rows = List.copyOf(rows);
  }

  /**
   * An athlete's week.
   *
   * @param id number
   * @param athlete name
   * @param cells one for each day
   */
  public record Row(long id, String athlete, List<Cell> cells) {
    /** Takes a copy. */
    public Row {
      cells = List.copyOf(cells);
    }

    /** Contacts of a leg in the week. */
    public int contacts(Foot foot) {
      return cells.stream().mapToInt(c -> foot == Foot.RIGHT ? c.right() : c.left()).sum();
    }
  }

  /**
   * A day of an athlete.
   *
   * @param kind of the session, or empty on a day without one
   * @param place where, or empty
   * @param right contacts of the right leg
   * @param left contacts of the left leg
   * @param steps the longest approach, in words
   * @param drills a line each
   * @param decides what is decided, or empty
   */
  public record Cell(String kind, String place, int right, int left, String steps, List<String> drills, String decides) {
    private static final Cell FREE = new Cell("", "", 0, 0, "", List.of(), "");

    /** Takes a copy. */
    public Cell {
      drills = List.copyOf(drills);
    }

    /** Whether there is nothing to do. */
    public boolean free() {
      return kind.isEmpty() && decides.isEmpty();
    }
  }

  /** The week that holds a day. */
  public static WeekSheet of(SeasonInput season, SeasonPlan plan, LocalDate day) {
    LocalDate monday = day.with(TemporalAdjusters.previousOrSame(DayOfWeek.MONDAY));
    List<LocalDate> days = IntStream.range(0, 7).mapToObj(monday::plusDays).toList();
    List<String> meets =
        days.stream().map(d -> season.meets().stream().filter(m -> m.date().equals(d)).map(Meet::name).collect(Collectors.joining(", "))).toList();
    List<Row> rows = new ArrayList<>();
    for (Member m : season.squad()) {
      plan.of(m.id()).ifPresent(y -> rows.add(new Row(m.id(), m.name(), days.stream().map(d -> cell(season, y, d)).toList())));
    }
    return new WeekSheet(season.name(), plan.version(), days, meets, rows);
  }

  private static Cell cell(SeasonInput season, SeasonPlan.Year year, LocalDate day) {
    String decides =
        year.climbs().stream()
            .flatMap(c -> c.decisions().stream().filter(d -> d.date().equals(day)).map(d -> decides(c, d)))
            .collect(Collectors.joining("; "));
    Optional<Session> on = year.on(day);
    if (on.isEmpty()) {
      return decides.isEmpty() ? Cell.FREE : new Cell("", "", 0, 0, "", List.of(), decides);
    }
    Session s = on.get();
    String place = season.venues().stream().filter(v -> v.key().equals(s.venue())).map(Venue::name).findFirst().orElse("");
    return new Cell(
        s.kind().label(), s.kind() == SessionKind.MEET ? "" : place, s.contacts(Foot.RIGHT), s.contacts(Foot.LEFT), Athlete.fromSteps(s.steps()),
        s.blocks().stream().map(WeekSheet::line).toList(), decides);
  }

  private static String decides(Climb c, Climb.DecisionDay d) {
    return c.family().label() + ": if ready " + Athlete.fromSteps(d.goesTo()) + ", else " + Athlete.fromSteps(d.stays());
  }

  private static String line(Block b) {
    int reps = b.work().reps();
    int sets = b.sets();
    String dose = sets > 1 && reps % sets == 0 ? sets + " x " + reps / sets : sets > 1 ? reps + " in " + sets + " sets" : String.valueOf(reps);
    return dose + " of " + b.work().sequence().text() + (b.inSand() ? ", into sand" : "");
  }
}
