package boundwright.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import boundwright.athlete.Athlete;
import boundwright.quantity.RefusedException;
import boundwright.store.movein.MoveIn;
import java.io.StringReader;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A file twice, a file taken back, and rows that are dated after today. */
@SuppressWarnings("NullAway.Init") // JUnit fills the folder in
class ImportTakenBackTest {
  private static final String HEAD = "date,athlete,sequence,approach_steps,surface,footprints_m,landing_m,outcome\n";
  private static final String FILE =
      HEAD + "2026-05-01,Ada,RRL,4,track,,6.2,in\n2026-05-01,Ada,RRL,4,track,,6.4,in\n2026-05-02,Bo,RRL,4,track,,5.9,in\n";

  @TempDir Path dir;
  private Workbench w;

  @BeforeEach
  void open() {
    w = Stores.open(dir, Fixtures.CLOCK);
  }

  @AfterEach
  void close() {
    w.close();
  }

  private RepImport.Result take(String text, boolean later) {
    return new RepImport(w).take(() -> new StringReader(text), new RepImport.Order(false, later, "spring.csv"));
  }

  @Test
  void theSameFileAgainIsThereAlready() {
    assertThat(take(FILE, false).taken()).isEqualTo(3);
    RepImport.Result again = take(FILE, false);
    assertThat(again.taken()).isZero();
    assertThat(again.there()).containsExactly(2, 3, 4);
    assertThat(again.number()).as("nothing to take back").isZero();
  }

  @Test
  void anImportIsTakenBackWholeAndNothingElse() {
    Athlete ada = w.athletes().add(Fixtures.athlete("Ada"));
    w.logbook().log(Fixtures.tap(ada.id(), Fixtures.TODAY));
    Object before = w.logbook().model(ada);
    long number = take(FILE, false).number();
    assertThat(new MoveIn(w).past(5)).singleElement().satisfies(t -> {
      assertThat(t.name()).isEqualTo("spring.csv");
      assertThat(t.here()).startsWith("3 reps");
    });
    assertThat(new RepImport(w).takeBack(number)).isEqualTo(new RepImport.TakenBack(3, 1));
    assertThat(w.athletes().all()).extracting(Athlete::name).containsExactly("Ada");
    assertThat(w.reps().inOrder(ada.id())).hasSize(1);
    assertThat(w.logbook().model(ada)).as("learned as if it had never come").usingRecursiveComparison().isEqualTo(before);
    assertThat(new MoveIn(w).past(5)).isEmpty();
    assertThatThrownBy(() -> new RepImport(w).takeBack(number)).isInstanceOf(RefusedException.class).hasMessageContaining("nothing is here (any more)");
    assertThat(take(FILE, false).taken()).as("and comes again").isEqualTo(3);
  }

  @Test
  void anAthleteOfWhomMoreIsKeptByNowStays() {
    long number = take(FILE, false).number();
    Athlete bo = w.athletes().byName("Bo").orElseThrow();
    w.logbook().log(Fixtures.tap(bo.id(), Fixtures.TODAY));
    assertThat(new RepImport(w).takeBack(number)).isEqualTo(new RepImport.TakenBack(3, 1));
    assertThat(w.athletes().all()).extracting(Athlete::name).containsExactly("Bo");
    assertThat(w.reps().inOrder(bo.id())).hasSize(1);
  }

  @Test
  void rowsAfterTodayWaitForAWordAndTheOthersDoNot() {
    String file = FILE + "2026-05-13,Ada,RRL,4,track,,6.3,in\n";
    RepImport.Result first = take(file, false);
    assertThat(first.taken()).isEqualTo(3);
    assertThat(first.later()).isEqualTo(List.of(5));
    assertThat(first.problems()).isEmpty();
    RepImport.Result second = take(file, true);
    assertThat(second.taken()).isEqualTo(1);
    assertThat(second.there()).containsExactly(2, 3, 4);
    Athlete ada = w.athletes().byName("Ada").orElseThrow();
    assertThat(w.reps().inOrder(ada.id())).hasSize(3);
    assertThat(w.logbook().model(ada).reps()).isEqualTo(3);
  }
}
