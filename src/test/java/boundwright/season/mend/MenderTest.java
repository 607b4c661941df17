package boundwright.season.mend;

import static org.assertj.core.api.Assertions.assertThat;

import boundwright.load.account.DayLoad;
import boundwright.season.Away;
import boundwright.season.Climb;
import boundwright.season.Done;
import boundwright.season.MadeUpSeason;
import boundwright.season.Member;
import boundwright.season.PlannedDay;
import boundwright.season.SeasonInput;
import boundwright.season.SeasonPlan;
import boundwright.season.Span;
import boundwright.season.Venue;
import boundwright.season.check.GuardCheck;
import boundwright.season.solve.SeasonPlanner;
import java.time.Duration;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

class MenderTest {
  private static final SeasonInput INPUT = MadeUpSeason.of(4, 16, 11);
  private static final List<List<Climb>> CLIMBS = MadeUpSeason.climbs(INPUT, 6);
  private static SeasonPlan plan = new SeasonPlan("", 0, List.of());

  @BeforeAll
  static void published() {
    plan = new SeasonPlanner(INPUT, CLIMBS, null, 11).plan(Duration.ofMillis(1600), t -> {}).plan();
  }

  private static Mender.Mended mend(SeasonInput input, Done done) {
    long most = System.nanoTime() + 4_000_000_000L;
    return new Mender(input, CLIMBS, plan, done, () -> System.nanoTime() > most).mend();
  }

  @Test
  void whereNothingHappenedNothingChanges() {
    for (int day = 0; day < INPUT.days(); day += 17) {
      Mender.Mended m = mend(INPUT, Done.asPlanned(plan, INPUT.day(day)));
      assertThat(m.differences()).isEmpty();
      assertThat(m.plan().years()).extracting(SeasonPlan.Year::days).isEqualTo(plan.years().stream().map(SeasonPlan.Year::days).toList());
    }
  }

  @Test
  void aMissedSessionLeavesNothingRefusedAndChangesNothingThatIsOver() {
    Random random = new Random(5);
    int changed = 0;
    for (int i = 0; i < 25; i++) {
      SeasonPlan.Year y = plan.years().get(random.nextInt(4));
      PlannedDay missed = y.days().get(random.nextInt(y.days().size()));
      LocalDate today = missed.date().plusDays(1);
      Done done = Done.asPlanned(plan, today).without(y.athleteId(), missed.date());
      Mender.Mended m = mend(INPUT, done);
      assertThat(new GuardCheck(INPUT).refused(m.plan(), done)).as("%s misses %s", y.athlete(), missed.date()).isEmpty();
      assertThat(m.differences()).allSatisfy(d -> {
        assertThat(d.athleteId()).isEqualTo(y.athleteId());
        assertThat(d.date()).isAfterOrEqualTo(today);
      });
      changed += m.differences().isEmpty() ? 0 : 1;
    }
    assertThat(changed).as("missed sessions after which something is refused").isPositive();
  }

  /** What was overdone stands in the log and cannot be taken back; it must not keep the days to come from being mended. */
  @Test
  void whatWasOverdoneIsNotHeldAgainstTheDaysToCome() {
    SeasonPlan.Year y = plan.years().get(2);
    LocalDate today = INPUT.day(50);
    Map<Long, List<DayLoad>> work = new HashMap<>(Done.asPlanned(plan, today).work());
    List<DayLoad> more = new ArrayList<>(work.getOrDefault(y.athleteId(), List.of()));
    DayLoad largest = more.stream().max(Comparator.comparingInt(DayLoad::contacts)).orElseThrow();
    for (int ago = 16; ago > 12; ago--) {
      LocalDate day = today.minusDays(ago);
      more.removeIf(d -> d.date().equals(day));
      more.add(new DayLoad(day, largest.work()));
    }
    more.sort(Comparator.comparing(DayLoad::date));
    work.put(y.athleteId(), more);
    Done done = new Done(today, work);
    Mender.Mended m = mend(INPUT, done);
    assertThat(m.left()).as("refused days to come").isZero();
    assertThat(new GuardCheck(INPUT).refused(m.plan(), done)).isEmpty();
  }

  @Test
  void aHeldAthleteDoesNothingAndComesBackWithinTheRules() {
    Member m = INPUT.squad().get(1);
    LocalDate from = INPUT.day(40);
    SeasonInput held = Happened.away(INPUT, m.id(), new Away(new Span(from, from.plusDays(20)), Away.Why.HELD));
    Done done = Done.asPlanned(plan, from);
    Mender.Mended mended = mend(held, done);
    assertThat(new GuardCheck(held).refused(mended.plan(), done)).isEmpty();
    assertThat(mended.plan().of(m.id()).orElseThrow().days()).noneMatch(d -> !d.date().isBefore(from) && !d.date().isAfter(from.plusDays(20)));
    assertThat(mended.differences()).allMatch(d -> d.athleteId() == m.id());
  }

  @Test
  void rainOnTheGrassSendsNobodyThereAndNowhereTooMany() {
    Venue grass = INPUT.venues().get(2);
    LocalDate day =
        plan.years().stream().flatMap(y -> y.days().stream()).filter(d -> grass.key().equals(d.session().venue())).map(PlannedDay::date).findFirst().orElseThrow();
    SeasonInput closed = Happened.closed(INPUT, grass.key(), day);
    Done done = Done.asPlanned(plan, day);
    Mender.Mended mended = mend(closed, done);
    assertThat(new GuardCheck(closed).refused(mended.plan(), done)).isEmpty();
    for (Venue v : closed.venues()) {
      long there = mended.plan().years().stream().flatMap(y -> y.on(day).stream()).filter(s -> v.key().equals(s.venue())).count();
      assertThat(there).as(v.name()).isLessThanOrEqualTo(v.open(day) ? v.athletes() : 0);
    }
    assertThat(mended.differences()).isNotEmpty();
  }
}
