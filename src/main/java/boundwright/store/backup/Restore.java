package boundwright.store.backup;

import boundwright.quantity.RefusedException;
import boundwright.store.age.Age;
import java.io.BufferedInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Clock;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.Consumer;
import java.util.function.Supplier;
import java.util.stream.Stream;

/**
 * Brings a backup back. It is unpacked and looked through beside the present data, whoever was erased is erased from it again, and only then
 * the files change places; what was there before is kept in a folder of its own. A kill at any moment leaves either the old data, or the new
 * ones once the folder is opened again.
 */
public final class Restore {
  private static final String STAGING = "restoring";
  private static final String READY = "ready";
  /** Held while a database is brought up to date. */
  private static final String LOCK = "boundwright.lock";

  private final Path folder;
  private final Clock clock;
  private final Consumer<Path> upToDate;
  private final Maker made;

  /** Makes an empty database of an older form, or of this program's. */
  @FunctionalInterface
  public interface Maker {
    /**
     * Makes it.
     *
     * @param folder where
     * @param version number of the newest script that it has seen
     * @throws RefusedException if this program does not know that version
     */
    void make(Path folder, int version);
  }

  /**
   * @param folder the data folder
   * @param clock tells when
   * @param made makes an empty database
   * @param upToDate opens the database in a folder, brings it to the form of this program, and closes it
   */
  public Restore(Path folder, Clock clock, Consumer<Path> upToDate, Maker made) {
    this.folder = folder.toAbsolutePath().normalize();
    this.clock = clock;
    this.upToDate = upToDate;
    this.made = made;
  }

  /**
   * What was brought back.
   *
   * @param counts what the database holds now
   * @param erasedAgain athletes of the backup who had been erased and were erased again
   * @param aside where the data of before are; empty if there were none
   * @param films whether the backup had the films with it
   */
  public record Result(Counts counts, int erasedAgain, Path aside, boolean films) {}

  /** Whether a passphrase is asked for. */
  private static boolean isSealed(Path file) {
    return starts(file, "age-encryption.org/v1\n".getBytes(StandardCharsets.US_ASCII));
  }

  /**
   * Brings a backup back.
   *
   * @param file a database, a packed backup, or a sealed one
   * @param passphrase asked only for a sealed one
   * @throws RefusedException if the folder is open, or the file is no whole backup; the present data are as they were
   */
  public Result from(Path file, Supplier<char[]> passphrase) {
    if (!Files.isRegularFile(file)) {
      throw new RefusedException("There is no file " + file + ". Check the name and the folder.");
    }
    return inPlace(
        staging -> {
          boolean films = unpack(file, passphrase, staging);
          checkWhole(staging.resolve(Bundle.DATABASE), file);
          return films;
        });
  }

  /** Puts rows into a database. */
  @FunctionalInterface
  public interface Rows {
    /** Puts all of them. */
    void into(EverythingInto database) throws IOException;
  }

  /**
   * Makes the data from rows that {@link Everything} told, in a folder that holds no athlete yet.
   *
   * @param version of the schema from which they were told
   * @throws RefusedException if the folder holds athletes, or a row cannot be kept; nothing was changed then
   */
  public Result fromRows(int version, Rows rows) {
    Path present = folder.resolve(Bundle.DATABASE);
    if (Files.exists(present) && Counts.of(present).of("athlete") > 0) {
      throw new RefusedException("The folder " + folder + " holds a squad, which is never mixed with another. Nothing was changed. Name an empty folder with --data.");
    }
    return inPlace(
        staging -> {
          made.make(staging, version);
          try (EverythingInto into = EverythingInto.file(staging.resolve(Bundle.DATABASE), Everything.Which.LEAVING)) {
            rows.into(into);
            into.end();
          }
          return false;
        });
  }

  @FunctionalInterface
  private interface Staged {
    boolean into(Path staging) throws IOException, SQLException;
  }

  private Result inPlace(Staged staged) {
    try {
      Private.folder(folder);
    } catch (IOException e) {
      throw failed(e);
    }
    InUse alone = InUse.alone(folder);
    try {
      finish(folder);
      Path staging = folder.resolve(STAGING);
      try {
        delete(staging);
        Private.folder(staging);
        boolean films = staged.into(staging);
        Path database = staging.resolve(Bundle.DATABASE);
        upToDate.accept(staging);
        int again = Erasures.apply(database, erased());
        goOnCounting(database);
        withoutErasedFilms(staging, database);
        Counts counts = Copy.check(database);
        for (String left : new String[] {"-wal", "-shm"}) {
          Files.deleteIfExists(staging.resolve(Bundle.DATABASE + left));
        }
        for (String beside : new String[] {Answered.NAME, InUse.NAME, LOCK}) {
          Files.deleteIfExists(staging.resolve(beside));
        }
        Copy.force(database);
        Path aside = Backups.free(folder, "before-restore-" + Backups.stamp(LocalDateTime.now(clock)), "");
        Files.writeString(staging.resolve(READY), String.valueOf(aside.getFileName()), StandardCharsets.UTF_8);
        finish(folder);
        return new Result(counts, again, aside, films);
      } catch (IOException | SQLException e) {
        throw failed(e);
      } finally {
        if (!Files.exists(staging.resolve(READY))) {
          delete(staging);
        }
      }
    } finally {
      alone.close();
    }
  }

  private static RefusedException failed(Exception e) {
    return new RefusedException("The backup could not be brought back (" + e.getMessage() + "). Nothing here was lost. Free some space, check the disk, and try again.", e);
  }

  private static boolean starts(Path file, byte[] with) {
    try (InputStream in = Files.newInputStream(file)) {
      return Arrays.equals(in.readNBytes(with.length), with);
    } catch (IOException e) {
      throw new RefusedException("The file " + file + " cannot be read: " + e.getMessage() + ". Check that it is a file and that you may read it.", e);
    }
  }

  private static boolean unpack(Path file, Supplier<char[]> passphrase, Path staging) throws IOException {
    if (isSealed(file)) {
      try (InputStream in = Age.opening(Files.newInputStream(file), passphrase.get())) {
        return Bundle.read(in, staging);
      }
    }
    if (starts(file, new byte[] {'P', 'K', 3, 4})) {
      try (InputStream in = new BufferedInputStream(Files.newInputStream(file))) {
        return Bundle.read(in, staging);
      }
    }
    Path database = staging.resolve(Bundle.DATABASE);
    Private.file(database);
    Files.copy(file, database, StandardCopyOption.REPLACE_EXISTING);
    return false;
  }

  private static void checkWhole(Path database, Path file) {
    if (!Files.exists(database)) {
      throw new RefusedException("The backup " + file + " holds no database. Nothing was changed. Take another.");
    }
    try {
      Copy.check(database);
    } catch (RefusedException e) {
      throw new RefusedException("The file " + file + " is no whole backup, so nothing was changed. Take another: those in the folder backups were looked through when they were made.", e);
    }
  }

  /** Who was erased here, as far as the present data and the backups beside them can say. */
  private Set<String> erased() {
    Set<String> tokens = new TreeSet<>(Erasures.of(folder.resolve(Bundle.DATABASE)));
    new Backups(folder, clock).all().forEach(k -> tokens.addAll(Erasures.of(k.file())));
    return tokens;
  }

  /** A number that was given here is not given again, so that no film of somebody lies where a new clip's would. */
  private void goOnCounting(Path database) throws SQLException {
    Map<String, Long> here = new TreeMap<>();
    if (!Files.exists(folder.resolve(Bundle.DATABASE))) {
      return;
    }
    try (Connection c = Counts.looking(folder.resolve(Bundle.DATABASE));
        Statement s = c.createStatement();
        ResultSet r = s.executeQuery("SELECT name, seq FROM sqlite_sequence")) {
      while (r.next()) {
        here.put(r.getString(1), r.getLong(2));
      }
    } catch (SQLException damaged) {
      return; // what is lost cannot be asked; films of before are put aside below
    }
    try (Connection c = DriverManager.getConnection("jdbc:sqlite:" + database);
        var raise = c.prepareStatement("UPDATE sqlite_sequence SET seq = ? WHERE name = ? AND seq < ?");
        var add = c.prepareStatement("INSERT INTO sqlite_sequence (name, seq) SELECT ?, ? WHERE EXISTS (SELECT 1 FROM sqlite_schema WHERE name = ?) AND NOT EXISTS (SELECT 1 FROM sqlite_sequence WHERE name = ?)")) {
      for (Map.Entry<String, Long> e : here.entrySet()) {
        raise.setLong(1, e.getValue());
        raise.setString(2, e.getKey());
        raise.setLong(3, e.getValue());
        raise.execute();
        add.setString(1, e.getKey());
        add.setLong(2, e.getValue());
        add.setString(3, e.getKey());
        add.setString(4, e.getKey());
        add.execute();
      }
    }
  }

  private static void withoutErasedFilms(Path staging, Path database) throws IOException, SQLException {
    for (Path orphan : orphans(staging, database)) {
      delete(orphan);
    }
  }

  /** Folders of clips and films that the database does not know. */
  static List<Path> orphans(Path folder, Path database) throws IOException, SQLException {
    List<Path> orphans = new ArrayList<>();
    try (Connection c = Counts.looking(database);
        Statement s = c.createStatement()) {
      for (String name : Bundle.FOLDERS) {
        String table = name.equals("clips") ? "clip" : "session_film";
        if (Files.isDirectory(folder.resolve(name)) && Counts.has(s, table)) {
          try (Stream<Path> all = Files.list(folder.resolve(name))) {
            for (Path f : all.filter(p -> String.valueOf(p.getFileName()).matches("[0-9]{1,18}")).sorted().toList()) {
              if (Counts.one(s, "SELECT count(*) FROM " + table + " WHERE id = " + Long.parseLong(String.valueOf(f.getFileName()))) == 0) {
                orphans.add(f);
              }
            }
          }
        }
      }
    }
    return orphans;
  }

  /**
   * Changes the places of the files, if a restore had come so far; can be begun again after a kill at any moment. The caller is alone in the
   * folder.
   */
  static void finish(Path folder) {
    Path staging = folder.resolve(STAGING);
    try {
      Path aside = folder.resolve(Files.readString(staging.resolve(READY), StandardCharsets.UTF_8));
      Private.folder(aside);
      Path database = folder.resolve(Bundle.DATABASE);
      if (Files.exists(staging.resolve(Bundle.DATABASE))) {
        for (String ending : new String[] {"", "-wal", "-shm"}) {
          move(folder.resolve(Bundle.DATABASE + ending), aside.resolve(Bundle.DATABASE + ending));
        }
        move(folder.resolve(Answered.NAME), aside.resolve(Answered.NAME));
        move(staging.resolve(Bundle.DATABASE), database);
      }
      Answered.start(database);
      for (Path file : staged(staging)) {
        Path inside = staging.relativize(file);
        move(folder.resolve(inside), aside.resolve(inside));
        move(file, folder.resolve(inside));
      }
      for (Path orphan : orphans(folder, database)) {
        move(orphan, aside.resolve(folder.relativize(orphan)));
      }
      Files.delete(staging.resolve(READY));
      delete(staging);
    } catch (NoSuchFileException none) {
      if (!none.getFile().endsWith(READY)) {
        throw failed(none);
      }
    } catch (IOException | SQLException e) {
      throw failed(e);
    }
  }

  private static List<Path> staged(Path staging) throws IOException {
    List<Path> files = new ArrayList<>();
    for (String name : Bundle.FOLDERS) {
      if (Files.isDirectory(staging.resolve(name))) {
        try (Stream<Path> all = Files.walk(staging.resolve(name))) {
          all.filter(Files::isRegularFile).sorted().forEach(files::add);
        }
      }
    }
    return files;
  }

  private static void move(Path from, Path to) throws IOException {
    if (Files.exists(from)) {
      Path parent = to.getParent();
      if (parent != null) {
        Private.folder(parent);
      }
      Files.move(from, to);
    }
  }

  private static void delete(Path folder) {
    if (!Files.exists(folder)) {
      return;
    }
    try (Stream<Path> all = Files.walk(folder)) {
      for (Path p : all.sorted(Comparator.reverseOrder()).toList()) {
        Files.delete(p);
      }
    } catch (IOException e) {
      throw failed(e);
    }
  }
}
