package boundwright.store.engine;

import boundwright.store.backup.Catalogue;
import boundwright.store.backup.Counts;
import boundwright.store.backup.Everything;
import boundwright.store.backup.InUse;
import boundwright.store.backup.Leftovers;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Clock;
import java.util.List;
import java.util.function.Function;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;

/**
 * One open store. All reading and writing of it goes through {@link #read} and {@link #write}, which turn the engine's failures into
 * sentences. A write is all or nothing; a write inside a write of the same thread joins it, and if the inner one fails only the inner one is
 * undone. Writers of this process wait in line for each other ({@link WriteLine}); another process is waited for as long as the busy timeout.
 * Each write is on disk when it returns, and sees all that were kept before it began.
 */
public final class Database implements AutoCloseable {
  /** How long another process is waited for [ms]. */
  public static final int BUSY_TIMEOUT_MS = 5_000;

  /**
   * What tests turn to reach an error sooner.
   *
   * @param busyTimeout_ms how long another process is waited for [ms]
   * @param mostPages size at which the disk counts as full [pages of an SQLite file], 0 for the engine's own limit
   */
  public record Tuning(int busyTimeout_ms, int mostPages) {
    /** As it is meant. */
    public static final Tuning USUAL = new Tuning(BUSY_TIMEOUT_MS, 0);
  }

  private final DataPlace place;
  private final Engine engine;
  private final Jdbi jdbi;
  private final WriteLine line;
  private final InUse use;

  private Database(DataPlace place, Engine engine, InUse use, int patience_ms) {
    this.place = place;
    this.engine = engine;
    this.use = use;
    this.jdbi = Jdbi.create(engine.source());
    this.line = new WriteLine(jdbi, engine, patience_ms);
  }

  /**
   * Opens a store, whose folder is made if it is missing, and brings its schema up to date; before that a backup is made, what a kill left
   * over is put in order, and a loss is noticed.
   */
  public static Database open(DataPlace place, Tuning tuning, Clock clock) {
    Path dir = place.folder();
    Schema.makeFolder(dir);
    Leftovers.settle(dir);
    InUse use = InUse.shared(dir);
    try {
      return new Database(place, engine(place, tuning, clock), use, tuning.busyTimeout_ms() * 6);
    } catch (RuntimeException | Error e) {
      use.close();
      throw e;
    }
  }

  /** What a place is kept in, brought up to date; the folder is there and in use by the caller. */
  static Engine engine(DataPlace place, Tuning tuning, Clock clock) {
    PostgresAddress server = place.database();
    if (server == null) {
      Move.refuseMoved(place.folder());
    }
    return server == null ? SqliteEngine.open(place.folder(), tuning, clock) : PostgresEngine.open(server, place.folder(), tuning, clock);
  }

  /** Whether a place holds a store: a mistyped name must not make an empty one. */
  public static boolean isThere(DataPlace place) {
    PostgresAddress server = place.database();
    return server == null ? Files.exists(place.folder().resolve(Schema.FILE_NAME)) : new PostgresSchema(server).isThere();
  }

  /** The data folder, where the films are. */
  public Path folder() {
    return place.folder();
  }

  /** Where this store is. */
  public DataPlace place() {
    return place;
  }

  /** Whether the rows are in a file of the folder, so that whoever is alone with the folder is alone with them. */
  boolean ownFile() {
    return place.database() == null;
  }

  /** What the database says of itself. */
  public Catalogue catalogue() {
    return engine.catalogue();
  }

  /** All references from one table to another. */
  public List<Catalogue.Reference> references(Handle h) {
    try (Statement s = h.getConnection().createStatement()) {
      return catalogue().references(s);
    } catch (SQLException e) {
      throw new IllegalStateException(e); // said in words by whoever reads or writes
    }
  }

  /** Changes whenever anything is written, by this process or another; quickly asked. */
  public String stamp() {
    return read(h -> h.createQuery("SELECT count FROM written").mapTo(String.class).one());
  }

  /** Reads; inside a write of this thread it sees what was written so far. */
  public <T> T read(Function<Handle, T> work) {
    Handle joined = line.ofThisThread();
    try {
      if (joined != null) {
        return work.apply(joined);
      }
      try (Handle handle = jdbi.open()) {
        return work.apply(handle);
      }
    } catch (RuntimeException e) {
      throw engine.said(e);
    }
  }

  /** Whether this thread is inside a write, so that it sees what may still be undone. */
  public boolean isWriting() {
    return line.ofThisThread() != null;
  }

  /** Writes, all or nothing, on disk when it returns; joins the write of this thread if there is one. */
  public <T> T write(Function<Handle, T> work) {
    return write(work, true);
  }

  /** As {@link #write}, for what takes long (an import, say): nobody else's answer waits for it in the same transaction. */
  public <T> T writeLong(Function<Handle, T> work) {
    return write(work, false);
  }

  private <T> T write(Function<Handle, T> work, boolean shared) {
    try {
      return line.write(work, shared);
    } catch (RuntimeException e) {
      throw engine.said(e);
    }
  }

  /** Takes what was deleted out of the log as well. Inside a write nothing happens: the log is folded in later then. */
  public void foldLog() {
    if (line.ofThisThread() == null) {
      engine.foldLog();
    }
  }

  /** Copies the store as it stands now into {@code copy}, an SQLite file that is empty or missing; writers are not held up. */
  public void copyInto(Path copy) {
    engine.copyInto(copy);
  }

  /** Counts the rows of every table. */
  public Counts counts() {
    return read(
        h -> {
          try {
            return Counts.of(h.getConnection(), engine.catalogue());
          } catch (SQLException e) {
            throw new IllegalStateException(e); // said in words by read
          }
        });
  }

  /** Tells every field of every table as it stands at one moment. */
  public int tell(Everything.Which which, Everything.Listener to) {
    return engine.tell(which, to);
  }

  /**
   * A connection for a library that writes by itself: it holds the place at the head of the line until it is closed, by the
   * thread that asked for it. Inside a write of this thread it is the write's own, and closing it does nothing.
   */
  Connection connectionInLine() throws SQLException {
    return line.connection(engine.source());
  }

  @Override
  public void close() {
    try {
      engine.close();
    } finally {
      use.close();
    }
  }
}
