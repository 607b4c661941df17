package boundwright.fuzz;

import static org.assertj.core.api.Assertions.assertThat;

import boundwright.clip.bare.BareFilm;
import boundwright.quantity.RefusedException;
import com.code_intelligence.jazzer.junit.FuzzTest;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

/** The boxes of films that arrive, which code of ours reads. */
class FilmsFuzzTest {
  /** A film is as long as it was and nothing is left to take out of it, or it is refused. */
  @FuzzTest
  void bare(byte[] film) throws IOException {
    Path file = Files.createTempFile("fuzzed", ".film");
    try {
      Files.write(file, film);
      BareFilm.strip(file, "fuzzed.mp4");
      byte[] once = Files.readAllBytes(file);
      assertThat(once).hasSameSizeAs(film);
      BareFilm.strip(file, "fuzzed.mp4");
      assertThat(Files.readAllBytes(file)).isEqualTo(once);
    } catch (RefusedException e) {
      assertThat(e).hasMessageContaining("fuzzed.mp4");
    } finally {
      Files.delete(file);
    }
  }
}
