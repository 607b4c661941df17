package boundwright.season.ladder;

import static org.assertj.core.api.Assertions.assertThat;

import boundwright.athlete.Athlete;
import boundwright.athlete.Level;
import boundwright.athlete.Surface;
import boundwright.footfall.Foot;
import boundwright.load.account.DayLoad;
import boundwright.load.account.History;
import boundwright.load.account.Work;
import boundwright.readiness.DrillFamily;
import boundwright.readiness.GateRules;
import boundwright.season.Away;
import boundwright.season.Climb;
import boundwright.season.Entry;
import boundwright.season.Meet;
import boundwright.season.Member;
import boundwright.season.Period;
import boundwright.season.SeasonInput;
import boundwright.season.SeasonPlan;
import boundwright.season.Span;
import boundwright.season.Venue;
import boundwright.season.ladder.SquadStay.Beginning;
import boundwright.season.ladder.SquadStay.End;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** Laws of the climb over random seasons and athletes (seeded). */
class ClimbLawsTest {
  private static final LocalDate FIRST = LocalDate.of(2026, 1, 7);
  private static final GateRules.Stay STAY = GateRules.DEFAULT.stay();
  private static final int SEASONS = 60;

  /** An athlete and their season. */
  private record Case(SeasonInput season, Member m, SquadPace pace) {
    List<PlannedClimb> climbs(double attendance) {
      return planner().climbs(m, FIRST, List.of(), pace, attendance);
    }

    ClimbPlanner planner() {
      return new ClimbPlanner(season, ClimbRules.usual(STAY));
    }
  }

  private static Set<DayOfWeek> someDays(Random r) {
    Set<DayOfWeek> days = EnumSet.of(DayOfWeek.of(1 + r.nextInt(7)));
    IntStream.range(0, r.nextInt(4)).forEach(i -> days.add(DayOfWeek.of(1 + r.nextInt(7))));
    return days;
  }

  private static <T> T one(Random r, T[] of) {
    return of[r.nextInt(of.length)];
  }

  private static Case any(Random r) {
    int length = 150 + r.nextInt(200);
    List<Away> away = new ArrayList<>();
    for (int i = r.nextInt(4); i > 0; i--) {
      LocalDate from = FIRST.plusDays(r.nextInt(length));
      away.add(new Away(new Span(from, from.plusDays(r.nextInt(30))), one(r, Away.Why.values())));
    }
    List<Meet> meets = new ArrayList<>();
    List<Entry> entries = new ArrayList<>();
    for (int i = 0; i < 3; i++) {
      meets.add(new Meet("M" + i, "Meet " + i, FIRST.plusDays(r.nextInt(length))));
      entries.add(new Entry("M" + i, r.nextBoolean() ? Entry.Importance.MAIN : Entry.Importance.USUAL));
    }
    List<Period> periods = new ArrayList<>();
    for (int i = 0; i < 4; i++) {
      periods.add(new Period(one(r, Period.Kind.values()), FIRST.plusDays(r.nextInt(length))));
    }
    Map<DrillFamily, Integer> steps = new EnumMap<>(DrillFamily.class);
    for (DrillFamily f : DrillFamily.values()) {
      steps.put(f, r.nextInt(9));
    }
    Athlete a = new Athlete(1, "Athlete", Level.INTERMEDIATE, Foot.LEFT, r.nextInt(9));
    Member m =
        new Member(a, false, null, steps, 6 + r.nextInt(12), someDays(r), 300, r.nextInt(4) == 0 ? FIRST.plusDays(r.nextInt(60)) : null, away, entries,
            List.of(), past(r));
    SeasonInput plain = InventedClimbs.season(FIRST, length, List.of(InventedClimbs.member(1, 0, Set.of(DayOfWeek.MONDAY))));
    Venue v = plain.venues().get(0);
    LocalDate closed = FIRST.plusDays(r.nextInt(length));
    Venue venue = new Venue(v.key(), v.name(), v.surface(), true, 40, v.hours(), List.of(new Span(closed, closed.plusDays(r.nextInt(20)))));
    SeasonInput season = new SeasonInput("Any", FIRST, FIRST.plusDays(length - 1L), periods, meets, List.of(venue), List.of(m), plain.rules());
    return new Case(season, m, SquadPace.of(stays(r), STAY, PacePrior.USUAL));
  }

  private static History past(Random r) {
    List<DayLoad> days = new ArrayList<>();
    int before = r.nextInt(250);
    while (before > 0) {
      DrillFamily f = one(r, DrillFamily.values());
      days.add(new DayLoad(FIRST.minusDays(before), List.of(new Work(Planned.drill(f), 6, r.nextInt(9), Surface.GRASS))));
      before -= 1 + r.nextInt(r.nextInt(8) == 0 ? 40 : 7);
    }
    return History.of(days);
  }

  private static List<SquadStay> stays(Random r) {
    List<SquadStay> out = new ArrayList<>();
    for (int i = r.nextInt(5); i > 0; i--) {
      int n = 1 + r.nextInt(20);
      List<LocalDate> days = IntStream.range(0, n).mapToObj(d -> FIRST.minusDays(4L * (n - d))).toList();
      out.add(new SquadStay(2 + r.nextInt(3), DrillFamily.ALTERNATE, 2 * r.nextInt(4), days, days.get(n - 1), Beginning.NEW, End.READY));
    }
    return out;
  }

  @Test
  void theLeastStayIsKeptAsTheGateItselfCountsIt() {
    long seed = 1501;
    Random r = new Random(seed);
    // who is ready in two sessions is kept by the least stay alone
    SquadPace quick = SquadPace.of(List.of(), STAY, new PacePrior(2, 0.05, 0.01, 0.01, 0.05, 15));
    int decisions = 0;
    for (int i = 0; i < SEASONS; i++) {
      Case c = any(r);
      Map<LocalDate, List<DrillFamily>> days = new TreeMap<>();
      for (int d = 0; d < c.season().days(); d++) {
        LocalDate day = c.season().day(d);
        if (c.m().days().contains(day.getDayOfWeek()) && r.nextInt(10) < 8) {
          days.put(day, List.of(DrillFamily.values()).subList(r.nextInt(3), 3));
        }
      }
      SeasonPlan.Year bare = Planned.year(c.m(), List.of(), days);
      List<Climb> climbs =
          c.planner().climbs(c.m(), bare, FIRST, List.of(), i % 2 == 0 ? quick : c.pace(), 1).stream().map(PlannedClimb::climb).toList();
      decisions += climbs.stream().mapToInt(k -> k.decisions().size()).sum();
      assertThat(LeastStayCheck.of(c.m(), Planned.year(c.m(), climbs, days), STAY)).as("seed %s season %s", seed, i).isEmpty();
    }
    assertThat(decisions).as("enough to tell").isGreaterThan(3 * SEASONS);
  }

  @Test
  void nothingNewAndNoDecisionWhereItMustNotBe() {
    long seed = 1502;
    Random r = new Random(seed);
    for (int i = 0; i < SEASONS; i++) {
      Case c = any(r);
      for (PlannedClimb p : c.climbs(0.5 + 0.5 * r.nextDouble())) {
        Climb climb = p.climb();
        List<LocalDate> fresh = new ArrayList<>();
        climb.decisions().forEach(d -> fresh.add(d.date()));
        climb.stages().stream().skip(1).forEach(s -> fresh.add(s.from()));
        for (LocalDate day : fresh) {
          String as = "seed " + seed + " season " + i + " " + climb.family() + " " + day;
          assertThat(c.m().away(day)).as(as).isEmpty();
          assertThat(c.season().period(day)).as(as).isNotEqualTo(Period.Kind.REST);
          assertThat(c.m().days()).as(as).contains(day.getDayOfWeek());
          assertThat(c.season().venues().get(0).open(day)).as(as).isTrue();
          for (Meet meet : c.season().meets()) {
            if (c.m().entry(meet).orElseThrow() == Entry.Importance.MAIN) {
              assertThat(!day.isBefore(meet.date().minusDays(6)) && !day.isAfter(meet.date())).as(as + " meet " + meet.date()).isFalse();
            }
          }
        }
        int steps = c.m().steps(climb.family());
        for (Climb.DecisionDay d : climb.decisions()) {
          assertThat(d.stays()).isEqualTo(steps);
          assertThat(d.goesTo()).isEqualTo(steps + 2).isLessThanOrEqualTo(Math.min(12, c.m().fullSteps()));
          assertThat(d.chance()).isBetween(0.0, 1.0);
          assertThat(d.nextLook()).isAfter(d.date());
          steps += 2;
        }
        for (StayForecast s : p.stays()) {
          Climb.DecisionDay d = s.decision();
          if (d != null) {
            assertThat(d.date()).as("seed %s season %s", seed, i).isAfterOrEqualTo(s.expected()).isAfterOrEqualTo(s.leastOver());
          }
        }
      }
    }
  }

  @Test
  void betterAttendanceIsNeverLater() {
    long seed = 1503;
    Random r = new Random(seed);
    for (int i = 0; i < SEASONS; i++) {
      Case c = any(r);
      double low = 0.2 + 0.7 * r.nextDouble();
      double high = low + (1 - low) * r.nextDouble();
      neverLater("seed " + seed + " season " + i + " attendance " + low + " to " + high, c.climbs(low), c.climbs(high));
    }
  }

  @Test
  void moreSpentThereIsNeverLater() {
    long seed = 1504;
    Random r = new Random(seed);
    for (int i = 0; i < SEASONS; i++) {
      Case c = any(r);
      int n = 1 + r.nextInt(15);
      List<PlannedClimb> few = spent(c, n);
      neverLater("seed " + seed + " season " + i + " spent " + n, few, spent(c, n + 1 + r.nextInt(10)));
    }
  }

  /** In all families, sessions every third day until the season begins. */
  private static List<PlannedClimb> spent(Case c, int n) {
    List<SquadStay> own = new ArrayList<>();
    for (DrillFamily f : DrillFamily.values()) {
      List<LocalDate> days = IntStream.range(0, n).mapToObj(d -> FIRST.minusDays(3L * (d + 1))).toList();
      own.add(new SquadStay(1, f, c.m().steps(f), days, null, Beginning.NEW, End.STILL_THERE));
    }
    Member m = c.m();
    Member bare =
        new Member(m.athlete(), false, null, m.steps(), m.fullSteps(), m.days(), 300, m.joins(), m.away(), m.entries(), List.of(), History.NONE);
    return c.planner().climbs(bare, FIRST, own, c.pace(), 0.9);
  }

  private static void neverLater(String as, List<PlannedClimb> before, List<PlannedClimb> after) {
    for (int f = 0; f < before.size(); f++) {
      List<Climb.DecisionDay> a = before.get(f).climb().decisions();
      List<Climb.DecisionDay> b = after.get(f).climb().decisions();
      assertThat(b.size()).as(as).isGreaterThanOrEqualTo(a.size());
      for (int d = 0; d < a.size(); d++) {
        assertThat(b.get(d).date()).as(as + " family " + f + " decision " + d).isBeforeOrEqualTo(a.get(d).date());
      }
    }
  }
}
