package boundwright.store.engine;

import java.sql.Connection;
import java.sql.SQLException;

/**
 * Connections for a library that writes on its own: each waits in the line of the database's writers until it is closed, and
 * inside a write of this thread it is that write's own connection.
 */
final class LinedSource extends OwnSource {
  private final Database database;

  LinedSource(Database database) {
    this.database = database;
  }

  @Override
  public Connection getConnection() throws SQLException {
    return database.connectionInLine();
  }
}
