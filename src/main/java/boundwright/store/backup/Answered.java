package boundwright.store.backup;

import boundwright.quantity.Notes;
import boundwright.quantity.RefusedException;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.sql.SQLException;
import java.util.Optional;

/**
 * How many transactions were answered as kept, in a file beside the database. The database counts them too, inside each transaction; if it
 * holds fewer when it is opened, some that were answered are gone: its log was cut, or an older file was put in its place. The file is
 * written after the commit and is not waited for, so it can only say too few, never too many.
 */
public final class Answered implements AutoCloseable {
  /** The file's name. */
  static final String NAME = "boundwright.count";

  private static final String LOST = "boundwright.lost";
  private static final String AS_FOUND = "as-found";
  private static final int DIGITS = 19;

  private final FileChannel channel;
  private final ByteBuffer digits = ByteBuffer.allocate(DIGITS + 1);

  private Answered(FileChannel channel) {
    this.channel = channel;
  }

  /** Opens the counter of a database. */
  @SuppressWarnings("MustBeClosedChecker") // closed with this
  public static Answered of(Path database) {
    try {
      Private.file(beside(database));
      return new Answered(FileChannel.open(beside(database), StandardOpenOption.CREATE, StandardOpenOption.WRITE));
    } catch (IOException e) {
      throw new RefusedException("The file " + beside(database) + " cannot be written: " + e.getMessage() + ". Allow writing to the folder and the files in it.", e);
    }
  }

  /** So many transactions are kept; called by one thread at a time, before any of them is answered. */
  public void says(long count) throws IOException {
    digits.clear();
    digits.put(String.format("%0" + DIGITS + "d\n", count).getBytes(StandardCharsets.US_ASCII)).flip();
    channel.write(digits, 0);
  }

  /** What the counter of a database says, or empty if there is none. */
  static Optional<Long> read(Path database) {
    try {
      return Optional.of(Long.parseLong(Files.readString(beside(database), StandardCharsets.US_ASCII).strip()));
    } catch (IOException | NumberFormatException e) {
      return Optional.empty();
    }
  }

  private static Path beside(Path database) {
    return database.resolveSibling(NAME);
  }

  /**
   * Compares before the database is opened to be written. Where it holds less than was answered, the files are first copied aside as they
   * were found, so that nothing further is lost, and a sentence is kept until it was read.
   *
   * @throws RefusedException if the database is gone altogether
   */
  public static void compare(Path database) {
    long answered = read(database).orElse(0L); // before the database: whoever writes meanwhile writes there first
    if (answered == 0) {
      return;
    }
    if (!Files.exists(database)) {
      throw new RefusedException(
          "The database " + database + " is gone, though " + Notes.counted(answered, "entry", "entries") + " were kept in it. Nothing was made in its place."
              + " Put it back, or bring back a backup: boundwright restore FILE. To begin anew, give another folder with --data.");
    }
    long kept;
    try (var c = Counts.looking(database);
        var s = c.createStatement()) {
      if (!Counts.has(s, "written")) {
        return; // older than the count
      }
      kept = Counts.one(s, "SELECT coalesce(max(count), 0) FROM written");
    } catch (SQLException e) {
      return; // whoever opens it next says what is wrong with it
    }
    if (kept < answered) {
      note(database, answered, kept);
    }
  }

  private static void note(Path database, long answered, long kept) {
    try {
      Path aside = Private.folder(Backups.free(database.resolveSibling(""), AS_FOUND, ""));
      for (String ending : new String[] {"", "-wal"}) {
        Path file = database.resolveSibling(database.getFileName() + ending);
        if (Files.exists(file)) {
          Files.copy(file, aside.resolve(file.getFileName()));
        }
      }
      String said =
          Notes.counted(answered - kept, "entry", "entries") + " that boundwright had kept, the newest, " + (answered - kept == 1 ? "is" : "are") + " no longer in the database: its log was cut,"
              + " or an older file was put in its place. The files as they were found are in " + aside
              + ". Look at the last reps, and log again what is missing.";
      Files.writeString(database.resolveSibling(LOST), said, StandardCharsets.UTF_8);
      try (Answered counter = of(database)) {
        counter.says(kept);
      }
    } catch (IOException e) {
      throw new RefusedException(
          "Entries are missing from " + database + ", and the files could not be copied aside before going on (" + e.getMessage()
              + "). Nothing was changed. Free some space and open it again.", e);
    }
  }

  /** What was lost, in words, until it was read; empty if nothing is known to be lost. */
  static Optional<String> lost(Path folder) {
    try {
      return Optional.of(Files.readString(folder.resolve(LOST), StandardCharsets.UTF_8));
    } catch (NoSuchFileException e) {
      return Optional.empty();
    } catch (IOException e) {
      return Optional.of("The file " + folder.resolve(LOST) + ", which says what is missing, cannot be read.");
    }
  }

  /** The coach has read it. */
  static void seen(Path folder) throws IOException {
    if (lost(folder).isPresent()) {
      Files.move(folder.resolve(LOST), folder.resolve(LOST + ".read"), StandardCopyOption.REPLACE_EXISTING);
    }
  }

  /** After another database was put in place: what it holds is what was answered. */
  static void start(Path database) throws IOException {
    Counts counts = Counts.of(database);
    try (Answered counter = of(database)) {
      counter.says(counts.written());
    }
    Files.deleteIfExists(database.resolveSibling(LOST));
  }

  @Override
  public void close() {
    try {
      channel.close();
    } catch (IOException e) {
      throw new RefusedException("The counter of entries could not be closed: " + e.getMessage() + ". What was logged is safe.", e);
    }
  }
}
