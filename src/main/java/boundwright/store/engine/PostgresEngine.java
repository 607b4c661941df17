package boundwright.store.engine;

import boundwright.store.backup.Backups;
import boundwright.store.backup.Catalogue;
import boundwright.store.backup.Everything;
import boundwright.store.backup.EverythingInto;
import boundwright.store.backup.Refill;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.time.Clock;
import java.util.Map;
import javax.sql.DataSource;
import org.jspecify.annotations.Nullable;

/**
 * A store in a schema of PostgreSQL that any number of processes share. A write holds the row of the count from its beginning, so that two
 * processes never decide on what the other is changing: as with one SQLite file there is one writer at a time, and readers wait for nobody.
 */
final class PostgresEngine implements Engine {
  private final PostgresAddress address;
  private final PostgresTrouble trouble;
  private final SchemaSource source;

  private PostgresEngine(PostgresAddress address, int busyTimeout_ms) {
    this.address = address;
    this.trouble = new PostgresTrouble(address);
    this.source = new SchemaSource(PostgresPools.open(address), address.schema(), busyTimeout_ms);
  }

  /** Opens the schema and brings it up to date; before that a backup is made in the data folder. */
  static PostgresEngine open(PostgresAddress address, Path dir, Database.Tuning tuning, Clock clock) {
    PostgresEngine made = new PostgresEngine(address, tuning.busyTimeout_ms());
    try {
      new PostgresSchema(address).bringUpToDate(next -> new Backups(dir, clock).beforeMigration(made::copyInto, next));
      return made;
    } catch (RuntimeException | Error e) {
      made.close();
      throw e;
    }
  }

  @Override
  public DataSource source() {
    return source;
  }

  @Override
  public Catalogue catalogue() {
    return new PostgresCatalogue();
  }

  /** The server's own log says what was kept. */
  @Override
  public void kept(long count, int writes) {}

  /** The server's log is the server's. */
  @Override
  public void foldLog() {}

  @Override
  public void copyInto(Path copy) {
    try (Copying copying = new Copying(copy)) {
      tell(Everything.Which.ALL, copying);
      copying.end();
    } catch (SQLException e) {
      throw new StoreTrouble(copy).saidOfCopy(new IllegalStateException(e), copy);
    }
  }

  /** Makes the copy once the version of its form is told. */
  private static final class Copying implements Everything.Listener, AutoCloseable {
    private final Path copy;
    private @Nullable EverythingInto into;
    private @Nullable Refill refill;

    Copying(Path copy) {
      this.copy = copy;
    }

    @Override
    public void version(int version) {
      Schema.makeFile(copy, version);
      try {
        EverythingInto made = EverythingInto.file(copy, Everything.Which.ALL);
        into = made;
        refill = new Refill(made);
      } catch (SQLException e) {
        throw new StoreTrouble(copy).saidOfCopy(new IllegalStateException(e), copy);
      }
    }

    private Refill refill() {
      Refill made = refill;
      if (made == null) {
        throw new IllegalStateException("rows before the version");
      }
      return made;
    }

    @Override
    public void table(String name) {
      refill().table(name);
    }

    @Override
    public void row(Map<String, @Nullable Object> values) {
      refill().row(values);
    }

    @Override
    public void number(String table, long largest) {
      refill().number(table, largest);
    }

    void end() throws SQLException {
      EverythingInto made = into;
      if (made != null) {
        made.end();
      }
    }

    @Override
    public void close() throws SQLException {
      EverythingInto made = into;
      if (made != null) {
        made.close();
      }
    }
  }

  @Override
  public int tell(Everything.Which which, Everything.Listener to) {
    try (Connection c = source.getConnection()) {
      c.setReadOnly(true);
      c.setTransactionIsolation(Connection.TRANSACTION_REPEATABLE_READ);
      c.setAutoCommit(false);
      try {
        return Everything.tell(c, catalogue(), which, to);
      } finally {
        c.rollback();
      }
    } catch (SQLException e) {
      throw trouble.said(e);
    }
  }

  @Override
  public RuntimeException said(RuntimeException e) {
    return trouble.said(e);
  }

  @Override
  public void close() {
    PostgresPools.close(address);
  }
}
