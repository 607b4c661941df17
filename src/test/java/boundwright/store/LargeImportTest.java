package boundwright.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import boundwright.athlete.Athlete;
import boundwright.flight.Rep;
import boundwright.quantity.RefusedException;
import java.io.Reader;
import java.io.StringReader;
import java.io.StringWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A file that is written as it is read becomes what a file that is held becomes; {@code bench/import} says how fast. */
@SuppressWarnings("NullAway.Init") // JUnit fills the folder in
class LargeImportTest {
  private static final long SEED = 20261129;

  @TempDir Path dir;

  private static String file(int rows) {
    Random random = new Random(SEED);
    List<RepCsv.Row> out = new ArrayList<>();
    for (int i = 0; i < rows; i++) {
      out.add(new RepCsv.Row(0, "Athlete " + random.nextInt(3), Fixtures.any(random, 0)));
    }
    StringWriter text = new StringWriter();
    RepCsv.write(text, out);
    return text.toString();
  }

  private static RepImport.Result take(Workbench w, String text, int atOnce) {
    return new RepImport(w, atOnce).take(() -> new StringReader(text), new RepImport.Order(false, true, "all.csv"));
  }

  @Test
  void writtenAsItIsReadItBecomesTheSameRepsNumbersAndLearning() {
    String text = file(900);
    try (Workbench held = Workbench.open(dir.resolve("held"), Fixtures.CLOCK);
        Workbench streamed = Workbench.open(dir.resolve("streamed"), Fixtures.CLOCK)) {
      for (Workbench w : List.of(held, streamed)) {
        Athlete one = w.athletes().add(Fixtures.athlete("Athlete 1"));
        w.logbook().log(Fixtures.tap(one.id(), Fixtures.TODAY));
      }
      RepImport.Result small = take(held, text, 100_000);
      RepImport.Result large = take(streamed, text, 128);
      assertThat(large).isEqualTo(small);
      assertThat(small.taken()).isEqualTo(900);
      for (Athlete a : held.athletes().all()) {
        List<Rep> reps = streamed.reps().inOrder(a.id());
        assertThat(reps).as("seed %d, %s", SEED, a.name()).isEqualTo(held.reps().inOrder(a.id()));
        assertThat(streamed.reps().learned(a.id())).as("learned at once, not when somebody asks").isPresent();
        assertThat(streamed.logbook().model(a)).usingRecursiveComparison().isEqualTo(held.logbook().model(a));
      }
      RepImport.Result again = take(streamed, text, 128);
      assertThat(again.taken()).isZero();
      assertThat(again.there()).hasSize(900);
      assertThat(new RepImport(streamed).takeBack(large.number())).isEqualTo(new RepImport.TakenBack(900, 2));
    }
  }

  @Test
  void aFileThatChangesBetweenTheReadingsIsRefusedWhole() {
    String text = file(300);
    int[] opened = {0};
    try (Workbench w = Workbench.open(dir.resolve("data"), Fixtures.CLOCK)) {
      for (String other : List.of(file(301), file(299))) {
        opened[0] = 0;
        assertThatThrownBy(
                () ->
                    new RepImport(w, 128)
                        .take(() -> opened[0]++ == 0 ? new StringReader(text) : (Reader) new StringReader(other), new RepImport.Order(false, true, "x.csv")))
            .isInstanceOf(RefusedException.class)
            .hasMessageContaining("changed while it was read");
        assertThat(w.athletes().all()).isEmpty();
      }
    }
  }
}
