package boundwright.store;

import static org.assertj.core.api.Assertions.assertThat;

import boundwright.athlete.Athlete;
import boundwright.athlete.Surface;
import boundwright.flight.Rep;
import boundwright.footfall.Foot;
import boundwright.footfall.FlightKind;
import boundwright.footfall.RunJumps;
import boundwright.footfall.Sequence;
import boundwright.load.account.ContactWeights;
import boundwright.load.account.DayLoad;
import boundwright.load.account.LegCounts;
import boundwright.load.account.LegLoad;
import boundwright.load.account.LoadScale;
import boundwright.load.account.Work;
import boundwright.runway.CoachSettings;
import boundwright.takeoffs.RunJumpMarks;
import boundwright.takeoffs.RunJumpRep;
import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Repeated take-offs in the store: they come back as they were, load their legs with take-offs and landings, and teach nothing of bounds. */
@SuppressWarnings("NullAway.Init") // JUnit fills the folder in
class RunJumpStoreTest {
  private static final RunJumps FIVE = new RunJumps(Foot.LEFT, 2, 5);

  @TempDir Path dir;
  private Workbench w;
  private Athlete ada;

  @BeforeEach
  void open() {
    w = Stores.open(dir, Fixtures.CLOCK);
    ada = w.athletes().byName("Ada Longshore").orElseGet(() -> w.athletes().add(Fixtures.athlete("Ada Longshore")));
  }

  @AfterEach
  void close() {
    w.close();
  }

  private RunJumpRep rep(boolean measured) {
    return new RunJumpRep(
        0, ada.id(), Fixtures.TODAY, FIVE, 4, Surface.GRASS, measured, measured ? List.of(5.43, Double.NaN, 16.07, 21.9) : List.of(), measured ? 25.61 : null,
        "with a low arm");
  }

  @Test
  void whatIsKeptComesBackToTheLastBit() {
    RunJumpRep one = w.runJumps().add(rep(true));
    RunJumpRep two = w.runJumps().add(rep(false));
    w.close();
    open();
    assertThat(w.runJumps().runJumps(ada.id())).containsExactly(one, two);
    Athlete bo = w.athletes().add(Fixtures.athlete("Bo Farfield"));
    w.runJumps().add(new RunJumpRep(0, bo.id(), Fixtures.TODAY, FIVE, 4, Surface.TRACK, true, List.of(), 26.0, ""));
    assertThat(w.runJumps().removeRunJump(bo.id(), one.id())).as("not theirs").isEmpty();
    w.athletes().erase(bo.id());
    assertThat(w.runJumps().runJumps(bo.id())).as("erased with the athlete").isEmpty();
    assertThat(w.runJumps().removeRunJump(ada.id(), one.id())).contains(one);
    assertThat(w.runJumps().runJumps(ada.id())).containsExactly(two);
  }

  /**
   * Five take-offs that change the foot, first the left: off 3 left and 2 right, down from the first four on 2 right and 2 left, and where no sand
   * is, from the fifth on the right (worked); the other running contacts count nothing.
   */
  @Test
  void takeOffsAndTheirLandingsAreLoad() {
    w.runJumps().add(rep(true));
    w.runJumps().add(rep(false));
    List<DayLoad> days = Objects.requireNonNull(w.workLog.since(List.of(ada), Fixtures.TODAY).get(ada.id()));
    LegCounts counts = LegCounts.of(days);
    assertThat(counts.all()).isEqualTo(new LegCounts.Legs(4 + 5, 5 + 5));
    assertThat(counts.byKind()).containsOnlyKeys(FlightKind.JUMP);
    assertThat(counts.byWork()).containsOnlyKeys("take-offs in a row");
    assertThat(days.get(0).work()).allMatch(x -> x.kind() == Work.Kind.TAKE_OFFS && x.surface() == Surface.GRASS && !x.atTheBoard());
    assertThat(w.workLog.first(List.of(ada))).containsEntry(ada.id(), Fixtures.TODAY);
  }

  /** A take-off weighs as much as that of the same drill done once, which is logged as a rep of one contact. */
  @Test
  void aTakeOffWeighsAsOneOfRunRunJump() {
    ContactWeights weights = new ContactWeights(LoadScale.DEFAULT);
    LegLoad one = weights.of(new Work(Sequence.parse("L"), 1, 4, Surface.TRACK), 7);
    assertThat(weights.of(Work.inARow(new RunJumps(Foot.LEFT, 2, 2), true, 4, Surface.TRACK).get(0), 7)).isEqualTo(one);
  }

  @Test
  void nothingOfItIsLearnedAsABound() {
    w.logbook().log(new Rep(0, ada.id(), Fixtures.TODAY, Sequence.parse("RL x3"), 4, Surface.TRACK, List.of(), 14.1, null, null, null, false, List.of()));
    byte[] before = w.logbook().model(ada).toBytes();
    RunJumps pattern = new RunJumps(Foot.LEFT, 2, 3);
    double guessed = end(pattern);
    for (int i = 0; i < 6; i++) {
      w.runJumps().add(new RunJumpRep(0, ada.id(), Fixtures.TODAY, pattern, 4, Surface.TRACK, true, List.of(7.2, 14.4), 19.4, ""));
    }
    assertThat(w.logbook().model(ada).toBytes()).isEqualTo(before);
    assertThat(Math.abs(end(pattern) - 19.4)).as("but the next of this kind is told better").isLessThan(0.3).isLessThan(Math.abs(guessed - 19.4));
  }

  private double end(RunJumps pattern) {
    RunJumpMarks m = w.runJumpDesk().marks(ada, pattern, 4, true, CoachSettings.DEFAULT);
    return m.landing().p50();
  }
}
