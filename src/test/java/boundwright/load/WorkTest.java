package boundwright.load;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import boundwright.athlete.Athlete;
import boundwright.athlete.Level;
import boundwright.athlete.Profile;
import boundwright.athlete.Surface;
import boundwright.flight.FlightModel;
import boundwright.flight.Forecast;
import boundwright.flight.Outcome;
import boundwright.flight.Rep;
import boundwright.flight.RunUp;
import boundwright.footfall.FlightKind;
import boundwright.footfall.Foot;
import boundwright.footfall.Sequence;
import boundwright.load.account.ContactTimes;
import boundwright.load.account.DayLoad;
import boundwright.load.account.LegCounts.Legs;
import boundwright.load.account.LegCounts;
import boundwright.load.account.RelativeImpact;
import boundwright.load.account.Work;
import boundwright.quantity.Estimate;
import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.Test;

/** What is still to come of a plan, and what each leg did. Counts are worked by hand from the sequences. */
class WorkTest {
  private static final LocalDate DAY = LocalDate.of(2026, 5, 12);

  @Test
  void whatWasDoneIsTakenOffThePlanOnceAlsoMirroredAndOnAnotherSurface() {
    List<Work> plan = List.of(work("RRL x2", 6, 4, Surface.TRACK), work("RL x5", 2, 0, Surface.TRACK), work("RRL x2", 2, 4, Surface.TRACK));
    assertThat(Work.rest(plan, List.of())).isEqualTo(plan);
    List<Work> done = List.of(work("RRL RRL", 1, 4, Surface.GRASS), work("LLR x2", 6, 4, Surface.TRACK), work("RL x5", 1, 2, Surface.TRACK));
    assertThat(Work.rest(plan, done)).as("from other steps it is another drill")
        .containsExactly(work("RL x5", 2, 0, Surface.TRACK), work("RRL x2", 1, 4, Surface.TRACK));
    assertThat(Work.rest(plan, List.of(work("RRL x2", 50, 4, Surface.TRACK), work("LR x5", 2, 0, Surface.TRACK)))).isEmpty();
  }

  @Test
  void anAbandonedRepCountsUpToWhereItBrokeOffAndWholeWhereNobodyCounted() {
    Rep known = new Rep(1, 1, DAY, Sequence.parse("RRL RRL"), 4, Surface.TRACK, List.of(), null, Outcome.ABANDONED, 4, null, false, List.of());
    Rep unknown = new Rep(2, 1, DAY, Sequence.parse("RRL RRL"), 4, Surface.TRACK, List.of(), null, Outcome.ABANDONED, null, false, List.of());
    DayLoad day = DayLoad.byDay(List.of(known, unknown)).get(0);
    assertThat(day.contacts()).isEqualTo(4 + 6);
    assertThat(day.contacts(Foot.RIGHT)).isEqualTo(3 + 4);
    assertThat(day.contacts(Foot.LEFT)).isEqualTo(1 + 2);
    assertThat(Work.rest(List.of(work("RRL RRL", 2, 4, Surface.TRACK)), List.of(Work.of(known)))).as("a rep broken off is not done")
        .containsExactly(work("RRL RRL", 2, 4, Surface.TRACK));
  }

  @Test
  void contactsCountForTheLegAndTheFlightThatTheyTakeOffFor() {
    // RRL: right takes off for a hop, right for a bound, left for the jump
    LegCounts counts =
        LegCounts.of(
            List.of(
                new DayLoad(DAY, List.of(work("RRL", 2, 4, Surface.GRASS))),
                new DayLoad(DAY.plusDays(1), List.of(work("L x3", 1, 0, Surface.TRACK)))));
    assertThat(counts.all()).isEqualTo(new Legs(4, 5));
    assertThat(counts.byKind().get(FlightKind.HOP)).isEqualTo(new Legs(2, 2));
    assertThat(counts.byKind().get(FlightKind.BOUND)).isEqualTo(new Legs(2, 0));
    assertThat(counts.byKind().get(FlightKind.JUMP)).isEqualTo(new Legs(0, 3));
    assertThat(counts.bySteps().keySet()).containsExactly(0, 4);
    assertThat(counts.bySteps().get(0)).isEqualTo(new Legs(0, 3));
    assertThat(counts.bySurface().get(Surface.GRASS)).isEqualTo(new Legs(4, 2));
  }

  @Test
  void everyWayOfCountingAddsUpToAllContacts() {
    LegCounts c = LegCounts.of(List.of(new DayLoad(DAY, List.of(work("RRLL RRLL RR", 3, 6, Surface.TRACK), work("RL x5", 2, 0, Surface.GRASS)))));
    assertThat(c.all().both()).isEqualTo(50);
    assertThat(c.byKind().values().stream().mapToInt(Legs::both).sum()).isEqualTo(50);
    assertThat(c.bySteps().values().stream().mapToInt(Legs::both).sum()).isEqualTo(50);
    assertThat(c.bySurface().values().stream().mapToInt(Legs::both).sum()).isEqualTo(50);
  }

  /** Impulse and momentum (exact): longer flights at the same speed ask more force; own output for the size. */
  @Test
  void relativeImpactStartsFromTheAthletesOwnRunUp() {
    Athlete athlete = new Athlete(1, "Ilka Sandfoot", Level.INTERMEDIATE, Foot.RIGHT, 4);
    FlightModel model = FlightModel.prior(new Profile(athlete, List.of(), List.of()));
    Forecast forecast = model.forecast(Sequence.parse("RRL x2"), 8, Surface.TRACK, DAY);
    List<Double> slow = RelativeImpact.perContact(forecast, runUp(6), ContactTimes.DEFAULT);
    List<Double> quick = RelativeImpact.perContact(forecast, runUp(9), ContactTimes.DEFAULT);
    assertThat(slow).hasSize(6).allSatisfy(f -> assertThat(f).isBetween(1.5, 7.0));
    for (int i = 0; i < 6; i++) {
      assertThat(quick.get(i)).as("the same flights at a higher speed stay in the air for less time").isLessThan(slow.get(i));
    }
    Forecast standing = model.forecast(Sequence.parse("RRL x2"), 0, Surface.TRACK, DAY);
    assertThat(RelativeImpact.perContact(standing, runUp(0), ContactTimes.DEFAULT).get(0))
        .as("from standing the run-up has no speed to give")
        .isCloseTo(RelativeImpact.perContact(standing, runUp(12), ContactTimes.DEFAULT).get(0), within(1e-12));
  }

  private static RunUp runUp(double speed) {
    return new RunUp(Estimate.normal(10, 0.1), Estimate.normal(speed, 0.1), 1);
  }

  private static Work work(String sequence, int reps, int steps, Surface surface) {
    return new Work(Sequence.parse(sequence), reps, steps, surface);
  }
}
