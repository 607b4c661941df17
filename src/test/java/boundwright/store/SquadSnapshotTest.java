package boundwright.store;

import static org.assertj.core.api.Assertions.assertThat;

import boundwright.athlete.Athlete;
import boundwright.athlete.Surface;
import boundwright.flight.FlightModel;
import boundwright.flight.Rep;
import boundwright.flight.RepStore.Snapshot;
import boundwright.flight.SquadPrior;
import boundwright.footfall.Sequence;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Random;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The squad's snapshot on the real database: when it is made, that models follow from it alone, and that it forgets a person. */
@SuppressWarnings("NullAway.Init") // JUnit fills the folder in
class SquadSnapshotTest {
  private static final Sequence DRILL = Sequence.parse("RRL x2");

  @TempDir Path dir;
  private Workbench w;
  private final List<Athlete> squad = new ArrayList<>();

  @BeforeEach
  void open() {
    w = Stores.open(dir.resolve("squad"), Fixtures.CLOCK);
  }

  @AfterEach
  void close() {
    w.close();
  }

  private void log(int athletes, int reps, LocalDate first) {
    Random random = new Random(41);
    for (int a = 0; a < athletes; a++) {
      Athlete athlete = w.athletes().add(Fixtures.athlete("Athlete " + squad.size()));
      squad.add(athlete);
      List<Rep> all = new ArrayList<>();
      double usual = 15 + random.nextGaussian();
      for (int i = 0; i < reps; i++) {
        double landing = usual + 0.2 * random.nextGaussian();
        all.add(new Rep(0, athlete.id(), first.plusDays(i / 4), DRILL, 4, Surface.TRACK, List.of(), landing, null, null, List.of()));
      }
      w.logbook().logAll(all);
    }
  }

  private double spread(Athlete a) {
    return w.logbook().model(a).forecast(DRILL, 4, Surface.TRACK, Fixtures.TODAY).landing().halfWidth();
  }

  @Test
  void aNewcomerIsToldByTheSquadFromTheNextDayOn() {
    log(6, 16, Fixtures.TODAY.minusDays(20));
    Athlete newcomer = w.athletes().add(Fixtures.athlete("New"));
    double alone = spread(newcomer);
    w.logbook().dayBegins(Fixtures.TODAY);
    assertThat(spread(newcomer)).isLessThan(0.95 * alone);
    Snapshot kept = w.reps().snapshot().orElseThrow();
    assertThat(kept.prior().athletes()).isEqualTo(6);
    assertThat(kept.madeOn()).isEqualTo(Fixtures.TODAY);
    assertThat(kept.reps()).isEqualTo(96);
  }

  @Test
  void repsOfTodayDoNotSpeakToday() {
    log(6, 32, Fixtures.TODAY.minusDays(4));
    w.logbook().dayBegins(Fixtures.TODAY);
    assertThat(w.reps().snapshot().orElseThrow().reps()).as("four reps a day on four days each").isEqualTo(96);
  }

  @Test
  void itIsMadeAgainWhenHalfAsManyMoreAreLogged() {
    log(6, 16, Fixtures.TODAY.minusDays(40));
    w.logbook().dayBegins(Fixtures.TODAY.minusDays(20));
    long first = w.reps().snapshotNumber();
    log(2, 16, Fixtures.TODAY.minusDays(19));
    w.logbook().dayBegins(Fixtures.TODAY.minusDays(10));
    assertThat(w.reps().snapshotNumber()).as("a third more").isEqualTo(first);
    log(1, 16, Fixtures.TODAY.minusDays(9));
    w.logbook().dayBegins(Fixtures.TODAY);
    assertThat(w.reps().snapshotNumber()).as("half as many more").isGreaterThan(first);
    assertThat(w.reps().snapshot().orElseThrow().prior().athletes()).isEqualTo(9);
  }

  /** What is kept of an athlete is what a machine without this database gets from the snapshot's bytes and the reps. */
  @Test
  void modelsFollowFromSnapshotAndRepsAlone() {
    log(6, 16, Fixtures.TODAY.minusDays(20));
    w.logbook().dayBegins(Fixtures.TODAY);
    SquadPrior read = SquadPrior.fromBytes(w.reps().snapshot().orElseThrow().prior().toBytes()).orElseThrow();
    for (Athlete a : squad) {
      FlightModel elsewhere = FlightModel.prior(w.athletes().profile(a), read);
      for (Rep r : w.reps().inOrder(a.id())) {
        elsewhere = elsewhere.learn(r);
      }
      assertThat(w.logbook().model(a).toBytes()).isEqualTo(elsewhere.toBytes());
      assertThat(Objects.requireNonNull(w.logbook().known(squad).get(a.id())).flights().toBytes()).isEqualTo(elsewhere.toBytes());
    }
    Rep fresh = Fixtures.tap(squad.get(0).id(), Fixtures.TODAY);
    Rep logged = w.logbook().log(fresh);
    w.logbook().undo(squad.get(0).id(), logged.id());
    assertThat(w.logbook().model(squad.get(0)).squad()).isEqualTo(read.number());
  }

  @Test
  void anErasedAthleteIsForgottenByTheSquadToo() {
    log(7, 16, Fixtures.TODAY.minusDays(20));
    w.logbook().dayBegins(Fixtures.TODAY);
    long first = w.reps().snapshotNumber();
    Athlete gone = squad.remove(3);
    w.logbook().model(squad.get(0));
    w.athletes().erase(gone.id());
    assertThat(w.reps().snapshot()).isEmpty();
    assertThat(w.logbook().model(squad.get(0)).squad()).isZero();
    w.logbook().dayBegins(Fixtures.TODAY);
    assertThat(w.reps().snapshotNumber()).as("a number never used before").isGreaterThan(first);
    assertThat(w.reps().snapshot().orElseThrow().prior().athletes()).isEqualTo(6);
    assertThat(w.logbook().model(squad.get(0)).squad()).isEqualTo(w.reps().snapshotNumber());
  }
}
