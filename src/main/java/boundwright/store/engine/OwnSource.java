package boundwright.store.engine;

import java.io.PrintWriter;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.SQLFeatureNotSupportedException;
import java.util.logging.Logger;
import javax.sql.DataSource;
import org.jspecify.annotations.Nullable;

/** A source of connections that is set up already: there is only {@link #getConnection()} to ask of it. */
abstract class OwnSource implements DataSource {
  @Override
  public Connection getConnection(String username, String password) throws SQLException {
    throw new SQLFeatureNotSupportedException("the store has one user");
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
