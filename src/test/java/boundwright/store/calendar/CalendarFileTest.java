package boundwright.store.calendar;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import biweekly.Biweekly;
import biweekly.ICalVersion;
import biweekly.ICalendar;
import biweekly.component.VEvent;
import boundwright.athlete.Surface;
import boundwright.footfall.Sequence;
import boundwright.load.account.Work;
import boundwright.season.Block;
import boundwright.season.InventedSeasons;
import boundwright.season.Meet;
import boundwright.season.PlannedDay;
import boundwright.season.SeasonInput;
import boundwright.season.SeasonPlan;
import boundwright.season.SeasonRepository.Kept;
import boundwright.season.SeasonRepository.Version;
import boundwright.season.Session;
import boundwright.season.SessionKind;
import boundwright.season.Venue;
import boundwright.season.calendar.SeasonCalendar;
import java.nio.charset.StandardCharsets;
import java.time.DayOfWeek;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Random;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Calendars read back by two readers that did not write them: one by the letter of RFC 5545 ({@link StrictReader}), and the library biweekly
 * 0.6.8. Each reader must see the same, and what it sees must be what was planned.
 */
class CalendarFileTest {
  private static final Instant NOW = Instant.parse("2026-05-12T15:00:00.25Z");
  private static final ZoneId BERLIN = ZoneId.of("Europe/Berlin");
  private static final String KEY = "0123456789abcdef0123456789abcdef";
  private static final LocalDate MONDAY = LocalDate.of(2026, 10, 19);

  private static Kept kept(SeasonInput s) {
    return new Kept(1, KEY, s.name(), s.first(), s.last(), 1, 1, 1);
  }

  private static Version version(SeasonInput s, SeasonPlan plan, Instant at) {
    return new Version(plan, s.meets(), s.venues(), at, null);
  }

  /** Before the season begins, so that every day is still to come. */
  private static Instant before(SeasonInput s, int days) {
    return s.first().minusDays(days).atStartOfDay(BERLIN).toInstant();
  }

  /** Three Mondays over the end of summer time, at a place with hours. */
  private static Version mondays(ZoneId zone, String name, LocalDate... days) {
    Venue grass =
        new Venue("grass", name, Surface.GRASS, false, 9, Map.of(DayOfWeek.MONDAY, new Venue.Hours(LocalTime.of(17, 30), LocalTime.of(19, 0))), List.of());
    Session session = new Session(SessionKind.BOUNDS, "grass", List.of(new Block(new Work(Sequence.parse("RRL x2"), 6, 4, Surface.GRASS), 2, false)));
    SeasonPlan.Year year = new SeasonPlan.Year(3, "Wren Samphire", Arrays.stream(days).map(d -> new PlannedDay(d, session)).toList(), List.of(), List.of());
    return new Version(new SeasonPlan("Autumn", 1, List.of(year)), List.of(), List.of(grass), MONDAY.minusDays(30).atStartOfDay(zone).toInstant(), null);
  }

  private static byte[] file(Version... versions) {
    Kept kept = new Kept(1, KEY, "Autumn", MONDAY, MONDAY.plusDays(20), 1, 1, 1);
    return CalendarFile.write(SeasonCalendar.of(kept, List.of(versions), 3, BERLIN), BERLIN, NOW);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"Europe/Berlin", "America/New_York", "Asia/Kolkata", "Africa/Casablanca", "Australia/Lord_Howe", "Europe/Dublin", "America/Phoenix", "Etc/UTC", "UTC", "Z", "+05:30"})
  void anHourIsThatHourOfTheCoachsZoneForBothReaders(String zone) {
    ZoneId id = ZoneId.of(zone);
    LocalDate[] days = {MONDAY, MONDAY.plusWeeks(1), MONDAY.plusWeeks(2), MONDAY.plusWeeks(26)};
    Kept kept = new Kept(1, KEY, "Autumn", MONDAY, MONDAY.plusDays(200), 1, 1, 1);
    byte[] file = CalendarFile.write(SeasonCalendar.of(kept, List.of(mondays(id, "Lower meadow", days)), 3, id), id, NOW);
    List<Instant> starts = Arrays.stream(days).map(d -> d.atTime(17, 30).atZone(id).toInstant()).toList();
    List<Instant> ends = Arrays.stream(days).map(d -> d.atTime(19, 0).atZone(id).toInstant()).toList();
    assertThat(StrictReader.events(file).values()).extracting(StrictReader.Event::start).containsExactlyElementsOf(starts);
    assertThat(StrictReader.events(file).values()).extracting(StrictReader.Event::end).containsExactlyElementsOf(ends);
    if (zone.equals("Australia/Lord_Howe")) {
      return; // biweekly takes every summer time for a whole hour; there it is half of one
    }
    assertThat(biweekly(file).getEvents()).extracting(e -> e.getDateStart().getValue().toInstant()).containsExactlyElementsOf(starts);
    assertThat(biweekly(file).getEvents()).extracting(e -> e.getDateEnd().getValue().toInstant()).containsExactlyElementsOf(ends);
  }

  @Test
  void bothReadersSeeTheSameInAnyCalendar() {
    for (long seed = 1; seed <= 12; seed++) {
      InventedSeasons invented = new InventedSeasons(seed);
      SeasonInput s = invented.input();
      SeasonPlan plan = invented.plan(s, 1);
      List<Version> versions = List.of(version(s, plan, before(s, 9)), version(s, invented.other(s, plan), before(s, 5)));
      List<SeasonCalendar> calendars = new ArrayList<>(List.of(SeasonCalendar.of(kept(s), versions, BERLIN)));
      s.squad().forEach(m -> calendars.add(SeasonCalendar.of(kept(s), versions, m.id(), BERLIN)));
      for (SeasonCalendar c : calendars) {
        byte[] file = CalendarFile.write(c, BERLIN, NOW);
        Map<String, StrictReader.Event> strict = StrictReader.events(file);
        ICalendar other = biweekly(file);
        assertThat(other.validate(ICalVersion.V2_0).getWarnings()).as("seed %d", seed).isEmpty();
        assertThat(strict).hasSameSizeAs(c.events());
        assertThat(other.getEvents()).hasSameSizeAs(c.events());
        for (int i = 0; i < c.events().size(); i++) {
          VEvent e = other.getEvents().get(i);
          StrictReader.Event t = Objects.requireNonNull(strict.get(e.getUid().getValue()));
          assertThat(e.getSummary().getValue()).isEqualTo(t.summary()).isEqualTo(c.events().get(i).says().title());
          assertThat(e.getDescription() == null ? "" : e.getDescription().getValue()).isEqualTo(t.description()).isEqualTo(c.events().get(i).says().notes());
          assertThat(e.getLocation() == null ? "" : e.getLocation().getValue()).isEqualTo(t.location()).isEqualTo(c.events().get(i).says().where());
          assertThat(e.getSequence().getValue()).isEqualTo(t.sequence());
          assertThat(e.getStatus().getValue()).isEqualTo(t.status());
          assertThat(e.getDateTimeStamp().getValue().toInstant()).isEqualTo(t.stamp()).isEqualTo(Instant.parse("2026-05-12T15:00:00Z"));
        }
      }
    }
  }

  /** Names that are long, written with other letters and full of what must be escaped come back as they were. */
  @Test
  void longAndOddWordsComeBack() {
    for (String name : List.of("Ölwiese; \"unten\", am Deich\\n links: ".repeat(9), "谷".repeat(80), "🦘🏃".repeat(40), "x".repeat(74), "BEGIN:VEVENT\n;,\\", " ")) {
      byte[] file = file(mondays(BERLIN, name, MONDAY));
      StrictReader.Event strict = StrictReader.events(file).values().iterator().next();
      assertThat(strict.location()).isEqualTo(name);
      assertThat(biweekly(file).getEvents().get(0).getLocation().getValue()).isEqualTo(name);
    }
  }

  /** Between any two versions: an event that looks the same keeps its number, one that looks otherwise has a higher one, and none is forgotten. */
  @Test
  void theSequenceRisesWhenAnEventChangesAndOnlyThen() {
    int changed = 0;
    int same = 0;
    int cancelled = 0;
    int back = 0;
    for (long seed = 1; seed <= 12; seed++) {
      InventedSeasons invented = new InventedSeasons(seed);
      SeasonInput s = invented.input();
      SeasonPlan plan = invented.plan(s, 1);
      List<Version> versions = new ArrayList<>(List.of(version(s, plan, before(s, 20))));
      for (int v = 2; v <= 4; v++) {
        plan = invented.other(s, plan);
        Map<String, StrictReader.Event> old = all(s, versions);
        versions.add(version(s, plan, before(s, 20 - v)));
        Map<String, StrictReader.Event> now = all(s, versions);
        assertThat(now.keySet()).as("seed %d: no event is forgotten", seed).containsAll(old.keySet());
        for (String uid : old.keySet()) {
          StrictReader.Event a = Objects.requireNonNull(old.get(uid));
          StrictReader.Event b = Objects.requireNonNull(now.get(uid));
          if (a.content().equals(b.content())) {
            assertThat(b.sequence()).as("seed %d: %s", seed, a).isEqualTo(a.sequence());
            same++;
          } else {
            assertThat(b.sequence()).as("seed %d: %s", seed, a).isGreaterThan(a.sequence());
            changed++;
            cancelled += b.status().equals("CANCELLED") ? 1 : 0;
            back += a.status().equals("CANCELLED") ? 1 : 0;
          }
        }
      }
    }
    assertThat(List.of(changed, same, cancelled, back)).allSatisfy(n -> assertThat(n).isGreaterThan(10));
  }

  private static Map<String, StrictReader.Event> all(SeasonInput s, List<Version> versions) {
    Map<String, StrictReader.Event> out = StrictReader.events(CalendarFile.write(SeasonCalendar.of(kept(s), versions, BERLIN), BERLIN, NOW));
    s.squad()
        .forEach(
            m ->
                StrictReader.events(CalendarFile.write(SeasonCalendar.of(kept(s), versions, m.id(), BERLIN), BERLIN, NOW))
                    .forEach((uid, e) -> assertThat(out.put(uid, e)).as("a UID of two calendars").isNull()));
    return out;
  }

  @Test
  void aSessionThatGoesAwayIsCancelledAndOneThatIsOverIsNot() {
    Version first = mondays(BERLIN, "Lower meadow", MONDAY, MONDAY.plusWeeks(1), MONDAY.plusWeeks(2));
    Version second = mondays(BERLIN, "Lower meadow", MONDAY.plusWeeks(2));
    Version afterTheFirst = new Version(second.plan(), second.meets(), second.venues(), MONDAY.plusDays(1).atStartOfDay(BERLIN).toInstant(), null);
    assertThat(StrictReader.events(file(first, afterTheFirst)).values()).extracting(StrictReader.Event::status).containsExactly("CONFIRMED", "CANCELLED", "CONFIRMED");
    assertThat(StrictReader.events(file(first, afterTheFirst)).values()).extracting(StrictReader.Event::sequence).containsExactly(0, 1, 0);
    assertThat(StrictReader.events(file(first, second, first)).values()).extracting(StrictReader.Event::sequence).containsExactly(2, 2, 0);
    assertThat(StrictReader.events(file(first)).keySet()).isEqualTo(StrictReader.events(file(first, afterTheFirst)).keySet());
  }

  @Test
  void aMovedPlaceIsAChange() {
    assertThat(StrictReader.events(file(mondays(BERLIN, "Lower meadow", MONDAY), mondays(BERLIN, "Upper meadow", MONDAY))).values())
        .singleElement()
        .satisfies(e -> assertThat(e.sequence()).isEqualTo(1))
        .satisfies(e -> assertThat(e.location()).isEqualTo("Upper meadow"));
  }

  /** The word itself is looked for in every calendar of seasons in which people are held, away and on soft days. */
  @Test
  void whyNobodyTrainsIsInNoCalendar() {
    for (long seed = 1; seed <= 12; seed++) {
      InventedSeasons invented = new InventedSeasons(seed);
      SeasonInput s = invented.input();
      SeasonPlan plan = invented.plan(s, 1);
      List<Version> versions = List.of(version(s, plan, before(s, 9)), version(s, invented.other(s, plan), before(s, 5)));
      String words =
          all(s, versions).values().stream().map(e -> e.summary() + " " + e.description() + " " + e.location()).collect(Collectors.joining(" ")).toLowerCase(Locale.ROOT);
      assertThat(words).isNotBlank().doesNotContain("held", "hold", "pain", "hurt", "injur", "away", "soft", "medic", "travel", "refus", "growing", "limit");
    }
  }

  @Test
  void theSquadsCalendarHasMeetsAndWhoIsWhere() {
    Version v = mondays(BERLIN, "Lower meadow", MONDAY);
    Version withMeet = new Version(v.plan(), List.of(new Meet("m", "Tidewater open (invented)", MONDAY.plusDays(5))), v.venues(), v.published(), null);
    Kept kept = new Kept(1, KEY, "Autumn", MONDAY, MONDAY.plusDays(20), 1, 1, 1);
    Map<String, StrictReader.Event> events = StrictReader.events(CalendarFile.write(SeasonCalendar.of(kept, List.of(withMeet), BERLIN), BERLIN, NOW));
    assertThat(events.values()).extracting(StrictReader.Event::summary).containsExactly("1 athlete, Lower meadow", "Tidewater open (invented)");
    assertThat(events.values()).extracting(StrictReader.Event::description).containsExactly("Wren Samphire: Bounds from 4 steps", "");
    assertThat(events.values()).extracting(StrictReader.Event::wholeDay).containsExactly(false, true);
  }

  /** The reader itself refuses what the standard forbids: each rule broken once. */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "\r\n>\n", "VERSION:2.0>VERSION:1.0", "PRODID:>PRODIDS:", "UID:>UIDS:", "SUMMARY:>SUMMARY:a,b", "SUMMARY:>SUMMARY:a\\b",
        "SUMMARY:>SUMMARY:0123456789012345678901234567890123456789012345678901234567890123456789", "DTSTAMP:20260512T150000Z>DTSTAMP:20260512T150000",
        "TZID=Europe/Berlin>TZID=Europe/Paris", "END:VEVENT>END:VEVENTS", "SEQUENCE:0>SEQUENCE:-1", "STATUS:CONFIRMED>STATUS:GONE", "END:VCALENDAR\r\n>END:VCALENDAR",
        "DTEND;TZID=Europe/Berlin:20261019T190000>DTEND;TZID=Europe/Berlin:20261019T170000", "STATUS:>SUMMARY:again\r\nSTATUS:"
      })
  void theStrictReaderIsStrict(String change) {
    String file = new String(file(mondays(BERLIN, "Lower meadow", MONDAY)), StandardCharsets.UTF_8);
    String[] fromTo = change.split(">", 2);
    assertThat(file).contains(fromTo[0]);
    StrictReader.events(file.getBytes(StandardCharsets.UTF_8));
    assertThatThrownBy(() -> StrictReader.events(file.replace(fromTo[0], fromTo[1]).getBytes(StandardCharsets.UTF_8))).isInstanceOf(AssertionError.class);
  }

  /** Folding at random places of random letters: at most 75 octets, nothing lost. */
  @Test
  void foldingLosesNothing() {
    Random random = new Random(8);
    for (int i = 0; i < 300; i++) {
      String line = random.ints(random.nextInt(300) + 1, 0, 6).mapToObj(k -> List.of("a", " ", "é", "谷", "🦘", "\t").get(k)).collect(Collectors.joining());
      String folded = CalendarFile.folded("X" + line + "\r\n");
      assertThat(StrictReader.lines(folded.getBytes(StandardCharsets.UTF_8))).containsExactly("X" + line);
    }
  }

  private static ICalendar biweekly(byte[] file) {
    return Biweekly.parse(new String(file, StandardCharsets.UTF_8)).first();
  }
}
