package boundwright.store.backup;

import boundwright.quantity.RefusedException;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.sql.SQLException;
import java.time.Clock;
import java.time.LocalDateTime;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/** The backups in a data folder: files named after the second in which they were made. */
public final class Backups {
  private static final String FOLDER = "backups";
  private static final DateTimeFormatter STAMP = DateTimeFormatter.ofPattern("yyyyMMdd-HHmmss");
  private static final Pattern NAME = Pattern.compile("boundwright-(\\d{8}-\\d{6})(?:-before-\\d+)?(?:-\\d+)?\\.db");

  private final Path folder;
  private final Clock clock;

  /**
   * @param dataFolder where the database is
   * @param clock tells when a backup is made
   */
  public Backups(Path dataFolder, Clock clock) {
    this.folder = dataFolder.resolve(FOLDER);
    this.clock = clock;
  }

  /** The name of a file made at a time. */
  public static String name(LocalDateTime at, String ending) {
    return "boundwright-" + stamp(at) + ending;
  }

  /** A time as it stands in names. */
  static String stamp(LocalDateTime at) {
    return at.format(STAMP);
  }

  /** A file or folder of this name that is not there yet: so, or with a number before the ending. */
  static Path free(Path folder, String name, String ending) {
    Path free = folder.resolve(name + ending);
    for (int n = 2; Files.exists(free); n++) {
      free = folder.resolve(name + "-" + n + ending);
    }
    return free;
  }

  /** Where they are; the folder may be missing. */
  public Path folder() {
    return folder;
  }

  /** All that can be read, newest first. */
  public List<Kept> all() {
    return read(Counts::of);
  }

  private List<Kept> read(Function<Path, Counts> counting) {
    List<Kept> all = new ArrayList<>();
    for (Path file : files()) {
      try {
        all.add(new Kept(file, made(file), counting.apply(file)));
      } catch (RefusedException damaged) {
        // it is no backup, and is named by damaged()
      }
    }
    all.sort(Comparator.comparing(Kept::made).thenComparing(Kept::file).reversed());
    return all;
  }

  /** Files that are called as backups are and cannot be read as one. They replace nothing and are left where they are. */
  public List<Path> damaged() {
    Set<Path> good = new TreeSet<>();
    all().forEach(k -> good.add(k.file()));
    return files().stream().filter(f -> !good.contains(f)).toList();
  }

  /** When the newest was made, by its name only. */
  public Optional<LocalDateTime> newest() {
    return files().stream().map(Backups::made).max(Comparator.naturalOrder());
  }

  /** Makes one; never in the place of another. */
  public Kept make(Copy.Maker maker) {
    return make(maker, "");
  }

  /** Makes one of a database that is about to be changed to the form of version {@code next}. */
  public Kept beforeMigration(Copy.Maker maker, int next) {
    return make(maker, "-before-" + next);
  }

  private Kept make(Copy.Maker maker, String why) {
    LocalDateTime now = LocalDateTime.now(clock).withNano(0);
    try {
      Private.folder(folder);
    } catch (IOException e) {
      throw new RefusedException("No backup was made: the folder " + folder + " cannot be made (" + e.getMessage() + "). The store is as it was.", e);
    }
    Path file = free(folder, name(now, why), ".db");
    return new Kept(file, now, Copy.make(file, maker));
  }

  /** Lets those go that the rotation does not keep. Each of them is looked through before one goes for its sake. */
  public List<Kept> thin(Rotation rotation) {
    List<Kept> go = rotation.toGo(read(Copy::check));
    try {
      for (Kept k : go) {
        Files.deleteIfExists(k.file());
      }
    } catch (IOException e) {
      throw new RefusedException("An old backup could not be removed: " + e.getMessage() + ". All others are as they were.", e);
    }
    return go;
  }

  /**
   * Takes those who were erased out of the backups too. Each is done on a copy that is looked through before it takes the old one's place.
   *
   * @return how many backups held one of them
   */
  public int erase(Set<String> tokens) {
    int changed = 0;
    for (Path file : files()) {
      try {
        if (Erasures.present(file, tokens) > 0) {
          erase(file, tokens);
          changed++;
        }
      } catch (SQLException damaged) {
        // it cannot be restored either, and is named by damaged()
      }
    }
    return changed;
  }

  private void erase(Path file, Set<String> tokens) {
    Path part = folder.resolve("erasing.part");
    try {
      Files.deleteIfExists(part);
      Private.file(part);
      Files.copy(file, part, StandardCopyOption.REPLACE_EXISTING, StandardCopyOption.COPY_ATTRIBUTES);
      Erasures.apply(part, tokens);
      Copy.check(part);
      Copy.force(part);
      Files.move(part, file, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
    } catch (IOException | SQLException e) {
      throw new RefusedException(
          "The backup " + file + " still holds somebody who was erased: it could not be written anew (" + e.getMessage() + "). Free some space, or delete it by hand.", e);
    }
  }

  private List<Path> files() {
    if (!Files.isDirectory(folder)) {
      return List.of();
    }
    try (Stream<Path> all = Files.list(folder)) {
      return all.filter(f -> NAME.matcher(String.valueOf(f.getFileName())).matches()).sorted().toList();
    } catch (IOException e) {
      throw new RefusedException("The folder of backups " + folder + " cannot be read: " + e.getMessage() + ". Allow reading it.", e);
    }
  }

  private static LocalDateTime made(Path file) {
    Matcher m = NAME.matcher(String.valueOf(file.getFileName()));
    if (!m.matches()) {
      throw new IllegalStateException("no name of a backup: " + file);
    }
    return LocalDateTime.parse(m.group(1), STAMP);
  }
}
