package boundwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import boundwright.cli.backup.EverythingFile;
import boundwright.quantity.RefusedException;
import boundwright.store.Workbench;
import com.code_intelligence.jazzer.api.FuzzedDataProvider;
import com.code_intelligence.jazzer.junit.FuzzTest;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;

/** What a user writes behind an option, or names as a file. */
class FilesFuzzTest {
  /** Marks, corners, pole and box on a picture. */
  @FuzzTest
  void clipMarks(FuzzedDataProvider data) {
    int which = data.consumeInt(0, 3);
    String text = data.consumeRemainingAsString();
    try {
      switch (which) {
        case 0 -> ClipMarks.ground(text).forEach(m -> assertThat(m.at_m()).isFinite());
        case 1 -> ClipMarks.corners(text);
        case 2 -> ClipMarks.pole(text);
        default -> ClipMarks.box(text);
      }
    } catch (RefusedException e) {
      assertThat(e.getMessage()).isNotBlank();
    }
  }

  /** A file of everything is taken whole or refused, and what is taken opens again. */
  @FuzzTest
  void everything(byte[] data) throws IOException {
    Path folder = Files.createTempDirectory("everything");
    try {
      EverythingFile.read(
          Workbench.restoring(folder.resolve("data"), Terminal.CLOCK), new InputStreamReader(new ByteArrayInputStream(data), StandardCharsets.UTF_8));
      try (Workbench bench = Workbench.open(folder.resolve("data"), Terminal.CLOCK)) {
        assertThat(bench.athletes().all()).isNotNull();
      }
    } catch (RefusedException e) {
      assertThat(e.getMessage()).isNotBlank();
    } finally {
      clear(folder);
    }
  }

  private static void clear(Path folder) throws IOException {
    try (Stream<Path> all = Files.walk(folder)) {
      List<Path> deepFirst = all.sorted(Comparator.reverseOrder()).toList();
      for (Path p : deepFirst) {
        Files.delete(p);
      }
    }
  }
}
