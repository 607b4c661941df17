package boundwright.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import boundwright.ChildProgram;
import boundwright.athlete.Athlete;
import boundwright.quantity.RefusedException;
import boundwright.season.Away;
import boundwright.season.InventedSeasons;
import boundwright.season.SeasonInput;
import boundwright.season.SeasonPlan;
import boundwright.season.SeasonRepository;
import boundwright.season.SeasonRepository.CalendarKey;
import boundwright.season.Span;
import boundwright.season.desk.SeasonDesk;
import boundwright.season.solve.SeasonWork;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Seasons, published plans and secrets on the real database. */
@SuppressWarnings("NullAway.Init") // JUnit fills the folder in
class SqlSeasonsTest {
  private static final Instant NOW = Instant.parse("2026-05-12T15:00:00Z");
  private static final String KEY = "0123456789abcdef0123456789abcdef";

  @TempDir Path dir;
  private Workbench w;
  private List<Athlete> squad;

  @BeforeEach
  void open() {
    w = Stores.open(dir, Fixtures.CLOCK);
    squad = List.of(w.athletes().add(Fixtures.athlete("Wren Samphire")), w.athletes().add(Fixtures.athlete("Tovi Plover")));
  }

  @AfterEach
  void close() {
    w.close();
  }

  @Test
  void aSeasonIsThereAgainAsItWas() {
    for (long seed = 1; seed <= 20; seed++) {
      SeasonInput season = new InventedSeasons(seed).inputOf(squad);
      long id = w.seasons().add(season, String.format("%032x", seed), NOW).id();
      assertThat(w.seasons().input(id)).as("seed %d", seed).contains(season);
      SeasonInput other = new InventedSeasons(seed + 1000).inputOf(squad.subList(0, 1));
      w.seasons().keep(id, other);
      assertThat(w.seasons().input(id)).as("kept anew, seed %d", seed).contains(other);
      assertThat(w.seasons().byId(id).orElseThrow().name()).isEqualTo(other.name());
    }
    assertThat(w.seasons().all()).hasSize(20);
  }

  @Test
  void everyPublishedPlanStaysAndTheNewestHolds() {
    InventedSeasons invented = new InventedSeasons(7);
    SeasonInput season = invented.inputOf(squad);
    long id = w.seasons().add(season, KEY, NOW).id();
    assertThat(w.seasons().published(id)).isEmpty();
    SeasonPlan one = w.seasons().publish(id, invented.plan(season, 0), NOW);
    SeasonPlan two = w.seasons().publish(id, invented.plan(season, 0), NOW.plusSeconds(60));
    assertThat(one.version()).isEqualTo(1);
    assertThat(two.version()).isEqualTo(2);
    close();
    w = Stores.open(dir, Fixtures.CLOCK);
    assertThat(w.seasons().published(id)).contains(two);
    assertThat(w.seasons().versions(id))
        .containsExactly(new SeasonRepository.Version(one, season.meets(), season.venues(), NOW, NOW.plusSeconds(60)), new SeasonRepository.Version(two, season.meets(), season.venues(), NOW.plusSeconds(60), null));
    assertThat(w.seasons().byId(id).orElseThrow().published()).isEqualTo(2);
    w.seasons().keep(id, season);
    assertThat(w.seasons().versions(id)).as("a new input leaves what was published").hasSize(2);
    assertThat(w.seasons().remove(id)).isTrue();
    assertThat(w.seasons().versions(id)).isEmpty();
    assertThat(w.seasons().input(id)).isEmpty();
  }

  @Test
  void aPlanOfSomebodyWhoIsNotThereIsRefusedWhole() {
    InventedSeasons invented = new InventedSeasons(9);
    SeasonInput season = invented.inputOf(squad);
    long id = w.seasons().add(season, KEY, NOW).id();
    SeasonPlan first = w.seasons().publish(id, invented.plan(season, 0), NOW);
    SeasonPlan next = invented.plan(season, 0);
    w.athletes().erase(squad.get(1).id());
    assertThatThrownBy(() -> w.seasons().publish(id, next, NOW)).isInstanceOf(RefusedException.class).hasMessageContaining("Tovi Plover");
    assertThat(w.seasons().published(id)).contains(new SeasonPlan(first.name(), 1, first.years().subList(0, 1)));
    assertThatThrownBy(() -> w.seasons().publish(id + 5, next, NOW)).isInstanceOf(RefusedException.class).hasMessageContaining("number " + (id + 5));
    w.athletes().erase(squad.get(0).id());
    assertThat(w.seasons().all()).as("a season of nobody").isEmpty();
    assertThat(w.seasons().input(id)).isEmpty();
  }

  @Test
  void whoIsCalledOtherwiseTodayIsCalledSoInTheSeason() {
    InventedSeasons invented = new InventedSeasons(11);
    SeasonInput season = invented.inputOf(squad);
    long id = w.seasons().add(season, KEY, NOW).id();
    w.seasons().publish(id, invented.plan(season, 0), NOW);
    Athlete wren = squad.get(0);
    w.athletes().update(new Athlete(wren.id(), "Wren Marsh-Samphire", wren.level(), wren.takeOffFoot(), wren.rung()));
    assertThat(w.seasons().input(id).orElseThrow().squad().get(0).name()).isEqualTo("Wren Marsh-Samphire");
    assertThat(w.seasons().published(id).orElseThrow().years().get(0).athlete()).isEqualTo("Wren Marsh-Samphire");
  }

  @Test
  void theSeasonOfTheSameNameAndDayIsKeptAnew() {
    SeasonDesk desk = new SeasonDesk(w.seasons(), SeasonWork::ofFile, Fixtures.CLOCK, new Random(4));
    InventedSeasons invented = new InventedSeasons(12);
    SeasonInput season = invented.inputOf(squad);
    long id = desk.keep(season);
    w.seasons().publish(id, invented.plan(season, 0), NOW);
    assertThat(desk.keep(season)).isEqualTo(id);
    assertThat(w.seasons().all()).hasSize(1);
    assertThat(w.seasons().published(id)).isPresent();
    assertThat(desk.current()).isPresent();
  }

  @Test
  void eachChangeIsOneMoreEditionAndThoseBeforeAreKept() {
    InventedSeasons invented = new InventedSeasons(21);
    SeasonInput one = invented.inputOf(squad);
    long id = w.seasons().add(one, KEY, NOW).id();
    w.seasons().keep(id, one);
    assertThat(w.seasons().byId(id).orElseThrow().edition()).as("nothing is otherwise").isEqualTo(1);
    w.seasons().publish(id, invented.plan(one, 0), NOW);
    assertThat(w.seasons().byId(id).orElseThrow().changedSince()).isFalse();
    LocalDate day = one.first();
    SeasonInput two = one.withSquad(List.of(one.squad().get(0).withAway(new Away(new Span(day, day), Away.Why.TRAVEL)), one.squad().get(1)));
    w.seasons().keep(id, two);
    SeasonInput three = two.withSquad(List.of(two.squad().get(1)));
    w.seasons().keep(id, three);
    SeasonInput four = new SeasonInput("Another name", one.first(), one.last(), one.periods(), one.meets(), one.venues(), one.squad(), one.rules());
    w.seasons().keep(id, four);
    assertThat(w.seasons().input(id)).contains(four);
    assertThat(w.seasons().byId(id).orElseThrow()).satisfies(k -> assertThat(k.edition()).isEqualTo(4)).satisfies(k -> assertThat(k.changedSince()).isTrue());
    List<SeasonInput> all = List.of(one, two, three, four);
    for (int edition = 1; edition <= 4; edition++) {
      assertThat(w.seasons().input(id, edition)).as("edition %d", edition).contains(all.get(edition - 1));
    }
    w.seasons().publish(id, invented.plan(four, 0), NOW);
    assertThat(w.seasons().byId(id).orElseThrow().changedSince()).isFalse();
    w.athletes().erase(squad.get(0).id());
    assertThat(w.seasons().input(id, 2).orElseThrow().squad()).as("erased from what was before, too").containsExactly(one.squad().get(1));
  }

  @Test
  void aSecretIsReplacedByTheNextAndGoesWithTheAthlete() {
    SeasonInput season = new InventedSeasons(13).inputOf(squad);
    long id = w.seasons().add(season, KEY, NOW).id();
    CalendarKey all = new CalendarKey(id, null, NOW);
    CalendarKey wren = new CalendarKey(id, squad.get(0).id(), NOW);
    w.seasons().keepSecret("a".repeat(64), all);
    w.seasons().keepSecret("b".repeat(64), wren);
    w.seasons().keepSecret("c".repeat(64), all);
    assertThat(w.seasons().bySecret("a".repeat(64))).as("renewed").isEmpty();
    assertThat(w.seasons().bySecret("b".repeat(64))).contains(wren);
    assertThat(w.seasons().bySecret("c".repeat(64))).contains(all);
    assertThat(w.seasons().secrets(id)).containsExactly(all, wren);
    w.athletes().erase(squad.get(0).id());
    assertThat(w.seasons().secrets(id)).containsExactly(all);
    w.seasons().dropSecret(id, null);
    assertThat(w.seasons().secrets(id)).isEmpty();
  }

  /** Killed at any moment: every version that was answered is there whole, and at most one more. */
  @Test
  @SqliteFile("kills a program that writes its file; bench/machines kills servers")
  void aKillLosesNothingPublished() throws Exception {
    SeasonInput season = new InventedSeasons(14).inputOf(squad);
    long id = w.seasons().add(season, KEY, NOW).id();
    close();
    Random random = new Random(15);
    int answered = 0;
    for (int round = 0; round < 3; round++) {
      Process program = ChildProgram.start(PublishingProgram.class, dir.toString(), String.valueOf(id), String.valueOf(round));
      var out = program.getInputStream();
      StringBuilder said = new StringBuilder();
      int seen = 0;
      int lines = 1 + random.nextInt(5);
      while (seen < lines) {
        int c = out.read();
        assertThat(c).as("the program ended before it was killed").isNotNegative();
        said.append((char) c);
        seen += c == '\n' ? 1 : 0;
      }
      program.toHandle().destroyForcibly();
      said.append(new String(out.readAllBytes(), StandardCharsets.UTF_8));
      program.waitFor();
      answered = said.substring(0, said.lastIndexOf("\n") + 1).lines().map(String::strip).mapToInt(Integer::parseInt).max().orElse(answered);
      try (Workbench again = Stores.open(dir, Fixtures.CLOCK)) {
        List<SeasonRepository.Version> versions = again.seasons().versions(id);
        assertThat(versions.size()).as("round %d", round).isBetween(answered, answered + 1);
        assertThat(versions).allSatisfy(v -> assertThat(v.plan().years()).hasSize(2));
        assertThat(again.seasons().published(id).orElseThrow().version()).isEqualTo(versions.size());
      }
    }
    w = Stores.open(dir, Fixtures.CLOCK);
  }
}
