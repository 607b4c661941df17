package boundwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import boundwright.cli.Terminal.Said;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What goes in from files and out to files: import, export, card. */
class FilesTest {
  private static final String HEADER =
      "date,athlete,sequence,approach_steps,surface,footprints_m,landing_m,outcome,mark_to_sand_m\n";

  @TempDir Path folder = Path.of("");
  private Terminal terminal = new Terminal(folder);

  @BeforeEach
  void terminal() {
    terminal = new Terminal(folder);
  }

  private Path file(String text) throws IOException {
    return Files.writeString(folder.resolve("reps.csv"), HEADER + text);
  }

  @Test
  void importMakesUnknownAthletesAndExportGivesTheSameBack() throws IOException {
    file("2026-05-01,Mara Invented,RRL RRL,4,grass,2.1;4.3;6.2;8.4;10.2,12.3,in,11.9\n2026-05-02,Zoë Invented,RL x3,0,track,,,short,\n");
    Said said = terminal.run("import", "reps.csv");
    assertThat(said.exit()).as(said.err()).isZero();
    assertThat(said.out()).contains("2 reps taken").contains("2 new athletes").contains("Set the level of each new athlete");
    Said twice = terminal.run("import", "reps.csv");
    assertThat(twice.exit()).isEqualTo(1);
    assertThat(twice.out()).contains("2 reps were there already and were not taken again: lines 2 to 3.");
    assertThat(terminal.run("import", "reps.csv", "--json").json().get("there").get(1).asInt()).isEqualTo(3);
    assertThat(terminal.run("marks", "--athlete", "mara invented", "--sequence", "RRL RRL", "--steps", "4", "--json").json().get("repsAtRung").asInt())
        .isEqualTo(1);

    Said out = terminal.run("export", "--out", "again.csv");
    assertThat(out.exit()).as(out.err()).isZero();
    Said again = terminal.run("import", "again.csv", "--data", "second", "--json");
    assertThat(again.json().get("taken").asInt()).isEqualTo(2);
    assertThat(terminal.run("export", "--data", "second").out()).isEqualTo(terminal.run("export").out());
    assertThat(terminal.run("export", "--json").json()).hasSize(2);
    assertThat(terminal.run("export", "--athlete", "Zoë Invented").out().lines()).hasSize(2);
  }

  @Test
  void anAthleteWhoAsksGetsEverythingThatIsKeptOfThem() throws IOException {
    file("2026-05-01,Mara Invented,RRL RRL,4,grass,2.1;4.3;6.2;8.4;10.2,12.3,in,11.9\n2026-05-02,Zoë Invented,RL x3,0,track,,,short,\n");
    terminal.run("import", "reps.csv");
    terminal.run("pain", "--athlete", "zoë invented", "--area", "left shin", "--level", "3");
    JsonNode all = terminal.run("export", "--athlete", "zoë invented", "--everything").json();
    assertThat(all.get("athlete").asText()).isEqualTo("Zoë Invented");
    assertThat(all.get("written").asText()).isEqualTo("2026-05-14");
    assertThat(all.get("invented").asBoolean()).isFalse();
    assertThat(all.at("/kept/athlete/0/name").asText()).isEqualTo("Zoë Invented");
    assertThat(all.at("/kept/rep")).hasSize(1);
    assertThat(all.at("/kept/rep/0/outcome").asText()).isEqualTo("SHORT");
    assertThat(all.at("/kept/rep/0/landing_m").isNull()).isTrue();
    assertThat(all.at("/kept/pain/0/area").asText()).isEqualTo("left shin");
    assertThat(all.toString()).doesNotContain("Mara");
    Said written = terminal.run("export", "--athlete", "zoë invented", "--everything", "--out", "zoe.json");
    assertThat(written.out()).startsWith("Everything that is kept of Zoë Invented");
    assertThat(new ObjectMapper().readTree(Files.readString(folder.resolve("zoe.json")))).isEqualTo(all);
    assertThat(terminal.run("export", "--athlete", "zoë invented", "--everything", "--out", "zoe.json").err()).contains("--force");
  }

  @Test
  void aBadRowIsReportedWithItsLineAndNothingIsTaken() throws IOException {
    file("2026-05-01,Mara Invented,RRL,4,grass,,,in,7\n2026-05-01,Mara Invented,RXL,4,grass,,,in,7\n2026-05-01,Mara Invented,RRL,40,grass,,,in,7\n");
    Said said = terminal.run("import", "reps.csv");
    assertThat(said.exit()).isEqualTo(1);
    assertThat(said.out()).contains("Nothing was taken");
    assertThat(said.err()).contains("line 3:").contains("line 4:").contains("--skip-bad-rows").doesNotContain("Exception");
    assertThat(terminal.run("export", "--json").json()).isEmpty();
    Said json = terminal.run("import", "reps.csv", "--json");
    assertThat(json.exit()).isEqualTo(1);
    assertThat(json.json().at("/problems/0/line").asInt()).isEqualTo(3);
    Said skipped = terminal.run("import", "reps.csv", "--skip-bad-rows");
    assertThat(skipped.exit()).isZero();
    assertThat(skipped.out()).contains("1 rep taken");
    assertThat(terminal.run("export", "--json").json()).hasSize(1);
  }

  @Test
  void filesThatCannotBeReadAreSaid() throws IOException {
    Said missing = terminal.run("import", "nowhere.csv");
    assertThat(missing.exit()).isEqualTo(2);
    assertThat(missing.err()).contains("no file");
    assertThat(folder.resolve("data")).doesNotExist();
    Files.write(folder.resolve("latin.csv"), (HEADER + "2026-05-01,Zo\u00eb Invented,RRL,4,grass,,,in,7\n").getBytes(StandardCharsets.ISO_8859_1));
    Said latin = terminal.run("import", "latin.csv");
    assertThat(latin.exit()).isIn(1, 2);
    assertThat(latin.err()).contains("UTF-8");
    Files.writeString(folder.resolve("empty.csv"), "");
    assertThat(terminal.run("import", "empty.csv").exit()).isEqualTo(1);
  }

  @Test
  void anExportNeverReplacesAFileUnasked() throws IOException {
    terminal.squad();
    Path there = Files.writeString(folder.resolve("out.csv"), "mine");
    Said said = terminal.run("export", "--out", "out.csv");
    assertThat(said.exit()).isEqualTo(2);
    assertThat(said.err()).contains("--force");
    assertThat(there).hasContent("mine");
    assertThat(terminal.run("export", "--out", "out.csv", "--force").exit()).isZero();
    assertThat(Files.readString(there)).startsWith("date,athlete,sequence");
    assertThat(terminal.run("export", "--out", "no/such/out.csv").err()).contains("no folder");
    assertThat(terminal.run("export", "--out", ".").err()).contains("is a folder");
    try (var left = Files.list(folder)) {
      assertThat(left.map(p -> p.getFileName().toString())).noneMatch(n -> n.endsWith(".part"));
    }
  }

  /** ISO 216: A5 is 148 mm by 210 mm, A4 210 mm by 297 mm (published); a point is 1/72 inch. */
  @Test
  void theCardIsAPdfOfTheAskedSize() throws IOException {
    terminal.squad();
    Said a5 = terminal.run("card", "--athlete", "Orla Tamsin", "--sequence", "RRL x2", "--steps", "4", "--out", "a5.pdf");
    assertThat(a5.exit()).as(a5.err()).isZero();
    assertThat(a5.out()).contains("Orla Tamsin").contains("a5.pdf");
    sized("a5.pdf", 148, 210);
    Said a4 = terminal.run("card", "--squad", "--paper", "a4", "--sequence", "RL x5", "--sequence", "RRL", "--out", "a4.pdf", "--json");
    assertThat(a4.exit()).as(a4.err()).isZero();
    assertThat(a4.json().get("athletes")).hasSize(3);
    assertThat(a4.json().get("bytes").asInt()).isEqualTo((int) Files.size(folder.resolve("a4.pdf")));
    sized("a4.pdf", 210, 297);
  }

  private void sized(String name, double one_mm, double other_mm) throws IOException {
    try (PDDocument pdf = Loader.loadPDF(Files.readAllBytes(folder.resolve(name)))) {
      var box = pdf.getPage(0).getMediaBox();
      double[] sides = {box.getWidth() / 72 * 25.4, box.getHeight() / 72 * 25.4};
      java.util.Arrays.sort(sides);
      assertThat(sides[0]).isBetween(one_mm - 0.5, one_mm + 0.5);
      assertThat(sides[1]).isBetween(other_mm - 0.5, other_mm + 0.5);
    }
  }

  @Test
  void theCardRefusesWhatItCannotPrint() throws IOException {
    terminal.squad();
    assertThat(terminal.run("card", "--squad", "--out", "x.pdf").err()).contains("no drills");
    assertThat(terminal.run("card", "--squad", "--paper", "A6", "--sequence", "RRL", "--out", "x.pdf").err()).contains("A5 or A4");
    assertThat(terminal.run("card", "--sequence", "RRL", "--out", "x.pdf").exit()).isEqualTo(2);
    assertThat(terminal.run("card", "--squad", "--sequence", "RRL", "--sets", "21", "--out", "x.pdf").err()).contains("1 to 20");
    Files.writeString(folder.resolve("x.pdf"), "mine");
    assertThat(terminal.run("card", "--squad", "--sequence", "RRL", "--out", "x.pdf").err()).contains("--force");
    assertThat(folder.resolve("x.pdf")).hasContent("mine");
  }

  @Test
  void aReportIsPrintedWordForWordAndAsAPdf() throws IOException {
    terminal.squad();
    Said home = terminal.run("report", "--for", "home", "--athlete", "orla tamsin", "--out", "home.pdf");
    assertThat(home.exit()).as(home.err()).isZero();
    assertThat(home.out()).contains("For those at home: Orla Tamsin").contains("Nothing about health stands here").contains("home.pdf");
    sized("home.pdf", 210, 297);
    assertThat(terminal.run("report", "--for", "club", "--json").json().get("parts").get(0).get("table")).hasSize(3);
  }

  @Test
  void aReportThatCannotBeSaysWhyAndWhatToDo() throws IOException {
    terminal.squad();
    assertThat(terminal.run("report", "--for", "press").err()).contains("'press'").contains("athlete, home or club");
    assertThat(terminal.run("report", "--for", "home").err()).contains("--athlete NAME");
    assertThat(terminal.run("report", "--for", "club", "--athlete", "Orla Tamsin").err()).contains("Leave out --athlete");
    assertThat(terminal.run("report", "--for", "club", "--from", "2031-01-01").err()).contains("Give other days");
    Files.writeString(folder.resolve("x.pdf"), "mine");
    assertThat(terminal.run("report", "--for", "club", "--out", "x.pdf").err()).contains("--force");
    assertThat(folder.resolve("x.pdf")).hasContent("mine");
  }
}
