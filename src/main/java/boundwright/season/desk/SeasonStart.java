package boundwright.season.desk;

import boundwright.athlete.Athlete;
import boundwright.athlete.Level;
import boundwright.athlete.Surface;
import boundwright.load.CareRepository;
import boundwright.load.LegCare;
import boundwright.load.LoadRepository;
import boundwright.load.WorkLog;
import boundwright.load.account.ContactWeights;
import boundwright.load.account.DayLoad;
import boundwright.load.account.History;
import boundwright.load.account.UsualDays;
import boundwright.readiness.LadderRepository;
import boundwright.season.Member;
import boundwright.season.SeasonInput;
import boundwright.season.SeasonRules;
import boundwright.season.Venue;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * Begins a season with what the program knows: athletes with the approach steps of each family, their logged load, the days on which they
 * come, and places, days and rules of the season before. What nobody has said is assumed (judgement) and stands in the season to be changed.
 */
public final class SeasonStart {
  /** Days before a season that are taken from the log: what the limits of load look back to. */
  private static final int LOG_DAYS = 49;
  private static final double ROOM_TO_GROW = 1.25;
  private static final int AT_ONCE = 12;
  private static final Set<DayOfWeek> DAYS = EnumSet.of(DayOfWeek.MONDAY, DayOfWeek.TUESDAY, DayOfWeek.THURSDAY);
  private static final Venue.Hours EVENING = new Venue.Hours(LocalTime.of(17, 0), LocalTime.of(19, 30));

  private final WorkLog log;
  private final LoadRepository load;
  private final CareRepository care;
  private final LadderRepository ladder;

  /** With what is logged and kept. */
  public SeasonStart(WorkLog log, LoadRepository load, CareRepository care, LadderRepository ladder) {
    this.log = log;
    this.load = load;
    this.care = care;
    this.ladder = ladder;
  }

  /**
   * A season of these days.
   *
   * @param squad who is in it
   * @param before the last season, or null: places, rules and what was said of each athlete are taken from it
   */
  public SeasonInput season(String name, LocalDate first, LocalDate last, List<Athlete> squad, @Nullable SeasonInput before, LocalDate today) {
    List<Member> members = squad.stream().map(a -> member(a, first, before, today)).toList();
    Set<DayOfWeek> days = EnumSet.noneOf(DayOfWeek.class);
    members.forEach(m -> days.addAll(m.days()));
    return new SeasonInput(
        name, first, last, List.of(), List.of(), before != null ? opened(before.venues()) : assumed(days.isEmpty() ? DAYS : days), members,
        before != null ? before.rules() : SeasonRules.usual(care.guard()));
  }

  /** An athlete as they are known, before a season that begins on a day. */
  public Member member(Athlete a, LocalDate first, @Nullable SeasonInput before, LocalDate today) {
    Member was = before == null ? null : before.squad().stream().filter(m -> m.id() == a.id()).findFirst().orElse(null);
    LegCare known = care.care(a.id(), today);
    List<DayLoad> days = since(a, today.minusWeeks(UsualDays.WEEKS));
    int full = was != null ? was.fullSteps() : usualRunUp(a);
    return new Member(
        a, known.limited() || growing(a, first), known.firstSession(), ladder.rungs(a.id()), full, was != null ? was.days() : usual(days), was != null ? was.peakWeek() : largest(a, days),
        null, List.of(), List.of(), List.of(), past(a, first, today));
  }

  /** On the season's first day: as the coach says, and until then by the birth date. */
  private boolean growing(Athlete a, LocalDate first) {
    return care.care(a.id(), first).growing();
  }

  /** What was done before a season that begins on a day, as far as the log knows today. */
  public History past(Athlete a, LocalDate first, LocalDate today) {
    LocalDate from = (first.isBefore(today) ? first : today).minusDays(LOG_DAYS);
    List<DayLoad> days = since(a, from).stream().filter(d -> d.date().isBefore(first)).toList();
    return new History(days, log.first(List.of(a)).get(a.id()), load.lastWeeks().get(a.id()));
  }

  private List<DayLoad> since(Athlete a, LocalDate from) {
    return log.since(List.of(a), from).getOrDefault(a.id(), List.of());
  }

  private static Set<DayOfWeek> usual(List<DayLoad> days) {
    Set<DayOfWeek> usual = UsualDays.of(days).keySet();
    return usual.isEmpty() ? DAYS : EnumSet.copyOf(usual);
  }

  /** A quarter above the largest seven days of the log, at least what the level usually has. */
  private int largest(Athlete a, List<DayLoad> days) {
    ContactWeights weights = new ContactWeights(care.guard().scale());
    double most = 0;
    for (DayLoad end : days) {
      double week = 0;
      for (DayLoad d : days) {
        boolean within = !d.date().isAfter(end.date()) && d.date().isAfter(end.date().minusDays(7));
        week += within ? weights.of(d).rightUnits() + weights.of(d).leftUnits() : 0;
      }
      most = Math.max(most, week);
    }
    int usual = a.level().judgedAs() == Level.BEGINNER ? 150 : a.level() == Level.INTERMEDIATE ? 300 : 600;
    return Math.min(5000, Math.max(usual, (int) (10 * Math.round(most * ROOM_TO_GROW / 10))));
  }

  private static int usualRunUp(Athlete a) {
    int usual = a.level().judgedAs() == Level.BEGINNER ? 10 : a.level() == Level.INTERMEDIATE ? 12 : 16;
    return Math.min(Athlete.MAX_STEPS, Math.max(usual, a.rung()));
  }

  /** The places of the season before; its closed days were those of that season. */
  private static List<Venue> opened(List<Venue> before) {
    return before.stream().map(v -> new Venue(v.key(), v.name(), v.surface(), v.sand(), v.athletes(), v.hours(), List.of())).toList();
  }

  private static List<Venue> assumed(Set<DayOfWeek> days) {
    Map<DayOfWeek, Venue.Hours> hours = new EnumMap<>(DayOfWeek.class);
    days.forEach(d -> hours.put(d, EVENING));
    return List.of(
        new Venue("grass", "Grass", Surface.GRASS, false, AT_ONCE, hours, List.of()), new Venue("pit", "Pit", Surface.TRACK, true, AT_ONCE, hours, List.of()));
  }
}
