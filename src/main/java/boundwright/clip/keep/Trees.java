package boundwright.clip.keep;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;

/** Folders with all that is in them. */
public final class Trees {
  private Trees() {}

  /** Deletes a folder, if it is there. */
  public static void delete(Path folder) {
    if (!Files.exists(folder)) {
      return;
    }
    try (Stream<Path> all = Files.walk(folder)) {
      for (Path p : all.sorted(Comparator.reverseOrder()).toList()) {
        Files.deleteIfExists(p);
      }
    } catch (IOException e) {
      throw new UncheckedIOException("what lies in a folder could not be deleted", e);
    }
  }

  /** What the files in these folders take [bytes]; what goes away meanwhile counts nothing. */
  static long bytes(List<Path> folders) {
    long sum = 0;
    for (Path folder : folders) {
      try (Stream<Path> all = Files.walk(folder)) {
        sum += all.filter(Files::isRegularFile).mapToLong(f -> f.toFile().length()).sum();
      } catch (IOException e) {
        // it is not there
      }
    }
    return sum;
  }
}
