package boundwright.store.people;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import boundwright.athlete.Athlete;
import boundwright.athlete.person.Consent;
import boundwright.athlete.person.EndAge;
import boundwright.athlete.person.Person;
import boundwright.athlete.person.Scope;
import boundwright.athlete.person.Sex;
import boundwright.athlete.person.Standing;
import boundwright.quantity.RefusedException;
import boundwright.store.AthleteFile;
import boundwright.store.Fixtures;
import boundwright.store.Workbench;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.Statement;
import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneOffset;
import org.flywaydb.core.Flyway;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Who somebody is and what was agreed to: its beginning, its end, and that it goes with the athlete. */
@SuppressWarnings("NullAway.Init") // JUnit fills the folder in
class PeopleTest {
  private static final LocalDate BIRTHDAY_16 = LocalDate.of(2026, 6, 1);
  private static final Person ADA = new Person(BIRTHDAY_16.minusYears(16), Sex.FEMALE);

  @TempDir Path dir;

  private Workbench on(LocalDate day) {
    return Workbench.open(dir, Clock.fixed(day.atTime(12, 0).toInstant(ZoneOffset.UTC), ZoneOffset.UTC));
  }

  private static Athlete ada(Workbench w) {
    return w.athletes().byName("Ada").orElseGet(() -> w.athletes().add(Fixtures.athlete("Ada")));
  }

  private static Consent yes(long athlete, LocalDate on, @Nullable LocalDate until) {
    return new Consent(0, athlete, Scope.FILM, true, on, "mother", until, null);
  }

  private void assertFilmed(LocalDate day, Standing.Kind kind) {
    try (Workbench w = on(day)) {
      Athlete ada = ada(w);
      assertThat(w.people().standing(ada.id(), Scope.FILM).kind()).as(day.toString()).isEqualTo(kind);
      assertThat(w.people().standings(Scope.FILM).getOrDefault(ada.id(), Standing.NOT_ASKED).kind()).isEqualTo(kind);
      if (kind == Standing.Kind.YES) {
        w.people().mayBeFilmed(ada);
      } else {
        assertThatThrownBy(() -> w.people().mayBeFilmed(ada)).isInstanceOf(RefusedException.class).hasMessageContaining("nothing is read of them");
      }
    }
  }

  @Test
  void whatWasAgreedToBeforeTheBirthdayOfTheSettingEndsOnTheDayBeforeIt() {
    assertFilmed(Fixtures.TODAY, Standing.Kind.NOT_ASKED);
    try (Workbench w = on(Fixtures.TODAY)) {
      w.people().keep(ada(w).id(), ADA);
      w.people().say(yes(ada(w).id(), Fixtures.TODAY, null));
      assertThat(w.people().endAge()).isEqualTo(EndAge.EIGHTEEN);
      w.people().keep(EndAge.SIXTEEN);
    }
    assertFilmed(BIRTHDAY_16.minusDays(1), Standing.Kind.YES);
    assertFilmed(BIRTHDAY_16, Standing.Kind.ENDED);
    try (Workbench w = on(BIRTHDAY_16)) {
      assertThatThrownBy(() -> w.people().mayBeFilmed(ada(w))).hasMessageContaining("2026-05-31").hasMessageContaining("Ask again");
      w.people().keep(EndAge.EIGHTEEN);
    }
    assertFilmed(BIRTHDAY_16, Standing.Kind.YES);
    assertFilmed(BIRTHDAY_16.plusYears(2), Standing.Kind.ENDED);
    try (Workbench w = on(BIRTHDAY_16.plusYears(2))) {
      w.people().say(ada(w).id(), Scope.FILM, true); // of age now: no birthday ends it
    }
    assertFilmed(BIRTHDAY_16.plusYears(30), Standing.Kind.YES);
  }

  @Test
  void anEndOfItsOwnCountsAndWithdrawnIsWithdrawnFromThatDay() {
    LocalDate last = Fixtures.TODAY.plusDays(10);
    try (Workbench w = on(Fixtures.TODAY)) {
      w.people().keep(ada(w).id(), ADA);
      w.people().say(yes(ada(w).id(), Fixtures.TODAY.minusDays(3), last));
      assertThatThrownBy(() -> w.people().withdraw(ada(w), Scope.RESULTS)).hasMessageContaining("nothing to withdraw");
    }
    assertFilmed(last, Standing.Kind.YES);
    assertFilmed(last.plusDays(1), Standing.Kind.ENDED);
    try (Workbench w = on(Fixtures.TODAY.plusDays(2))) {
      w.people().withdraw(ada(w), Scope.FILM);
    }
    assertFilmed(Fixtures.TODAY.plusDays(1), Standing.Kind.YES);
    assertFilmed(Fixtures.TODAY.plusDays(2), Standing.Kind.WITHDRAWN);
    assertFilmed(last.plusDays(1), Standing.Kind.WITHDRAWN);
    try (Workbench w = on(Fixtures.TODAY.plusDays(3))) {
      w.people().say(ada(w).id(), Scope.FILM, false);
    }
    assertFilmed(Fixtures.TODAY.plusDays(3), Standing.Kind.NO);
  }

  @Test
  void whatCannotBeIsRefused() {
    try (Workbench w = on(Fixtures.TODAY)) {
      long ada = ada(w).id();
      assertThatThrownBy(() -> w.people().keep(ada, new Person(Fixtures.TODAY.plusDays(1), null))).hasMessageContaining("after today");
      assertThatThrownBy(() -> new Person(LocalDate.of(1899, 12, 31), null)).hasMessageContaining("too old");
      assertThatThrownBy(() -> w.people().say(yes(ada, Fixtures.TODAY.plusDays(1), null))).hasMessageContaining("after today");
      assertThatThrownBy(() -> yes(ada, Fixtures.TODAY, Fixtures.TODAY.minusDays(1))).hasMessageContaining("lies before");
      assertThatThrownBy(() -> new Consent(0, ada, Scope.FILM, false, Fixtures.TODAY, "", Fixtures.TODAY, null)).hasMessageContaining("no last day");
      assertThatThrownBy(() -> new Consent(0, ada, Scope.FILM, true, Fixtures.TODAY, "m".repeat(61), null, null)).hasMessageContaining("60");
      assertThatThrownBy(() -> new Consent(0, ada, Scope.FILM, true, Fixtures.TODAY, "mo\u0007ther", null, null)).hasMessageContaining("U+0007");
      assertThat(w.people().said(ada)).isEmpty();
      assertThat(w.people().person(ada)).isEqualTo(Person.UNKNOWN);
    }
  }

  @Test
  void allOfItIsInTheAthletesFileAndGoesWithTheAthlete() {
    try (Workbench w = on(Fixtures.TODAY)) {
      Athlete ada = ada(w);
      Athlete bo = w.athletes().add(Fixtures.athlete("Bo"));
      for (Athlete a : new Athlete[] {ada, bo}) {
        w.people().keep(a.id(), ADA);
        w.people().say(yes(a.id(), Fixtures.TODAY, null));
      }
      assertThat(new AthleteFile(w).of(ada)).containsKeys("person", "consent");
      assertThat(String.valueOf(new AthleteFile(w).of(ada))).contains("2010-06-01", "mother");
      w.athletes().erase(ada.id());
      assertThat(w.people().people()).containsOnlyKeys(bo.id());
      assertThat(w.people().said(ada.id())).isEmpty();
      assertThat(w.people().said(bo.id())).hasSize(1);
      w.people().keep(ada.id(), ADA);
      w.people().say(ada.id(), Scope.MOVE, true);
      assertThat(w.people().people()).as("of somebody who is gone nothing is kept").containsOnlyKeys(bo.id());
      assertThat(w.people().said(ada.id())).isEmpty();
    }
  }

  /** Before, a yes had a day and no more. */
  @Test
  void theYesOfAnOlderProgramIsCarriedOver() throws Exception {
    String url = "jdbc:sqlite:" + dir.resolve("boundwright.db");
    Flyway.configure().dataSource(url, null, null).locations("classpath:db/migration").target("17").load().migrate();
    try (Connection c = DriverManager.getConnection(url);
        Statement s = c.createStatement()) {
      s.execute("INSERT INTO athlete VALUES (3, 'Ada', 'ada', 'BEGINNER', 'L', 2), (4, 'Bo', 'bo', 'BEGINNER', 'L', 2), (5, 'Cy', 'cy', 'BEGINNER', 'L', 2)");
      s.execute("INSERT INTO film_consent VALUES (3, 1, '2026-03-01'), (4, 0, '2026-03-02')");
    }
    assertFilmed(Fixtures.TODAY, Standing.Kind.YES);
    try (Workbench w = on(Fixtures.TODAY)) {
      assertThat(w.people().standing(3, Scope.FILM).day()).isEqualTo(LocalDate.of(2026, 3, 1));
      assertThat(w.people().standing(4, Scope.FILM).kind()).isEqualTo(Standing.Kind.NO);
      assertThat(w.people().standing(5, Scope.FILM).kind()).isEqualTo(Standing.Kind.NOT_ASKED);
      assertThat(w.people().standing(3, Scope.RESULTS).kind()).isEqualTo(Standing.Kind.NOT_ASKED);
    }
  }
}
