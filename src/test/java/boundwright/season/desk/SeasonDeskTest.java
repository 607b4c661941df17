package boundwright.season.desk;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import boundwright.demo.DemoSeason;
import boundwright.demo.InventedFolder;
import boundwright.load.GuardSettings;
import boundwright.load.LegCare;
import boundwright.quantity.RefusedException;
import boundwright.season.Away;
import boundwright.season.PlannedDay;
import boundwright.season.SeasonInput;
import boundwright.season.SeasonPlan;
import boundwright.season.SeasonRules;
import boundwright.season.Span;
import boundwright.season.mend.Happened;
import boundwright.season.solve.SeasonWork;
import boundwright.store.Workbench;
import boundwright.store.season.SeasonFile;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Whatever is published was looked at as a whole first. */
@SuppressWarnings("NullAway.Init") // JUnit fills the folder in
class SeasonDeskTest {
  private static final Clock DAY = Clock.fixed(Instant.parse("2026-09-27T09:00:00Z"), ZoneId.of("Europe/Berlin"));

  private static SeasonPlan plan = new SeasonPlan("", 0, List.of());

  @TempDir Path folder;
  private Workbench bench;
  private SeasonDesk desk;
  private long id;

  @BeforeEach
  void open() {
    bench = Workbench.open(InventedFolder.fill(folder, DAY), DAY);
    desk = new SeasonDesk(bench.seasons(), SeasonWork::ofFile, DAY, new Random(1));
    byte[] file = SeasonFile.write(DemoSeason.from(LocalDate.of(2026, 9, 28), GuardSettings.DEFAULT), GuardSettings.DEFAULT, "").getBytes(StandardCharsets.UTF_8);
    id = desk.keep(SeasonFile.read(file, bench.care().guard(), (name, written) -> bench.athletes().byName(name).orElseThrow().id()));
    // the same for all tests, as the squad has the same numbers in each
    plan = !plan.years().isEmpty() ? plan : SeasonWork.ofFile().planner(desk.input(id), null, desk.today(), 1).plan(Duration.ZERO, t -> {}).plan();
  }

  @AfterEach
  void close() {
    bench.close();
  }

  /** The plan with a hard day of somebody's done again on the two days after it. */
  private SeasonPlan wrong() {
    SeasonPlan.Year y = plan.years().get(0);
    PlannedDay hard = y.days().stream().filter(d -> d.session().contacts() >= 60).findFirst().orElseThrow();
    List<PlannedDay> days = new ArrayList<>(y.days().stream().filter(d -> d.date().isBefore(hard.date()) || d.date().isAfter(hard.date().plusDays(2))).toList());
    for (int k = 0; k < 3; k++) {
      days.add(new PlannedDay(hard.date().plusDays(k), hard.session()));
    }
    List<SeasonPlan.Year> years = new ArrayList<>(plan.years());
    years.set(0, new SeasonPlan.Year(y.athleteId(), y.athlete(), days, y.climbs(), y.wanted()));
    return new SeasonPlan(plan.name(), 0, years);
  }

  @Test
  void aPlanThatTheGuardAllowsIsPublished() {
    assertThat(desk.publish(id, plan).version()).isEqualTo(1);
    assertThat(desk.before(id)).isEmpty();
    assertThat(desk.publish(id, plan).version()).isEqualTo(2);
    assertThat(desk.before(id)).contains(1);
  }

  @Test
  void aPlanWithARefusedDayIsNotPublishedAndTheFirstRefusalsAreSaid() {
    desk.publish(id, plan);
    String name = plan.years().get(0).athlete();
    assertThatThrownBy(() -> desk.publish(id, wrong()))
        .isInstanceOf(RefusedException.class)
        .hasMessageStartingWith("Not published:\n" + name + ", 202")
        .satisfies(e -> assertThat(String.valueOf(e.getMessage()).lines().filter(l -> l.startsWith(name))).hasSizeBetween(1, 3));
    assertThat(bench.seasons().versions(id)).hasSize(1);
  }

  @Test
  void nobodyTrainsWhoIsHeldAndNobodyWhereItIsClosed() {
    PlannedDay first = plan.years().get(0).days().get(0);
    long athlete = plan.years().get(0).athleteId();
    bench.seasons().keep(id, Happened.away(desk.input(id), athlete, new Away(new Span(first.date(), first.date()), Away.Why.HELD)));
    assertThatThrownBy(() -> desk.publish(id, plan)).hasMessageContaining(first.date() + ": held");
    SeasonInput free = desk.input(id);
    String venue = first.session().venue();
    assertThat(venue).isNotNull();
    bench.seasons().keep(id, Happened.closed(free, String.valueOf(venue), first.date()));
    assertThatThrownBy(() -> desk.publish(id, plan)).hasMessageContaining(first.date() + ": closed");
    assertThat(bench.seasons().versions(id)).isEmpty();
  }

  private SeasonDesk live() {
    return new SeasonDesk(
        bench.seasons(), () -> new SeasonWork(bench.stays(), bench.workLog(), bench.care(), bench.ladder().rules().stay()), DAY, new Random(1));
  }

  @Test
  void aHoldThatWasEnteredUnderWatchCountsWhereverAPlanIsPublishedOrMended() {
    SeasonPlan.Year year = plan.years().get(0);
    desk.publish(id, plan);
    LocalDate since = LocalDate.of(2026, 9, 20);
    LegCare.MedicalHold hold = bench.care().openHold(year.athleteId(), new LegCare.MedicalHold(0, since, "left shin, said the clinic", null, null));
    assertThatThrownBy(() -> live().publish(id, plan))
        .hasMessageContaining(year.athlete() + ", " + year.days().get(0).date() + " and " + (year.days().size() - 1) + " more days: On medical hold since " + since)
        .hasMessageNotContaining("shin");
    Proposals proposals = new Proposals();
    Proposal p = new MendDesk(live(), proposals, System::nanoTime).propose(id, null, null, null);
    assertThat(p.against()).isEmpty();
    assertThat(p.plan().of(year.athleteId()).orElseThrow().days()).as("until a clinician ends it").isEmpty();
    assertThat(p.input()).as("the hold stays where it was entered").isEqualTo(desk.input(id));
    assertThat(p.plan().years().subList(1, 3)).isEqualTo(plan.years().subList(1, 3));
    LocalDate end = year.days().get(9).date();
    bench.care().endHold(year.athleteId(), hold.id(), "Dr. Invented", end);
    assertThatThrownBy(() -> live().publish(id, plan)).hasMessageContaining(" and 8 more days: On medical hold");
    assertThat(live().work().planner(desk.input(id), plan, desk.today(), 1).problems().get(0).choices(0)).as("nothing to choose on a held day").hasSize(1);
  }

  @Test
  void aTaperThatIsNoneIsNotPublishedWhoeverMadeThePlan() {
    SeasonInput in = desk.input(id);
    SeasonRules r = in.rules();
    SeasonRules deeper =
        new SeasonRules(
            r.week(), r.lighterEvery(), r.lighterShare(), new SeasonRules.Taper(14, 0.85, 0.9, 0.95), r.testEvery(), r.softContacts(), r.noticeDays(), r.spareShare(),
            r.guard());
    assertThat(desk.against(in, plan)).isEmpty();
    bench.seasons().keep(id, new SeasonInput(in.name(), in.first(), in.last(), in.periods(), in.meets(), in.venues(), in.squad(), deeper));
    assertThatThrownBy(() -> desk.publish(id, plan))
        .hasMessageContaining("Wren Samphire, Indoor championships (invented)")
        .hasMessageContaining("at least 85 % is asked");
    assertThat(bench.seasons().versions(id)).isEmpty();
  }

  @Test
  void aProposalIsPublishedOnceAndNotOverSomethingElse() {
    SeasonInput input = desk.input(id);
    Proposal p = new Proposal(1, id, false, 0, input, input, plan, List.of(), Map.of(), List.of());
    assertThat(desk.accept(p).version()).isEqualTo(1);
    assertThatThrownBy(() -> desk.accept(p)).hasMessageContaining("Version 1 was published meanwhile");
    Proposal next = new Proposal(2, id, false, 1, input, input, plan, List.of(), Map.of(), List.of());
    bench.seasons().keep(id, Happened.closed(input, input.venues().get(0).key(), input.last()));
    assertThatThrownBy(() -> desk.accept(next)).hasMessageContaining("The season was changed");
    assertThat(bench.seasons().versions(id)).hasSize(1);
  }
}
