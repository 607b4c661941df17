package boundwright.store.engine;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.util.Objects;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.sqlite.util.LibraryLoaderUtil;

/** The database's native library beside the program. */
class SqliteLibraryTest {
  private static byte[] shipped() throws IOException {
    try (InputStream in = SqliteLibrary.class.getResourceAsStream(LibraryLoaderUtil.getNativeLibResourcePath() + "/" + LibraryLoaderUtil.getNativeLibName())) {
      return Objects.requireNonNull(in).readAllBytes();
    }
  }

  @Test
  void itIsUnpackedOnceAndWhole(@TempDir Path folder) throws IOException {
    Path kept = SqliteLibrary.kept(folder.resolve("native"));
    assertThat(Files.readAllBytes(kept)).isEqualTo(shipped());
    FileTime first = FileTime.fromMillis(1_000_000_000_000L);
    Files.setLastModifiedTime(kept, first);
    assertThat(SqliteLibrary.kept(folder.resolve("native"))).isEqualTo(kept);
    assertThat(Files.getLastModifiedTime(kept)).as("not written again").isEqualTo(first);
    try (Stream<Path> beside = Files.list(Objects.requireNonNull(kept.getParent()))) {
      assertThat(beside).as("nothing half written is left").containsExactly(kept);
    }
  }

  @Test
  void whereItCannotBeKeptThereIsNone(@TempDir Path folder) throws IOException {
    Path file = Files.writeString(folder.resolve("no-folder"), "");
    assertThat(Files.isRegularFile(SqliteLibrary.kept(file))).isFalse();
  }
}
