package boundwright.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import boundwright.athlete.Athlete;
import boundwright.athlete.Level;
import boundwright.flight.Rep;
import boundwright.footfall.Foot;
import boundwright.quantity.RefusedException;
import boundwright.store.engine.Database;
import java.io.StringReader;
import java.io.StringWriter;
import java.nio.file.Path;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A file goes into the store whole or not at all, and comes out again as it went in. */
@SuppressWarnings("NullAway.Init") // JUnit fills the folder in
class RepImportTest {
  private static final String HEADER = "date,athlete,sequence,approach_steps,surface,footprints_m,landing_m,outcome,mark_to_sand_m\n";

  @TempDir Path dir;
  private Workbench w;

  @BeforeEach
  void open() {
    w = Stores.open(dir.resolve("one"), Fixtures.CLOCK);
  }

  @AfterEach
  void close() {
    w.close();
  }

  private RepImport.Result take(String text, boolean skip) {
    return new RepImport(w).take(() -> new StringReader(text), new RepImport.Order(skip, false, ""));
  }

  private static List<Rep> numberless(List<Rep> reps) {
    return reps.stream().map(r -> r.withId(0).of(0)).toList();
  }

  @Test
  void unknownAthletesAreMadeAndKnownOnesFoundWhateverTheCase() {
    Athlete ada = w.athletes().add(new Athlete(0, "Ada Fenn", Level.ADVANCED, Foot.RIGHT, 10));
    RepImport.Result result =
        take(
            HEADER
                + "2026-05-05,ADA  fenn,RRL,4,grass,,8.1,,\n"
                + "2026-05-06,Bo,LLR,6,grass,,8.1,,\n"
                + "2026-05-04,bo,RRL,2,grass,,8.1,,\n"
                + "2026-05-06,BO,RRL,8,grass,,8.1,,\n",
            false);
    assertThat(result).usingRecursiveComparison().ignoringFields("number").isEqualTo(new RepImport.Result(4, 1, List.of(), List.of(), List.of(), 0));
    Athlete bo = w.athletes().byName("Bo").orElseThrow();
    assertThat(bo).isEqualTo(new Athlete(bo.id(), "Bo", Level.NOT_SET, Foot.LEFT, 8));
    assertThat(w.athletes().all()).containsExactly(ada, bo);
    assertThat(w.reps().inOrder(ada.id())).hasSize(1);
    assertThat(w.reps().inOrder(bo.id())).extracting(Rep::approachSteps).containsExactly(2, 6, 8);
    assertThat(w.logbook().model(bo).reps()).isEqualTo(3);
  }

  @Test
  void nothingIsTakenWhenARowIsBadUnlessBadRowsAreSkipped() {
    String file = HEADER + "2026-05-05,Ada,RRL,4,grass,,8.1,,\n2026-05-05,Bo,RXL,4,grass,,8.1,,\n";
    RepImport.Result refused = take(file, false);
    assertThat(refused.taken()).isZero();
    assertThat(refused.newAthletes()).isZero();
    assertThat(refused.problems()).singleElement().satisfies(p -> assertThat(p.line()).isEqualTo(3));
    assertThat(w.athletes().all()).isEmpty();

    RepImport.Result taken = take(file, true);
    assertThat(taken.taken()).isEqualTo(1);
    assertThat(taken.newAthletes()).isEqualTo(1);
    assertThat(taken.problems()).isEqualTo(refused.problems());
    assertThat(w.athletes().all()).extracting(Athlete::name).containsExactly("Ada");
  }

  @Test
  void theSameFileTwiceIsNoticedAndALongerOneAddsOnlyWhatIsNew() {
    String tap = "2026-05-05,Ada,RRL RRL,4,grass,,,in,9.4\n";
    String file = HEADER + tap + tap + "2026-05-05,Bo,RL x2,2,grass,2.1;;5.2,,late,\n";
    assertThat(take(file, false)).usingRecursiveComparison().ignoringFields("number").isEqualTo(new RepImport.Result(3, 2, List.of(), List.of(), List.of(), 0));
    RepImport.Result again = take(file, false);
    assertThat(again).usingRecursiveComparison().ignoringFields("number").isEqualTo(new RepImport.Result(0, 0, List.of(), List.of(2, 3, 4), List.of(), 0));
    assertThat(w.reps().inOrder(w.athletes().byName("Ada").orElseThrow().id())).as("two equal taps of one day are two reps").hasSize(2);

    String longer = HEADER + "2026-05-05,ADA,RRL x2,4,grass,,,in,9.40\n" + tap + tap + "2026-05-06,Cy,RRL,4,grass,,8.1,,\n";
    RepImport.Look look = new RepImport(w).look(new StringReader(longer));
    assertThat(look.rows()).extracting(RepCsv.Row::line).containsExactly(4, 5);
    assertThat(look.there()).containsExactly(2, 3);
    assertThat(look.newAthletes()).isEqualTo(1);
    assertThat(take(longer, false)).usingRecursiveComparison().ignoringFields("number").isEqualTo(new RepImport.Result(2, 1, List.of(), List.of(2, 3), List.of(), 0));
    assertThat(w.reps().inOrder(w.athletes().byName("Ada").orElseThrow().id())).hasSize(3);

    String bad = HEADER + tap + "2026-05-07,Ada,RXL,4,grass,,8.1,,\n";
    assertThat(take(bad, false).taken()).isZero();
    assertThat(take(bad, true).there()).containsExactly(2);
  }

  @Test
  void theLevelOfAnImportedAthleteIsNotGuessed() {
    take(HEADER + "2026-05-05,Ada,RRL,4,grass,,8.1,,\n", false);
    Athlete ada = w.athletes().byName("Ada").orElseThrow();
    assertThat(ada.level()).isEqualTo(Level.NOT_SET);
    assertThat(ada.level().label()).isEqualTo("level not set");
    assertThat(ada.level().judgedAs()).isEqualTo(Level.BEGINNER);
  }

  @Test
  void aFileThatCannotBeToldApartIsNotTakenEvenSkipping() {
    String file = HEADER + "2026-05-05,Ada,RRL,4,grass,,8.1,,\n2026-05-05,\"Bo,RRL,4,grass,,8.1,,\n";
    assertThat(take(file, true).taken()).isZero();
    assertThat(take("when,who\n1,2\n", true).problems()).hasSize(1);
    assertThat(w.athletes().all()).isEmpty();
  }

  @Test
  @SqliteFile("fills the file to its limit of pages")
  void aDiskThatFillsTakesNothingOfTheFileNotEvenTheAthletes() {
    StringBuilder file = new StringBuilder(HEADER);
    for (int i = 0; i < 2_000; i++) {
      file.append("2026-05-05,Athlete ").append(i % 40).append(",RRL x3,4,grass,1.111;2.2222;3.33333;4.4444;5.5555;6.6666;7.7777;8.888,9.9,,\n");
    }
    w.close();
    w = Stores.open(dir.resolve("one"), Fixtures.CLOCK, new Database.Tuning(50, 40));
    assertThatThrownBy(() -> take(file.toString(), false)).isInstanceOf(RefusedException.class).hasMessageContaining("is full");
    assertThat(w.athletes().all()).isEmpty();
    w.close();
    open();
    assertThat(take(file.toString(), false)).usingRecursiveComparison().ignoringFields("number").isEqualTo(new RepImport.Result(2_000, 40, List.of(), List.of(), List.of(), 0));
  }

  @Test
  void exportAndImportIntoAnEmptyStoreGiveTheSameReps() {
    long seed = 7;
    Random random = new Random(seed);
    List<Athlete> squad = List.of("Ada", "=Bo", "Zo\u00eb, jr").stream().map(n -> w.athletes().add(Fixtures.athlete(n))).toList();
    for (int i = 0; i < 120; i++) {
      Rep rep = Fixtures.any(random, squad.get(random.nextInt(3)).id());
      w.logbook().log(rep);
    }
    StringWriter out = new StringWriter();
    assertThat(new RepExport(w).write(out)).isEqualTo(120);
    try (Workbench second = Stores.open(dir.resolve("two"), Fixtures.CLOCK)) {
      assertThat(new RepImport(second).take(() -> new StringReader(out.toString()), new RepImport.Order(false, false, "")))
          .as("seed %d", seed)
          .usingRecursiveComparison().ignoringFields("number").isEqualTo(new RepImport.Result(120, 3, List.of(), List.of(), List.of(), 0));
      for (Athlete a : squad) {
        Athlete b = second.athletes().byName(a.name()).orElseThrow();
        assertThat(b.name()).isEqualTo(a.name());
        assertThat(numberless(second.reps().inOrder(b.id()))).as("seed %d", seed).isEqualTo(numberless(w.reps().inOrder(a.id())));
      }
      StringWriter again = new StringWriter();
      new RepExport(second).write(again);
      assertThat(again.toString()).isEqualTo(out.toString());
    }
  }
}
