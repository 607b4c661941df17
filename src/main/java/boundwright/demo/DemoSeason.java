package boundwright.demo;

import boundwright.athlete.Athlete;
import boundwright.athlete.Level;
import boundwright.athlete.Surface;
import boundwright.footfall.Foot;
import boundwright.footfall.Sequence;
import boundwright.load.GuardSettings;
import boundwright.load.account.DayLoad;
import boundwright.load.account.History;
import boundwright.load.account.LastWeek;
import boundwright.load.account.Work;
import boundwright.readiness.DrillFamily;
import boundwright.season.Away;
import boundwright.season.Entry;
import boundwright.season.Meet;
import boundwright.season.Member;
import boundwright.season.Period;
import boundwright.season.SeasonInput;
import boundwright.season.SeasonRules;
import boundwright.season.SessionKind;
import boundwright.season.Span;
import boundwright.season.Venue;
import boundwright.season.Wish;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.temporal.TemporalAdjusters;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** An invented season of three of the invented squad, to begin a file of one's own with: 44 weeks, a peak indoors and one outdoors. */
public final class DemoSeason {
  /** What the file says of itself. */
  public static final String NOTE = "Invented squad at an invented place: no person here is real. Replace everything, then take this line out.";

  private static final String INDOOR = "winter";
  private static final String OUTDOOR = "summer";
  private static final int WEEKS = 44;

  private DemoSeason() {}

  /**
   * The season.
   *
   * @param from it begins on the first Monday from this day on
   * @param guard the facility's limits
   */
  public static SeasonInput from(LocalDate from, GuardSettings guard) {
    LocalDate first = from.with(TemporalAdjusters.nextOrSame(DayOfWeek.MONDAY));
    List<Period> periods =
        List.of(
            new Period(Period.Kind.GENERAL, first),
            new Period(Period.Kind.SPECIFIC, first.plusWeeks(8)),
            new Period(Period.Kind.PRE_COMPETITION, first.plusWeeks(14)),
            new Period(Period.Kind.COMPETITION, first.plusWeeks(18)),
            new Period(Period.Kind.GENERAL, first.plusWeeks(23)),
            new Period(Period.Kind.SPECIFIC, first.plusWeeks(28)),
            new Period(Period.Kind.PRE_COMPETITION, first.plusWeeks(32)),
            new Period(Period.Kind.COMPETITION, first.plusWeeks(36)),
            new Period(Period.Kind.REST, first.plusWeeks(42)));
    List<Meet> meets =
        List.of(
            new Meet("early", "First indoor meet (invented)", first.plusWeeks(17).plusDays(5)),
            new Meet(INDOOR, "Indoor championships (invented)", first.plusWeeks(21).plusDays(5)),
            new Meet("spring", "Spring meet (invented)", first.plusWeeks(36).plusDays(5)),
            new Meet(OUTDOOR, "Outdoor championships (invented)", first.plusWeeks(40).plusDays(5)));
    return new SeasonInput(
        "Two peaks (invented)", first, first.plusWeeks(WEEKS).minusDays(1), periods, meets, places(first), squad(first), SeasonRules.usual(guard));
  }

  private static List<Venue> places(LocalDate first) {
    Venue.Hours evening = new Venue.Hours(LocalTime.of(17, 0), LocalTime.of(19, 30));
    return List.of(
        new Venue(
            "grass", "Lower meadow, Saltmarsh Flats", Surface.GRASS, false, 12,
            Map.of(DayOfWeek.MONDAY, evening, DayOfWeek.TUESDAY, evening, DayOfWeek.THURSDAY, evening, DayOfWeek.SATURDAY, new Venue.Hours(LocalTime.of(10, 0), LocalTime.of(13, 0))),
            List.of(new Span(first.plusWeeks(12), first.plusWeeks(19)))),
        new Venue(
            "pit", "Pit by the dyke, Saltmarsh Flats", Surface.TRACK, true, 6,
            Map.of(DayOfWeek.TUESDAY, evening, DayOfWeek.THURSDAY, evening), List.of()),
        new Venue(
            "gym", "Tidewater gym", Surface.SPRUNG_FLOOR, false, 8,
            Map.of(DayOfWeek.MONDAY, new Venue.Hours(LocalTime.of(18, 0), LocalTime.of(20, 0)), DayOfWeek.WEDNESDAY, new Venue.Hours(LocalTime.of(18, 0), LocalTime.of(20, 0))),
            List.of(new Span(first.plusWeeks(12), first.plusWeeks(13).plusDays(6)))));
  }

  private static List<Member> squad(LocalDate first) {
    Set<DayOfWeek> week = Set.of(DayOfWeek.MONDAY, DayOfWeek.TUESDAY, DayOfWeek.THURSDAY);
    return List.of(
        new Member(
            new Athlete(1, "Wren Samphire", Level.INTERMEDIATE, Foot.RIGHT, 4),
            false, first.minusYears(2), Map.of(DrillFamily.SINGLE_LEG, 2), 12, week, 420, null,
            List.of(new Away(new Span(first.plusWeeks(33), first.plusWeeks(34).plusDays(4)), Away.Why.SOFT)),
            List.of(new Entry("early", Entry.Importance.USUAL), new Entry(INDOOR, Entry.Importance.MAIN), new Entry(OUTDOOR, Entry.Importance.MAIN)),
            List.of(new Wish(first.plusWeeks(3).plusDays(1), null)),
            History.of(
                List.of(
                    new DayLoad(first.minusDays(9), List.of(new Work(Sequence.parse("RL x5"), 6, 0, Surface.GRASS))),
                    new DayLoad(
                        first.minusDays(5),
                        List.of(new Work(Sequence.parse("RL x5"), 6, 0, Surface.GRASS), new Work(Sequence.parse("RRL x2"), 4, 4, Surface.GRASS)))))),
        new Member(
            new Athlete(2, "Otis Sedgeley", Level.BEGINNER, Foot.RIGHT, 2),
            true, first.minusWeeks(6), Map.of(), 10, Set.of(DayOfWeek.MONDAY, DayOfWeek.THURSDAY), 150, null,
            List.of(new Away(new Span(first.plusWeeks(12), first.plusWeeks(13).plusDays(6)), Away.Why.AWAY)),
            List.of(new Entry("spring", Entry.Importance.USUAL), new Entry(OUTDOOR, Entry.Importance.MAIN)),
            List.of(new Wish(first.plusWeeks(2), SessionKind.BOUNDS)),
            new History(List.of(), null, new LastWeek(first.minusDays(1), 60))),
        new Member(
            new Athlete(3, "Linnea Saltwort", Level.ADVANCED, Foot.LEFT, 8),
            false, first.minusYears(5), Map.of(), 16, Set.of(DayOfWeek.MONDAY, DayOfWeek.TUESDAY, DayOfWeek.THURSDAY, DayOfWeek.SATURDAY), 900, first.plusWeeks(2),
            List.of(new Away(new Span(first.plusWeeks(20).plusDays(4), first.plusWeeks(20).plusDays(4)), Away.Why.TRAVEL)),
            List.of(new Entry(INDOOR, Entry.Importance.MAIN), new Entry("spring", Entry.Importance.USUAL), new Entry(OUTDOOR, Entry.Importance.MAIN)),
            List.of(),
            new History(List.of(), null, new LastWeek(first.minusDays(1), 180))));
  }
}
