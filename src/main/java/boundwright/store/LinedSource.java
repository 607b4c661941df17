package boundwright.store;

import java.io.PrintWriter;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.SQLFeatureNotSupportedException;
import java.util.logging.Logger;
import javax.sql.DataSource;
import org.jspecify.annotations.Nullable;

/**
 * Connections for a library that writes on its own: each waits in the line of the database's writers until it is closed, and
 * inside a write of this thread it is that write's own connection.
 */
final class LinedSource implements DataSource {
  private final Database database;

  LinedSource(Database database) {
    this.database = database;
  }

  @Override
  public Connection getConnection() throws SQLException {
    return database.connectionInLine();
  }

  @Override
  public Connection getConnection(String username, String password) throws SQLException {
    throw new SQLFeatureNotSupportedException("the database has no users");
  }

  @Override
  public @Nullable PrintWriter getLogWriter() {
    return null;
  }

  @Override
  public void setLogWriter(@Nullable PrintWriter out) throws SQLException {
    throw new SQLFeatureNotSupportedException("no log is written here");
  }

  @Override
  public void setLoginTimeout(int seconds) throws SQLException {
    throw new SQLFeatureNotSupportedException("the pool has its own timeout");
  }

  @Override
  public int getLoginTimeout() {
    return 0;
  }

  @Override
  public Logger getParentLogger() throws SQLFeatureNotSupportedException {
    throw new SQLFeatureNotSupportedException("no log is written here");
  }

  @Override
  public <T> T unwrap(Class<T> type) throws SQLException {
    throw new SQLException("nothing is wrapped here");
  }

  @Override
  public boolean isWrapperFor(Class<?> type) {
    return false;
  }
}
