package boundwright.store;

import boundwright.flight.Rep;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.Collections;
import java.util.List;
import java.util.function.LongConsumer;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.statement.UnableToExecuteStatementException;

/** Many rows in few statements, where a statement a row would take most of the time. */
final class RepRows {
  private static final String INTO =
      "INSERT INTO rep (athlete_id, date, sequence, approach_steps, surface, footprints_m, landing_m, outcome, broke_off_after,"
          + " mark_to_sand_m, judged, faults) VALUES ";
  private static final String ONE = "(?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)";
  /** Rows of a statement; twelve times as many values, which every engine takes. */
  private static final int AT_ONCE = 40;

  private RepRows() {}

  static void add(Handle h, List<Rep> reps, LongConsumer numbers) {
    try (PreparedStatement many = statement(h.getConnection(), AT_ONCE)) {
      int at = 0;
      for (; at + AT_ONCE <= reps.size(); at += AT_ONCE) {
        add(many, reps.subList(at, at + AT_ONCE), numbers);
      }
      if (at < reps.size()) {
        List<Rep> rest = reps.subList(at, reps.size());
        try (PreparedStatement few = statement(h.getConnection(), rest.size())) {
          add(few, rest, numbers);
        }
      }
    } catch (SQLException e) {
      throw new UnableToExecuteStatementException("reps could not be added", e, null);
    }
  }

  private static PreparedStatement statement(Connection c, int rows) throws SQLException {
    return c.prepareStatement(INTO + String.join(", ", Collections.nCopies(rows, ONE)) + " RETURNING id");
  }

  private static void add(PreparedStatement s, List<Rep> reps, LongConsumer numbers) throws SQLException {
    int at = 1;
    for (Rep rep : reps) {
      s.setLong(at++, rep.athleteId());
      s.setString(at++, rep.date().toString());
      s.setString(at++, rep.sequence().text());
      s.setInt(at++, rep.approachSteps());
      s.setString(at++, rep.surface().name());
      s.setString(at++, rep.footprints_m().isEmpty() ? null : Footprints.write(rep.footprints_m()));
      s.setObject(at++, rep.landing_m());
      s.setString(at++, rep.outcome() == null ? null : rep.outcome().name());
      s.setObject(at++, rep.brokeOffAfter());
      s.setObject(at++, rep.markToSand_m());
      s.setInt(at++, rep.judged() ? 1 : 0);
      s.setString(at++, SqlReps.faults(rep.faults()));
    }
    try (ResultSet r = s.executeQuery()) {
      while (r.next()) {
        numbers.accept(r.getLong(1));
      }
    }
  }
}
