package boundwright.store;

import static org.assertj.core.api.Assertions.assertThat;

import boundwright.athlete.Athlete;
import boundwright.athlete.Surface;
import boundwright.flight.FlightModel;
import boundwright.flight.Rep;
import boundwright.footfall.Sequence;
import java.nio.file.Path;
import java.util.Random;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What was learned is kept with the reps it was learned from. */
@SuppressWarnings("NullAway.Init") // JUnit fills the folder in
class LearnedTest {
  @TempDir Path dir;
  private Workbench w;
  private Athlete ada;

  @BeforeEach
  void open() {
    w = Stores.open(dir.resolve("squad"), Fixtures.CLOCK);
    ada = w.athletes().byName("Ada").orElseGet(() -> w.athletes().add(Fixtures.athlete("Ada")));
  }

  @AfterEach
  void close() {
    w.close();
  }

  private double landing(FlightModel model) {
    return model.forecast(Sequence.parse("RRL"), 4, Surface.TRACK, Fixtures.TODAY).landing().p50();
  }

  @Test
  void itComesBackAfterClosing() {
    Random random = new Random(5);
    for (int i = 0; i < 12; i++) {
      w.logbook().log(Fixtures.any(random, ada.id()));
    }
    FlightModel before = w.logbook().model(ada);
    w.close();
    open();
    assertThat(w.reps().learned(ada.id())).hasValueSatisfying(l -> assertThat(l.now().toBytes()).isEqualTo(before.toBytes()));
    assertThat(landing(w.logbook().model(ada))).isEqualTo(landing(before));
    long learned = w.reps().inOrder(ada.id()).stream().filter(r -> !r.abandoned()).count();
    assertThat(w.logbook().model(ada).reps()).isEqualTo((int) learned);
  }

  @Test
  void forgettingItLosesNothingThatIsInTheReps() {
    Random random = new Random(6);
    for (int i = 0; i < 12; i++) {
      w.logbook().log(Fixtures.any(random, ada.id()));
    }
    double before = landing(w.logbook().model(ada));
    w.reps()
        .write(
            s -> {
              s.forget(ada.id());
              assertThat(s.learned(ada.id())).isEmpty();
              return 0;
            });
    assertThat(w.reps().learned(ada.id())).isEmpty();
    assertThat(landing(w.logbook().model(ada))).isEqualTo(before);
    assertThat(w.reps().learned(ada.id())).isPresent();
  }

  @Test
  void whatAnotherVersionLearnedIsLearnedAgainNotTrusted() {
    Rep rep = w.logbook().log(Fixtures.tap(ada.id(), Fixtures.TODAY));
    double before = landing(w.logbook().model(ada));
    w.database().write(h -> h.execute("UPDATE learned SET now = ?", new byte[] {0, -1}));
    assertThat(w.reps().learned(ada.id())).isEmpty();
    assertThat(landing(w.logbook().model(ada))).isEqualTo(before);
    w.logbook().undo(ada.id(), rep.id());
    assertThat(w.reps().inOrder(ada.id())).isEmpty();
    assertThat(w.logbook().model(ada).reps()).isZero();
  }
}
