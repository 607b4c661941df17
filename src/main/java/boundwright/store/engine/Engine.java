package boundwright.store.engine;

import boundwright.store.backup.Catalogue;
import boundwright.store.backup.Everything;
import java.nio.file.Path;
import javax.sql.DataSource;

/** What the databases that a store can be in do each in their own way; everything else is the same SQL for all of them. */
interface Engine extends AutoCloseable {
  /** Connections to a store whose tables are there. */
  DataSource source();

  /** What the database says of itself. */
  Catalogue catalogue();

  /**
   * A transaction was kept; called by one thread at a time, before anybody of it is answered.
   *
   * @param count how many transactions the store has kept with it
   * @param writes how many writes shared it
   */
  void kept(long count, int writes);

  /** Takes what was deleted out of the log as well, where the log is ours. */
  void foldLog();

  /**
   * Copies the store as it stands at one moment into an SQLite file; writers are not held up.
   *
   * @param copy empty or missing
   */
  void copyInto(Path copy);

  /** Tells every field of every table as it stands at one moment. */
  int tell(Everything.Which which, Everything.Listener to);

  /** {@code e} in words if the database is behind it; otherwise {@code e} itself, which is a bug and not trouble. */
  RuntimeException said(RuntimeException e);

  @Override
  void close();
}
