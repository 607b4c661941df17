package boundwright.store.season;

import static org.assertj.core.api.Assertions.assertThat;

import boundwright.athlete.Athlete;
import boundwright.athlete.person.Person;
import boundwright.athlete.person.Sex;
import boundwright.season.desk.SeasonStart;
import boundwright.store.Fixtures;
import boundwright.store.Workbench;
import java.nio.file.Path;
import java.time.LocalDate;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What a season that begins takes from the database. */
class SeasonStartTest {
  private static final LocalDate TODAY = Fixtures.TODAY;

  @Test
  void whoGrowsInASeasonIsTheCoachsWordAndUntilThenTheBirthDate(@TempDir Path dir) {
    try (Workbench w = Workbench.open(dir, Fixtures.CLOCK)) {
      Athlete young = w.athletes().add(Fixtures.athlete("Ada Longshore"));
      Athlete said = w.athletes().add(Fixtures.athlete("Bo Farfield"));
      Athlete grown = w.athletes().add(Fixtures.athlete("Cy Waterstone"));
      for (Athlete a : new Athlete[] {young, said}) {
        w.people().keep(a.id(), new Person(TODAY.minusYears(14), Sex.FEMALE));
      }
      w.people().keep(grown.id(), new Person(TODAY.minusYears(19), Sex.FEMALE));
      w.care().setGrowing(said.id(), false, null);
      assertThat(growing(w, young)).as("14 years old").isTrue();
      assertThat(growing(w, said)).as("14 years old, and the coach says that she is not growing").isFalse();
      assertThat(growing(w, grown)).as("19 years old").isFalse();
    }
  }

  private static boolean growing(Workbench w, Athlete a) {
    return new SeasonStart(w.workLog(), w.load(), w.care(), w.ladder()).member(a, TODAY.plusDays(20), null, TODAY).growing();
  }
}
