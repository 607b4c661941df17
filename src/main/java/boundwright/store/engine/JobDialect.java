package boundwright.store.engine;

import com.github.kagkarlsson.scheduler.jdbc.DefaultJdbcCustomization;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import org.jspecify.annotations.Nullable;

/**
 * How the job library writes and reads its table in both databases: instants are whole microseconds since 1970 (SQLite has no type for
 * them), a limit is written {@code LIMIT}, and jobs of the same microsecond keep the order in which they came.
 */
final class JobDialect extends DefaultJdbcCustomization {
  JobDialect() {
    super(true);
  }

  static long micros(Instant at) {
    return ChronoUnit.MICROS.between(Instant.EPOCH, at);
  }

  @Override
  public void setInstant(PreparedStatement p, int index, @Nullable Instant value) throws SQLException {
    p.setObject(index, value == null ? null : (Long) micros(value));
  }

  @Override
  public @Nullable Instant getInstant(ResultSet rs, String columnName) throws SQLException {
    long value = rs.getLong(columnName);
    return rs.wasNull() ? null : Instant.EPOCH.plus(value, ChronoUnit.MICROS);
  }

  @Override
  public String getQueryLimitPart(int limit) {
    return " LIMIT " + limit;
  }

  @Override
  public String createSelectDueQuery(String tableName, int limit, String andCondition, boolean orderByPriority) {
    return "SELECT * FROM " + tableName + " WHERE picked = ? AND execution_time <= ? " + andCondition + " ORDER BY execution_time, rowid"
        + getQueryLimitPart(limit);
  }

  @Override
  public String getName() {
    return "boundwright";
  }
}
