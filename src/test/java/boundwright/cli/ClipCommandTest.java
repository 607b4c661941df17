package boundwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import boundwright.cli.Terminal.Said;
import boundwright.clip.FoundClip;
import boundwright.clip.body.DeLeva;
import boundwright.clip.pose.Weights;
import boundwright.clip.reading.ClipReader;
import boundwright.clip.reading.ClipReading;
import boundwright.clip.reading.Setup;
import boundwright.clip.scale.GroundMarks;
import boundwright.clip.scan.FoundBytes;
import boundwright.clip.scan.ScanOrder;
import boundwright.clip.scan.ScanProcess;
import boundwright.clip.track.BodyPoint;
import boundwright.clip.truth.Filmed;
import boundwright.clip.truth.Mp4Writer;
import boundwright.clip.truth.Noise;
import boundwright.clip.truth.TrueClip;
import boundwright.footfall.Sequence;
import boundwright.quantity.RefusedException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.awt.image.BufferedImage;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Films made up and painted by the tests, so that the truth is known; every value reached is own output. */
class ClipCommandTest {
  @TempDir Path folder = Path.of("");

  /** The weights are fetched once and shared by all tests of a build. */
  private static Path data() {
    Path data = Path.of("target", "clip-data").toAbsolutePath();
    try {
      new Weights(data.resolve("clips").resolve("weights")).detector();
    } catch (RefusedException e) {
      Assumptions.abort("Not checked, because the weights cannot be had: " + e.getMessage());
    }
    return data;
  }

  @ParameterizedTest(name = "{0} {1}")
  @CsvSource(
      delimiter = '|',
      value = {
        "--marks|120;610|is not understood. Write it as x,y=METRES",
        "--marks|120,610=0|at least 2 marks",
        "--pole|640,600|is not understood. Write it as FOOT;TOP=METRES",
        "--box|1,2,3|is not understood",
        "--slowed|0.5|out of range: 1",
        "--segments|child|Use male or female",
        "--box-frame|0|frames count from"
      })
  void badOptionsAreRefusedBeforeTheFilmIsRead(String option, String value, String why) {
    Said said = new Terminal(folder).run("clip", "no-such.mp4", option, value);
    assertThat(said.exit()).isEqualTo(2);
    assertThat(said.err()).contains(why);
  }

  @Test
  void badFilesGetASentenceEach() throws Exception {
    Path data = data();
    Path text = Files.writeString(folder.resolve("notes.mp4"), "three reps, all clean\n");
    Path empty = Files.createFile(folder.resolve("empty.mp4"));
    Path nobody = folder.resolve("nobody.mp4");
    try (Mp4Writer out = Mp4Writer.open(nobody, 320, 240, 1000, 0)) {
      for (int i = 0; i < 8; i++) {
        out.write(new BufferedImage(320, 240, BufferedImage.TYPE_3BYTE_BGR), 40L * i);
      }
    }
    for (Path file : List.of(text, empty, nobody, folder.resolve("gone.mp4"))) {
      Said said = new Terminal(folder).run("clip", file.toString(), "--data", data.toString());
      assertThat(said.exit()).as("%s: %s", file, said.err()).isEqualTo(2);
      assertThat(said.err()).as("%s", file).contains(". ").doesNotContain("Exception").doesNotContain("\tat ");
    }
  }

  @Test
  void theCommandSaysWhatTheSameReadingSaysElsewhere() throws Exception {
    Path data = data();
    TrueClip clip = TrueClip.of(Sequence.parse("RRL"), 0, 5, 60, Noise.NONE, false, 2006);
    Path film = folder.resolve("made-up.mp4");
    Filmed.write(clip, film, 0);
    String marks =
        clip.marks().stream()
            .map(m -> String.format(Locale.ROOT, "%.3f,%.3f=%.2f", m.picture().x(), m.picture().y(), m.at_m()))
            .collect(Collectors.joining(";"));
    Said said = new Terminal(folder).run("clip", film.toString(), "--data", data.toString(), "--marks", marks, "--json");
    assertThat(said.exit()).as(said.err()).isZero();
    JsonNode json = said.json();

    FoundClip found = ScanProcess.scan(ScanOrder.of(film, data.resolve("clips").resolve("weights")), p -> {});
    List<GroundMarks.Mark> written = ClipMarks.ground(marks);
    ClipReading reading = ClipReader.read(found, new Setup(written, null, List.of(), 1, DeLeva.MALE), List.of(), null);
    assertThat(json).isEqualTo(new ObjectMapper().readTree(new ObjectMapper().writeValueAsString(ClipAnswer.of(found, reading))));

    assertThat(json.at("/film/frames").asInt()).as("every frame written was read").isEqualTo(clip.truth().frames());
    assertThat(json.get("contacts").size()).as("contacts found on a painted athlete, own output").isGreaterThanOrEqualTo(2);
    assertThat(json.get("lengths").asBoolean()).isTrue();
    FoundClip again = FoundBytes.read(FoundBytes.of(found));
    assertThat(again.film()).isEqualTo(found.film());
    assertThat(again.track().times()).containsExactly(found.track().times());
    assertThat(again.track().xs(BodyPoint.NOSE)).containsExactly(found.track().xs(BodyPoint.NOSE));
  }
}
