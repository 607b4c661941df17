package boundwright.store;

import boundwright.jump.Event;
import boundwright.store.rows.Columns;
import java.sql.ResultSet;
import java.sql.SQLException;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.statement.Update;

/** What the logs of jumps, run-throughs and take-offs at the board share: an entry of an athlete, by number and day. */
final class JumpRows {
  static final String OF_ATHLETE = "WHERE athlete_id = :athlete ";
  static final String IN_ORDER = "ORDER BY date, id";

  private JumpRows() {}

  static long number(Update insert) {
    return insert.executeAndReturnGeneratedKeys().mapTo(Long.class).one();
  }

  static Event event(ResultSet r) throws SQLException {
    return Columns.word(Event.class, "event", r.getString("event"));
  }

  static void delete(Handle h, String table, long id) {
    h.createUpdate("DELETE FROM " + table + " WHERE id = :id").bind("id", id).execute();
  }
}
