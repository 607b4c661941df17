package boundwright.season;

import boundwright.athlete.Athlete;
import boundwright.athlete.Level;
import boundwright.athlete.Surface;
import boundwright.footfall.Foot;
import boundwright.load.GuardSettings;
import boundwright.load.account.History;
import boundwright.load.account.LastWeek;
import boundwright.readiness.DrillFamily;
import boundwright.season.Climb.Stage;
import boundwright.season.Venue.Hours;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;

/** Invented seasons: one pit, one gym, four free days on the grass, two peaks, exams, holidays, late joiners. */
public final class MadeUpSeason {
  private static final LocalDate FIRST = LocalDate.of(2026, 10, 5);

  private MadeUpSeason() {}

  /** A season of so many weeks, the same for the same seed. */
  public static SeasonInput of(int athletes, int weeks, long seed) {
    Random random = new Random(seed);
    LocalDate last = FIRST.plusDays(7L * weeks - 1);
    List<Period> periods = periods(weeks);
    List<Meet> meets = meets(weeks);
    int share = Math.max(3, athletes / 3);
    List<Venue> venues =
        List.of(
            venue("pit", "Quarry Lane pit", Surface.RAISED_RUNWAY, true, share, DayOfWeek.TUESDAY, DayOfWeek.THURSDAY, DayOfWeek.SATURDAY),
            venue("gym", "Mill gym", Surface.SPRUNG_FLOOR, false, share, DayOfWeek.MONDAY, DayOfWeek.WEDNESDAY, DayOfWeek.FRIDAY),
            venue("grass", "Long Meadow", Surface.GRASS, false, 2 * share, DayOfWeek.MONDAY, DayOfWeek.TUESDAY, DayOfWeek.THURSDAY, DayOfWeek.SUNDAY));
    List<Member> squad = new ArrayList<>();
    for (int a = 0; a < athletes; a++) {
      squad.add(member(a, weeks, meets, random));
    }
    return new SeasonInput("Made-up year " + seed, FIRST, last, periods, meets, venues, squad, SeasonRules.usual(GuardSettings.DEFAULT));
  }

  private static List<Period> periods(int weeks) {
    double f = weeks / 44.0;
    List<Period> out = new ArrayList<>();
    Period.Kind[] kinds = {
      Period.Kind.GENERAL, Period.Kind.SPECIFIC, Period.Kind.PRE_COMPETITION, Period.Kind.COMPETITION, Period.Kind.GENERAL, Period.Kind.SPECIFIC,
      Period.Kind.COMPETITION
    };
    int[] at = {0, 9, 14, 18, 22, 28, 34};
    for (int i = 0; i < kinds.length; i++) {
      out.add(new Period(kinds[i], FIRST.plusDays(7 * Math.round(at[i] * f))));
    }
    return out;
  }

  private static List<Meet> meets(int weeks) {
    double f = weeks / 44.0;
    int[] at = {17, 19, 21, 33, 36, 38, 41, 43};
    List<Meet> out = new ArrayList<>();
    for (int i = 0; i < at.length; i++) {
      LocalDate day = FIRST.plusDays(7 * Math.min(weeks - 1, Math.round(at[i] * f)) + 5);
      if (out.stream().noneMatch(m -> m.date().equals(day))) {
        out.add(new Meet("m" + i, "Meet " + (i + 1) + " at Alderfield", day));
      }
    }
    return out;
  }

  private static Venue venue(String key, String name, Surface surface, boolean sand, int athletes, DayOfWeek... days) {
    Map<DayOfWeek, Hours> hours = new EnumMap<>(DayOfWeek.class);
    for (DayOfWeek d : days) {
      hours.put(d, new Hours(LocalTime.of(17, 0), LocalTime.of(19, 0)));
    }
    return new Venue(key, name, surface, sand, athletes, hours, List.of());
  }

  private static Member member(int a, int weeks, List<Meet> meets, Random random) {
    Level level = Level.KNOWN.get(random.nextInt(3));
    boolean growing = level == Level.BEGINNER && random.nextInt(3) > 0;
    int steps = level == Level.BEGINNER ? 0 : level == Level.INTERMEDIATE ? 2 : 4;
    Set<DayOfWeek> days = EnumSet.noneOf(DayOfWeek.class);
    while (days.size() < 4) {
      days.add(DayOfWeek.of(1 + random.nextInt(7)));
    }
    if (days.stream().noneMatch(d -> d == DayOfWeek.TUESDAY || d == DayOfWeek.THURSDAY || d == DayOfWeek.SATURDAY)) {
      days.add(DayOfWeek.THURSDAY);
    }
    int week = level == Level.BEGINNER ? 60 : level == Level.INTERMEDIATE ? 120 : 180;
    int peak = (level == Level.BEGINNER ? 160 : level == Level.INTERMEDIATE ? 320 : 520) + random.nextInt(80);
    List<Away> away = new ArrayList<>();
    LocalDate holiday = FIRST.plusDays(7L * (weeks / 4) + random.nextInt(14));
    away.add(new Away(new Span(holiday, holiday.plusDays(6 + random.nextInt(5))), Away.Why.AWAY));
    LocalDate exams = FIRST.plusDays(7L * (weeks / 2) + random.nextInt(21));
    away.add(new Away(new Span(exams, exams.plusDays(9)), Away.Why.SOFT));
    if (random.nextInt(6) == 0) {
      LocalDate held = FIRST.plusDays(random.nextInt(7 * weeks - 20));
      away.add(new Away(new Span(held, held.plusDays(14)), Away.Why.HELD));
    }
    List<Entry> entries = new ArrayList<>();
    for (int i = 0; i < meets.size(); i++) {
      boolean main = i == 2 || i == meets.size() - 1;
      if (main || random.nextInt(3) > 0) {
        entries.add(new Entry(meets.get(i).key(), main ? Entry.Importance.MAIN : Entry.Importance.USUAL));
      }
    }
    LocalDate joins = random.nextInt(8) == 0 ? FIRST.plusDays(7L * random.nextInt(Math.max(1, weeks / 5))) : null;
    List<Wish> wishes = new ArrayList<>();
    for (int i = 0; i < weeks / 12; i++) {
      wishes.add(new Wish(FIRST.plusDays(random.nextInt(7 * weeks)), null));
    }
    return new Member(
        new Athlete(a + 1, "Runner " + (a + 1), level, random.nextBoolean() ? Foot.RIGHT : Foot.LEFT, steps), growing, FIRST.minusDays(90), Map.of(),
        level == Level.ADVANCED ? 16 : 12, days, peak, joins, away, entries, wishes, new History(List.of(), null, new LastWeek(FIRST, week)));
  }

  /** The same, but for when an athlete is away. */
  public static SeasonInput with(SeasonInput in, int athlete, List<Away> away) {
    List<Member> squad = new ArrayList<>(in.squad());
    Member m = squad.get(athlete);
    squad.set(
        athlete,
        new Member(
            m.athlete(), m.growing(), m.firstSession(), m.steps(), m.fullSteps(), m.days(), m.peakWeek(), m.joins(), away, m.entries(), m.wishes(), m.past()));
    return new SeasonInput(in.name(), in.first(), in.last(), in.periods(), in.meets(), in.venues(), squad, in.rules());
  }

  /** Two steps more every so many weeks. */
  public static List<List<Climb>> climbs(SeasonInput input, int everyWeeks) {
    List<List<Climb>> out = new ArrayList<>();
    for (Member m : input.squad()) {
      List<Climb> one = new ArrayList<>();
      for (DrillFamily f : DrillFamily.values()) {
        List<Stage> stages = new ArrayList<>();
        int steps = m.steps(f);
        int most = Math.min(12, m.fullSteps() - 2);
        for (LocalDate d = input.first(); !d.isAfter(input.last()); d = d.plusWeeks(everyWeeks)) {
          stages.add(new Stage(Math.min(most, steps), d));
          steps += 2;
        }
        one.add(new Climb(f, stages, List.of()));
      }
      out.add(one);
    }
    return out;
  }
}
