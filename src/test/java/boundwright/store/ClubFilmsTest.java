package boundwright.store;

import static org.assertj.core.api.Assertions.assertThat;

import boundwright.account.Club;
import boundwright.athlete.Surface;
import boundwright.clip.desk.ClipRecord;
import boundwright.clip.desk.ClipState;
import boundwright.store.club.Clubs;
import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.function.BooleanSupplier;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Films of all clubs are read by whoever reads films; only the reader of films is made up. */
@SuppressWarnings("NullAway.Init") // JUnit fills the folder in
class ClubFilmsTest {
  @TempDir Path dir;
  private FakeScan scan;
  private Workbench first;

  @BeforeEach
  void open() {
    scan = new FakeScan();
    first = Stores.open(dir, Fixtures.CLOCK, scan);
  }

  @AfterEach
  void close() {
    first.close();
  }

  private long found(String name) {
    return first.accounts().addClub(name, Fixtures.CLOCK.instant()).id();
  }

  /** Takes films in as a machine does that reads none, which may be another one. */
  private void take(long club, String... films) {
    if (club == Club.FIRST) {
      take(first, films);
    } else {
      try (Workbench there = first.club(club)) {
        take(there, films);
      }
    }
  }

  private static void take(Workbench w, String... films) {
    long ada = w.athletes().byName("Ada").orElseGet(() -> w.athletes().add(Fixtures.athlete("Ada"))).id();
    for (String film : films) {
      w.clips().take(ada, null, "a.mov", new ByteArrayInputStream(film.getBytes(StandardCharsets.UTF_8)), null, 2, Surface.GRASS, null);
    }
  }

  private List<ClipRecord> clips(long club) {
    try (Workbench there = first.club(club)) {
      return there.clips().all();
    }
  }

  private static void await(String what, BooleanSupplier reached) throws InterruptedException {
    for (int i = 0; i < 12_000; i++) {
      if (reached.getAsBoolean()) {
        return;
      }
      Thread.sleep(10);
    }
    throw new AssertionError("never came to be: " + what);
  }

  @Test
  void filmsOfAClubThatNobodyHasOpenedAreReadAndThoseOfOneThatIsFoundedLater() throws Exception {
    long second = found("Sandhill");
    take(second, "good of the second");
    try (Clubs clubs = new Clubs(first, false)) {
      clubs.readFilms(told -> {});
      await("the second club's film", () -> scan.begun.contains("good of the second"));
      long third = found("Longshore");
      take(third, "good of the third");
      await("the third club's film", () -> scan.begun.contains("good of the third"));
      await("both kept", () -> clips(second).get(0).state() == ClipState.READ && clips(third).get(0).state() == ClipState.READ);
    }
  }

  @Test
  void aClubWithManyFilmsHoldsUpNobodyAndOneFilmIsReadAtATime() throws Exception {
    long second = found("Sandhill");
    long third = found("Longshore");
    List<String> many = new ArrayList<>();
    many.add("hold");
    for (int i = 1; i <= 30; i++) {
      many.add("good " + i);
    }
    take(Club.FIRST, many.toArray(new String[0]));
    take(second, "good of the second");
    take(third, "good of the third", "good again of the third");
    try (Clubs clubs = new Clubs(first, false)) {
      clubs.readFilms(told -> {});
      scan.nextHeld();
      clubs.of(second);
      clubs.of(third);
      Thread.sleep(300); // only so that a reader of two at once would be seen
      assertThat(scan.begun).containsExactly("hold");
      scan.goOn.release();
      await("all films", () -> scan.begun.size() == 34);
      assertThat(scan.begun.indexOf("good of the second")).as(String.valueOf(scan.begun)).isLessThan(20);
      assertThat(scan.begun.indexOf("good again of the third")).as(String.valueOf(scan.begun)).isLessThan(20);
    }
  }

  @Test
  void aClubWhoseStoreCannotBeOpenedIsSaidOnceAndTheOthersAreRead() throws Exception {
    long second = found("Sandhill");
    long third = found("Longshore");
    take(third, "good of the third");
    Files.writeString(dir.resolve("clubs").resolve(Long.toString(second)), "a file where a folder has to be");
    List<String> told = new ArrayList<>();
    try (Clubs clubs = new Clubs(first, false)) {
      clubs.readFilms(told::add);
      await("the third club's film", () -> scan.begun.contains("good of the third"));
    }
    assertThat(told).hasSize(1).first().asString().startsWith("The films of club " + second + " are not read: ");
  }

  /** A start on a full disk ended the program, so that not even today's marks could be read. */
  @Test
  @SqliteFile("writing is made impossible in the file")
  void whereNothingCanBeWrittenItIsSaidAndTriedAgain() throws Exception {
    take(Club.FIRST, "good of the first");
    List<String> told = new CopyOnWriteArrayList<>();
    try (Connection c = DriverManager.getConnection("jdbc:sqlite:" + dir.resolve("boundwright.db"));
        Statement s = c.createStatement();
        Clubs clubs = new Clubs(first, false)) {
      s.execute("CREATE TRIGGER no_room BEFORE UPDATE ON written BEGIN SELECT RAISE(ABORT, 'as if there were no room'); END");
      clubs.readFilms(told::add);
      await("it is said", () -> !told.isEmpty());
      assertThat(told).hasSize(1).first().asString().startsWith("Films are not read");
      assertThat(scan.begun).isEmpty();
      s.execute("DROP TRIGGER no_room");
      await("the film, once there is room", () -> scan.begun.contains("good of the first"));
    }
  }
}
