package boundwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import boundwright.athlete.Athlete;
import boundwright.athlete.Level;
import boundwright.cli.Terminal.Said;
import boundwright.footfall.Foot;
import boundwright.load.GuardSettings;
import boundwright.load.LegCare;
import boundwright.season.PlainPlanner;
import boundwright.season.SeasonInput;
import boundwright.season.desk.SeasonDesk;
import boundwright.season.solve.SeasonWork;
import boundwright.store.Workbench;
import boundwright.store.season.SeasonFile;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class SeasonCommandTest {
  @TempDir Path folder = Path.of("");

  @Test
  void theExampleIsAFileThatIsRead() {
    Said said = new Terminal(folder).run("season", "example", "--from", "2026-09-26");
    assertThat(said.exit()).isZero();
    SeasonInput season = SeasonFile.read(said.out().getBytes(StandardCharsets.UTF_8), GuardSettings.DEFAULT);
    assertThat(season.first()).isEqualTo(LocalDate.of(2026, 9, 28));
    assertThat(said.out()).contains("no person here is real");
    assertThat(new Terminal(folder).run("season", "example", "--from", "soon").exit()).isEqualTo(2);
  }

  @Test
  void whatClashesIsSaidAndWhatCannotBeInsistedOnRefused() throws IOException {
    Terminal terminal = new Terminal(folder);
    Files.writeString(folder.resolve("season.json"), terminal.run("season", "example").out());
    Said said = terminal.run("season", "conflicts", "season.json", "--must", "wishes", "--json");
    assertThat(said.exit()).as(said.err()).isZero();
    assertThat(said.json().get("clashes").isArray()).isTrue();
    assertThat(said.json().get("together").asBoolean()).isEqualTo(said.json().get("clashes").isEmpty() && said.json().get("undecided").isEmpty());
    Said refused = terminal.run("season", "conflicts", "season.json", "--must", "sunshine");
    assertThat(refused.exit()).isEqualTo(2);
    assertThat(refused.err()).contains("'sunshine'", "sessions, wishes");
  }

  @Test
  void aCalendarIsWrittenOfWhatWasPublished() throws IOException {
    Terminal terminal = new Terminal(folder);
    terminal.squad();
    assertThat(terminal.run("season").out()).contains("There is no season here yet");
    assertThat(terminal.run("season", "calendar", "--out", "all.ics").err()).contains("There is no season here yet");
    try (Workbench bench = Workbench.open(folder.resolve("data"), Terminal.CLOCK)) {
      exampleSquad(bench);
      SeasonDesk desk = new SeasonDesk(bench.seasons(), SeasonWork::ofFile, Terminal.CLOCK, new Random(1));
      byte[] example = terminal.run("season", "example").out().getBytes(StandardCharsets.UTF_8);
      long id = desk.keep(SeasonFile.read(example, bench.care().guard(), (name, written) -> bench.athletes().byName(name).orElseThrow().id()));
      assertThat(terminal.run("season", "calendar", "--out", "all.ics").err()).contains("is published yet");
      bench.seasons().publish(id, new PlainPlanner().plan(desk.input(id), Optional.empty()), Terminal.CLOCK.instant());
    }
    assertThat(terminal.run("season").out()).contains("Two peaks (invented)", "version 1");
    assertThat(terminal.run("season", "--json").json().get(0).get("published").asInt()).isEqualTo(1);
    Said said = terminal.run("season", "calendar", "--athlete", "wren samphire", "--out", "wren.ics", "--json");
    assertThat(said.exit()).as(said.err()).isZero();
    assertThat(said.json().get("events").asInt()).isGreaterThan(40);
    assertThat(said.json().get("cancelled").asInt()).isZero();
    assertThat(Files.readString(folder.resolve("wren.ics"))).startsWith("BEGIN:VCALENDAR\r\n").doesNotContain("Otis");
    assertThat(terminal.run("season", "calendar", "--out", "wren.ics").err()).contains("is there already");
    assertThat(terminal.run("season", "calendar", "--season", "9", "--out", "x.ics").err()).contains("No season has the number 9");
    assertThat(terminal.run("season", "calendar", "--athlete", "Nobody", "--out", "x.ics").exit()).isEqualTo(2);
  }

  @Test
  void aSeasonIsKeptAndItsPlanPublishedFromTheCommandLine() throws IOException {
    Terminal terminal = new Terminal(folder);
    terminal.squad();
    Files.writeString(folder.resolve("season.json"), terminal.run("season", "example").out());
    assertThat(terminal.run("season", "keep", "season.json").err()).as("somebody is not in the squad").contains("squad[");
    try (Workbench bench = Workbench.open(folder.resolve("data"), Terminal.CLOCK)) {
      exampleSquad(bench);
    }
    Said kept = terminal.run("season", "keep", "season.json", "--json");
    assertThat(kept.exit()).as(kept.err()).isZero();
    assertThat(kept.json().get("published").asInt()).isZero();
    Files.writeString(folder.resolve("again.json"), terminal.run("season", "file").out());
    SeasonInput sent = read("season.json");
    assertThat(read("again.json").withSquad(sent.squad())).isEqualTo(sent);
    assertThat(terminal.run("season", "plan", "season.json", "--seconds", "0", "--out", "plan.json").exit()).isZero();
    try (Workbench bench = Workbench.open(folder.resolve("data"), Terminal.CLOCK)) {
      bench.care().openHold(bench.athletes().byName("Wren Samphire").orElseThrow().id(), new LegCare.MedicalHold(0, LocalDate.of(2020, 1, 1), "left shin", null, null));
    }
    Said refused = terminal.run("season", "keep", "season.json", "--publish", "plan.json");
    assertThat(refused.exit()).isEqualTo(2);
    assertThat(refused.err()).contains("Wren Samphire", "On medical hold since 2020-01-01").doesNotContain("shin");
    assertThat(terminal.run("season", "plan", "season.json", "--seconds", "0", "--data", "data", "--out", "held.json").exit()).isZero();
    assertThat(terminal.run("season", "keep", "season.json", "--publish", "held.json").out()).contains("Version 1 is published.");
  }

  private SeasonInput read(String file) throws IOException {
    return SeasonFile.read(Files.readAllBytes(folder.resolve(file)), GuardSettings.DEFAULT);
  }

  /** Everybody whom the example names. */
  private static void exampleSquad(Workbench bench) {
    for (String name : new String[] {"Wren Samphire", "Otis Sedgeley", "Linnea Saltwort"}) {
      if (bench.athletes().byName(name).isEmpty()) {
        bench.athletes().add(new Athlete(0, name, Level.BEGINNER, Foot.RIGHT, 0));
      }
    }
  }
}
