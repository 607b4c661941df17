package boundwright.store.engine;

import com.zaxxer.hikari.HikariConfig;
import com.zaxxer.hikari.HikariDataSource;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** One pool of connections for each server and user, shared by all stores of this process that are schemas of it. */
final class PostgresPools {
  /** One writes, the others read; sixty clubs do not need sixty times as many. */
  private static final int CONNECTIONS = 10;
  private static final long PATIENCE_MS = 10_000;

  private static final Map<List<String>, Shared> OPEN = new HashMap<>();

  private PostgresPools() {}

  private static final class Shared {
    private final HikariDataSource pool;
    private int stores;

    Shared(HikariDataSource pool) {
      this.pool = pool;
    }
  }

  /** The pool for an address, to be given back with {@link #close}. */
  static HikariDataSource open(PostgresAddress address) {
    synchronized (OPEN) {
      Shared shared = OPEN.computeIfAbsent(address.pool(), key -> new Shared(pool(address)));
      shared.stores++;
      return shared.pool;
    }
  }

  private static HikariDataSource pool(PostgresAddress address) {
    HikariConfig pooled = new HikariConfig();
    pooled.setPoolName("boundwright-postgres");
    pooled.setJdbcUrl(address.url());
    pooled.setDataSourceProperties(address.secrets());
    pooled.addDataSourceProperty("ApplicationName", "boundwright");
    pooled.addDataSourceProperty("tcpKeepAlive", "true");
    pooled.addDataSourceProperty("reWriteBatchedInserts", "true");
    pooled.setMaximumPoolSize(CONNECTIONS);
    pooled.setMinimumIdle(1);
    pooled.setConnectionTimeout(PATIENCE_MS);
    // what the server's own settings may say otherwise: a commit is on the server's disk before it is answered
    pooled.setConnectionInitSql("SET synchronous_commit TO on");
    pooled.setInitializationFailTimeout(-1);
    return new HikariDataSource(pooled);
  }

  /** A store of this address is closed; with the last one the pool is. */
  static void close(PostgresAddress address) {
    synchronized (OPEN) {
      Shared shared = OPEN.get(address.pool());
      if (shared != null && --shared.stores == 0) {
        OPEN.remove(address.pool());
        shared.pool.close();
      }
    }
  }
}
