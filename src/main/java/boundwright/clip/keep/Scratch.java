package boundwright.clip.keep;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * A folder of this process alone, in the data folder, for what is brought to this machine for a while. It goes when the process closes it; what a
 * killed one left goes at the next start, told by its lock that nobody holds any more.
 */
final class Scratch implements AutoCloseable {
  private static final String NAME = "brought";
  private static final String LOCK = ".lock";

  private final Path all;
  private @Nullable Path own;
  private @Nullable FileChannel lock;

  /** @param dataFolder where it is made when it is first needed */
  Scratch(Path dataFolder) {
    this.all = dataFolder.resolve(NAME);
  }

  /** Deletes what processes left that are gone. */
  void sweep() {
    if (!Files.isDirectory(all)) {
      return;
    }
    try (Stream<Path> left = Files.list(all)) {
      for (Path lockFile : left.filter(p -> p.toString().endsWith(LOCK)).toList()) {
        sweep(lockFile);
      }
    } catch (IOException e) {
      throw new UncheckedIOException("what was brought before could not be deleted", e);
    }
  }

  private static void sweep(Path lockFile) throws IOException {
    try (FileChannel channel = FileChannel.open(lockFile, StandardOpenOption.WRITE);
        FileLock held = channel.tryLock()) {
      if (held != null) {
        String name = lockFile.toString();
        Trees.delete(Path.of(name.substring(0, name.length() - LOCK.length())));
        Files.deleteIfExists(lockFile);
      }
    } catch (OverlappingFileLockException e) {
      // another store of this process has it
    } catch (java.nio.file.NoSuchFileException e) {
      // another process swept it
    }
  }

  /** The folder, made if need be; nobody else can open it. */
  synchronized Path folder() {
    Path mine = own;
    if (mine == null) {
      try {
        Files.createDirectories(all);
        // the lock stands before the folder does, or another start would take the folder for a dead one's
        Path lockFile = Files.createTempFile(all, "by", LOCK);
        lock = FileChannel.open(lockFile, StandardOpenOption.WRITE);
        lock.tryLock();
        String name = lockFile.toString();
        mine = Path.of(name.substring(0, name.length() - LOCK.length()));
        Path made = Files.createTempDirectory(all, "by"); // with rights for its owner alone
        Files.move(made, mine);
        own = mine;
      } catch (IOException e) {
        throw new UncheckedIOException("the folder for what is brought could not be made", e);
      }
    }
    return mine;
  }

  /** A new file in it that only its owner can read. */
  Path file(String ending) {
    try {
      return Files.createTempFile(folder(), "film", "." + ending);
    } catch (IOException e) {
      throw new UncheckedIOException("a film could not be brought", e);
    }
  }

  @Override
  public synchronized void close() {
    Path mine = own;
    FileChannel held = lock;
    own = null;
    lock = null;
    if (mine != null) {
      Trees.delete(mine);
    }
    try {
      if (held != null) {
        Files.deleteIfExists(Path.of(mine + LOCK));
        held.close();
      }
    } catch (IOException e) {
      // the next start deletes it
    }
  }
}
