package boundwright.store.engine;

import boundwright.clip.keep.KeptFilms;
import boundwright.quantity.RefusedException;
import boundwright.store.backup.Counts;
import boundwright.store.backup.Everything;
import boundwright.store.backup.EverythingInto;
import boundwright.store.backup.InUse;
import boundwright.store.backup.Private;
import boundwright.store.backup.Refill;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.sql.Connection;
import java.sql.SQLException;
import java.time.Clock;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * Copies a whole store from one place to another that holds nothing: all tables, secrets included, and the films where the folder is another.
 * What arrived is read back and compared with what left, field by field, before it is kept; the place that it came from stays as it is.
 */
public final class Move {
  /** What is beside the rows: films, pictures and corrections, and the keys of this server's name. */
  private static final List<String> BESIDE = List.of("clips", "sessions", "keys");

  /** In a folder whose rows went into a PostgreSQL while its films stayed: two stores must not number films in one folder. */
  private static final String MOVED = "boundwright.moved";

  /** Rows that the scripts themselves put into an empty store. */
  private static final Map<String, Integer> OWN_ROWS = Map.of("written", 1, "club", 1);

  private final DataPlace from;
  private final DataPlace to;
  private final Clock clock;

  /**
   * What was moved.
   *
   * @param rows rows of all tables
   * @param sum SHA-256 of every field of them, the same at both places
   * @param files films and other files that were copied
   */
  public record Moved(int rows, String sum, int files) {}

  /** A move between two places; both folders may be the same one if one of the places is a PostgreSQL. */
  public Move(DataPlace from, DataPlace to, Clock clock) {
    this.from = from;
    this.to = to;
    this.clock = clock;
  }

  /**
   * Does it.
   *
   * @throws RefusedException if the source is not there or is open, or the target holds something; nothing was changed then
   */
  public Moved run() {
    if (from.equals(to) || (from.database() == null && to.database() == null)) {
      throw new RefusedException("A move goes from a folder into a PostgreSQL, or out of one. A folder is copied as it is, or by backup and restore.");
    }
    if (!Database.isThere(from)) {
      throw new RefusedException("There is nothing to move in " + from + ". Name the folder or the database that holds your squad.");
    }
    Schema.makeFolder(to.folder());
    InUse alone = InUse.alone(from.folder());
    try {
      return alone();
    } catch (IOException e) {
      throw new RefusedException("The films could not be copied (" + e.getMessage() + "). " + from + " is as it was. Free some space and start again with an empty target.", e);
    } finally {
      alone.close();
    }
  }

  /** The move was proven: what is in the folder of before is opened no more by accident, if both places have their films there. */
  public void done() {
    if (from.database() == null && sameFolder()) {
      try {
        Files.writeString(from.folder().resolve(MOVED), to.toString(), StandardCharsets.UTF_8);
      } catch (IOException e) {
        throw new RefusedException("Everything was moved to " + to + ", but " + from.folder() + " cannot be marked so (" + e.getMessage() + "). Never open it without --database again.", e);
      }
    }
  }

  /** Refuses the file of a folder whose store is elsewhere by now. */
  static void refuseMoved(Path folder) {
    try {
      if (Files.exists(folder.resolve(MOVED))) {
        throw new RefusedException(
            "The store of " + folder + " was moved to " + Files.readString(folder.resolve(MOVED), StandardCharsets.UTF_8) + ": open it with --database. Nothing was changed."
                + " To go on with the file of before instead, delete " + folder.resolve(MOVED) + " and never open both.");
      }
    } catch (IOException e) {
      throw new RefusedException("The file " + folder.resolve(MOVED) + " cannot be read: " + e.getMessage() + ". Allow reading it.", e);
    }
  }

  private boolean sameFolder() {
    return from.folder().toAbsolutePath().normalize().equals(to.folder().toAbsolutePath().normalize());
  }

  private Moved alone() throws IOException {
    try (Engine source = Database.engine(from, Database.Tuning.USUAL, clock)) {
      PostgresAddress server = to.database();
      return server == null ? intoFile(source) : intoServer(source, server);
    }
  }

  private Moved intoFile(Engine source) throws IOException {
    Path file = to.folder().resolve(Schema.FILE_NAME);
    if (Files.exists(file)) {
      throw new RefusedException("The folder " + to.folder() + " holds a store already, and nothing is ever put over one. Name another folder.");
    }
    int files = files();
    Path part = Files.createTempFile(to.folder(), "boundwright", ".part");
    try {
      source.copyInto(part);
      Summing there = new Summing();
      there.rows = Everything.tell(part, Everything.Which.ALL, there);
      Moved moved = compared(source, there, files);
      Files.move(part, file, StandardCopyOption.ATOMIC_MOVE);
      return moved;
    } finally {
      Files.deleteIfExists(part);
    }
  }

  private Moved intoServer(Engine source, PostgresAddress address) throws IOException {
    try (PostgresEngine target = PostgresEngine.open(address, to.folder(), Database.Tuning.USUAL, clock);
        Connection c = target.source().getConnection()) {
      Map<String, Long> held = Counts.of(c, target.catalogue()).rows();
      long rows = held.entrySet().stream().mapToLong(e -> Math.max(0, e.getValue() - OWN_ROWS.getOrDefault(e.getKey(), 0))).sum();
      if (rows > 0) {
        throw new RefusedException("The database " + address + " holds " + rows + " rows already, and nothing is ever put over them. Name another schema: currentSchema=NAME.");
      }
      int files = files();
      try (EverythingInto into = new EverythingInto(c, target.catalogue(), new PostgresFilling(), Everything.Which.ALL)) {
        source.tell(Everything.Which.ALL, new Refill(into));
        into.ready();
        Summing there = new Summing();
        there.rows = Everything.tell(c, target.catalogue(), Everything.Which.ALL, there);
        Moved moved = compared(source, there, files);
        into.end();
        return moved;
      }
    } catch (SQLException e) {
      throw new PostgresTrouble(address).said(e);
    }
  }

  private Moved compared(Engine source, Summing there, int files) {
    Summing here = new Summing();
    here.rows = source.tell(Everything.Which.ALL, here);
    String sum = here.sum();
    if (here.rows != there.rows || !sum.equals(there.sum())) {
      throw new RefusedException(
          "What arrived is not what left (" + there.rows + " of " + here.rows + " rows), so nothing was kept. Close every boundwright that has " + from
              + " open and try again; if it stays so, report it.");
    }
    return new Moved(here.rows, sum, files);
  }

  /** Copies what is beside the rows; before them, so that no row is kept whose film is not there. */
  private int files() throws IOException {
    Path source = from.folder().toAbsolutePath().normalize();
    Path target = to.folder().toAbsolutePath().normalize();
    int copied = 0;
    boolean far = to.films() != null && !to.films().equals(from.films());
    if (sameFolder() && far && KeptFilms.anyIn(source)) {
      throw new RefusedException("The films in " + from.folder() + " go into " + to.films() + ", and are never mixed with it. Name another folder for what is beside them: --data NEW. Nothing was changed.");
    }
    if (!sameFolder()) {
      if (Files.exists(target.resolve("clips")) || Files.exists(target.resolve("sessions"))) {
        throw new RefusedException("The folder " + to.folder() + " holds films already, which are never mixed with others. Nothing was kept. Name an empty folder.");
      }
      for (String name : BESIDE) {
        if (Files.isDirectory(source.resolve(name))) {
          copied += copy(source.resolve(name), target.resolve(name), far);
        }
      }
    }
    return copied + farFilms(source, target);
  }

  /** Films into a bucket or out of one; where both places have them in the same one they stay there. */
  private int farFilms(Path source, Path target) throws IOException {
    if (Objects.equals(from.films(), to.films())) {
      return 0;
    }
    int[] moved = {0};
    try (KeptFilms old = KeptFilms.of(source, from.films(), clock);
        KeptFilms fresh = KeptFilms.of(target, to.films(), clock)) {
      if (fresh.any()) {
        throw new RefusedException(to.films() + " holds films already, which are never mixed with others. Nothing was kept. Name another folder in it: s3://BUCKET/FOLDER.");
      }
      if (from.films() == null) {
        return fresh.putAll(source);
      }
      if (to.films() != null) {
        throw new RefusedException("Films go from a folder into a bucket or out of one, not from bucket to bucket. Copy them with the store's own means, and move the rows with --films-in naming one of both. Nothing was kept.");
      }
      old.each(
          (name, file) -> {
            Path there = target.resolve(name);
            Private.folder(Objects.requireNonNull(there.getParent()));
            Files.copy(file, there);
            moved[0]++;
          });
    }
    return moved[0];
  }

  private static int copy(Path source, Path target, boolean leaveFilms) throws IOException {
    int copied = 0;
    List<Path> all;
    try (Stream<Path> walk = Files.walk(source)) {
      all = walk.toList();
    }
    for (Path file : all) {
      Path inside = source.relativize(file);
      if (leaveFilms && isFilm(inside)) {
        continue;
      }
      Path there = target.resolve(inside.toString());
      if (Files.isDirectory(file)) {
        Private.folder(there);
      } else if (!Files.exists(there)) {
        Files.copy(file, there, StandardCopyOption.COPY_ATTRIBUTES);
        copied++;
      }
    }
    return copied;
  }

  /** The film of a number, or a picture of it. */
  private static boolean isFilm(Path inside) {
    return inside.getNameCount() > 1 && (inside.getName(1).toString().startsWith("film.") || inside.getName(1).toString().equals("stills"));
  }

  /** The sum of every field, in the order in which they are told. */
  private static final class Summing implements Everything.Listener {
    private final MessageDigest digest = sha256();
    private int rows;

    @Override
    public void version(int version) {
      add("version", version);
    }

    @Override
    public void table(String name) {
      add("table", name);
    }

    @Override
    public void row(Map<String, @Nullable Object> values) {
      values.forEach(this::add);
    }

    @Override
    public void number(String table, long largest) {
      add(table, largest);
    }

    private void add(String name, @Nullable Object value) {
      byte[] bytes = value instanceof byte[] b ? b : text(value).getBytes(StandardCharsets.UTF_8);
      digest.update((name + (value == null ? " none " : " ") + bytes.length + " ").getBytes(StandardCharsets.UTF_8));
      digest.update(bytes);
    }

    private static String text(@Nullable Object value) {
      return value instanceof Double d ? Double.toHexString(d) : value instanceof Number n ? Long.toString(n.longValue()) : String.valueOf(value);
    }

    String sum() {
      return HexFormat.of().formatHex(digest.digest());
    }

    private static MessageDigest sha256() {
      try {
        return MessageDigest.getInstance("SHA-256");
      } catch (NoSuchAlgorithmException e) {
        throw new IllegalStateException(e);
      }
    }
  }
}
