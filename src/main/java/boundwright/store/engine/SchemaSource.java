package boundwright.store.engine;

import com.zaxxer.hikari.HikariDataSource;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Collections;
import java.util.Map;
import java.util.WeakHashMap;

/** Connections of a shared pool that see one schema and wait so long for a lock. */
final class SchemaSource extends OwnSource {
  /** What each connection of the driver was last told, so that it need not be told again. */
  private static final Map<Connection, String> TOLD = Collections.synchronizedMap(new WeakHashMap<>());

  private final HikariDataSource pool;
  private final String settings;

  /** @param lockTimeout_ms how long another process is waited for [ms] */
  SchemaSource(HikariDataSource pool, String schema, int lockTimeout_ms) {
    this.pool = pool;
    this.settings = "SET search_path TO " + schema + "; SET lock_timeout TO " + lockTimeout_ms;
  }

  @Override
  public Connection getConnection() throws SQLException {
    Connection c = pool.getConnection();
    try {
      Connection own = c.unwrap(org.postgresql.jdbc.PgConnection.class);
      if (!settings.equals(TOLD.get(own))) {
        try (Statement s = c.createStatement()) {
          s.execute(settings);
        }
        TOLD.put(own, settings);
      }
      return c;
    } catch (SQLException | RuntimeException e) {
      c.close();
      throw e;
    }
  }
}
