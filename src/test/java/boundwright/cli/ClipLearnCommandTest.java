package boundwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import boundwright.athlete.Surface;
import boundwright.athlete.person.Scope;
import boundwright.cli.Terminal.Said;
import boundwright.clip.FoundClip;
import boundwright.clip.desk.ClipDesk;
import boundwright.clip.desk.ClipState;
import boundwright.clip.film.FilmFacts;
import boundwright.clip.learn.Comparison;
import boundwright.clip.learn.Figures;
import boundwright.clip.learn.Taught;
import boundwright.clip.propose.ContactNet;
import boundwright.clip.truth.Noise;
import boundwright.clip.truth.TrueClip;
import boundwright.footfall.Sequence;
import boundwright.store.Workbench;
import com.fasterxml.jackson.databind.JsonNode;
import java.io.ByteArrayInputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The commands on one clip that was agreed to; what learning itself reaches is tested where it is done. */
class ClipLearnCommandTest {
  @TempDir Path folder = Path.of("");

  private long agreed(Terminal t) throws InterruptedException {
    t.squad();
    TrueClip clip = TrueClip.of(Sequence.parse("RRL"), 0, 6.0, 30, Noise.NONE, false, 3);
    int n = clip.found().frames();
    FoundClip found = new FoundClip(new FilmFacts("h264", 1280, 720, 0, 1, 90000, n, n / 30.0, Double.NaN), 0, clip.found(), n, List.of());
    try (Workbench w = Workbench.open(folder.resolve("data"), Terminal.CLOCK, (order, progress) -> found)) {
      ClipDesk desk = w.clips();
      desk.start();
      long orla = w.athletes().byName("Orla Tamsin").orElseThrow().id();
      long id = desk.take(orla, null, "a.mp4", new ByteArrayInputStream(new byte[] {1}), null, 0, Surface.TRACK, null).id();
      for (int i = 0; i < 6000 && desk.clip(id).state() != ClipState.READ; i++) {
        Thread.sleep(10);
      }
      desk.agree(id);
      w.people().say(orla, Scope.FILM, true);
      return id;
    }
  }

  @Test
  void labelsAreListedTooFewAreRefusedAndNothingIsTakenUnasked() throws Exception {
    Terminal t = new Terminal(folder);
    long id = agreed(t);
    Said labels = t.run("clip", "labels");
    assertThat(labels.exit()).as(labels.err()).isZero();
    assertThat(labels.out())
        .contains("clip " + id + "  Orla Tamsin, 2026-05-14")
        .contains("accepted as read")
        .contains("1 clip, 0 put right by hand.")
        .contains("Clips are read with what came with the program.");
    Said learn = t.run("clip", "learn");
    assertThat(learn.exit()).isEqualTo(2);
    assertThat(learn.err()).contains("Too few clips to learn from: 1").contains("At least 8 and 4");
    Said take = t.run("clip", "learn", "--take");
    assertThat(take.exit()).isEqualTo(2);
    assertThat(take.err()).contains("Nothing was learned yet");
    assertThat(t.run("clip", "learn", "--take", "--forget").err()).contains("Give one of --take and --forget");
    assertThat(t.run("clip", "learn", "--forget").out()).contains("There was nothing to forget.");

    Figures f = new Figures(50, 46, 0, 0, 4, 0, 3, 0.4);
    Taught candidate =
        new Taught(ContactNet.shipped(), LocalDate.of(2026, 5, 13), 1, List.of(id), 1, new Comparison(8, false, f, f, 0, 0, 0, f, f));
    Path learned = Files.createDirectories(folder.resolve("data").resolve("clips").resolve("learned"));
    Files.write(learned.resolve("candidate.weights"), candidate.bytes());
    assertThat(t.run("clip", "labels").out()).contains("Learned on 2026-05-13 and not taken yet: boundwright clip learn --take");
    assertThat(t.run("clip", "learn", "--take").out()).contains("from 1 clip, from now on").contains("--forget");
    JsonNode json = t.run("clip", "labels", "--json").json();
    assertThat(json.get("readAsTaughtOn").asText()).isEqualTo("2026-05-13");
    assertThat(json.get("clips").get(0).get("clip").asLong()).isEqualTo(id);
    assertThat(json.get("clips").get(0).get("touchdowns").asInt()).isBetween(2, 4);
    assertThat(t.run("clip", "learn", "--forget").out()).contains("what came with the program again");
    assertThat(t.run("clip", "labels", "--json").json().get("readAsTaughtOn").isNull()).isTrue();
  }
}
