package boundwright.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import boundwright.athlete.Surface;
import boundwright.clip.desk.ClipRecord;
import boundwright.clip.desk.ClipState;
import boundwright.clip.film.Sound;
import boundwright.clip.truth.Mp4Writer;
import boundwright.clip.truth.PaintedRunner;
import boundwright.quantity.RefusedException;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Films that cannot be read go through the real queue and the real reader; each is answered and the good one after them is read. */
@SqliteFile("is of films and their reader; the queue is in ClipQueueTest")
class BadFilmsInTheQueueTest {
  @TempDir Path folder = Path.of("");

  private final PaintedRunner runner = new PaintedRunner();

  private Path film(String name, int frames, int step, boolean somebody) {
    Path file = folder.resolve(name);
    double start = runner.start();
    try (Mp4Writer out = Mp4Writer.open(file, PaintedRunner.WIDTH, PaintedRunner.HEIGHT, 60, 0)) {
      for (int i = 0; i < frames; i++) {
        out.write((somebody ? runner.at(start + i / 60.0) : runner.empty()).image(), (long) step * i);
      }
    }
    return file;
  }

  private static void weights(Path data) throws IOException {
    PaintedRunner.weightsOrSkip();
    Path to = Files.createDirectories(data.resolve("clips").resolve("weights"));
    try (var files = Files.list(PaintedRunner.WEIGHTS)) {
      for (Path file : files.filter(Files::isRegularFile).toList()) {
        Files.copy(file, to.resolve(file.getFileName()));
      }
    }
  }

  @Test
  void eachBadFilmIsAnsweredAndTheGoodOneAfterThemIsRead() throws Exception {
    Path good = film("good.mp4", 24, 1, true);
    byte[] bytes = Files.readAllBytes(good);
    Path large = folder.resolve("8k.mp4");
    try (Mp4Writer out = Mp4Writer.openLarge(large, 7680, 4320, 30)) {
      out.write(new BufferedImage(7680, 4320, BufferedImage.TYPE_BYTE_GRAY), 0);
    }
    Map<Path, String> bad = new LinkedHashMap<>();
    bad.put(Files.write(folder.resolve("cut.mp4"), Arrays.copyOf(bytes, bytes.length / 2)), "breaks off before its index");
    bad.put(Files.writeString(folder.resolve("text.mp4"), "R R L\n".repeat(100)), "is not a film");
    bad.put(Sound.write(folder.resolve("sound.mp4")), "no moving picture");
    bad.put(large, "7680 px");
    bad.put(film("hour.mp4", 3, 60 * 1800, true), "the limit is 60 s");
    bad.put(film("nobody.mp4", 6, 1, false), "Nobody was found");

    Path data = folder.resolve("data");
    weights(data);
    try (Workbench bench = Stores.open(data, Fixtures.CLOCK)) {
      long ada = bench.athletes().add(Fixtures.athlete("Ada")).id();
      Map<Long, String> asked = new LinkedHashMap<>();
      for (Map.Entry<Path, String> e : bad.entrySet()) {
        asked.put(take(bench, ada, e.getKey()), e.getValue());
      }
      Path empty = Files.createFile(folder.resolve("empty.mp4"));
      assertThatThrownBy(() -> take(bench, ada, empty)).isInstanceOf(RefusedException.class).hasMessageContaining("0 bytes");
      long last = take(bench, ada, good);
      bench.clips().start();
      for (int i = 0; i < 3000 && waits(bench.clips().clip(last)); i++) {
        Thread.sleep(50);
      }
      asked.forEach(
          (id, why) -> {
            ClipRecord clip = bench.clips().clip(id);
            assertThat(clip.state()).as(clip.fileName()).isEqualTo(ClipState.REFUSED);
            assertThat(clip.trouble()).as(clip.fileName()).contains(why).endsWith(".");
          });
      assertThat(bench.clips().clip(last).trouble()).isNull();
      assertThat(bench.clips().clip(last).state()).isEqualTo(ClipState.READ);
      assertThat(bench.clips().points(bench.clips().clip(last)).track().frames()).isEqualTo(24);
    }
  }

  private static boolean waits(ClipRecord clip) {
    return clip.state() == ClipState.WAITING || clip.state() == ClipState.READING;
  }

  private static long take(Workbench bench, long athlete, Path film) throws IOException {
    try (InputStream in = Files.newInputStream(film)) {
      return bench.clips().take(athlete, null, film.getFileName().toString(), in, null, 2, Surface.GRASS, null).id();
    }
  }
}
