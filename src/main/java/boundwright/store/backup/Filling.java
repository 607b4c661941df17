package boundwright.store.backup;

import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;
import java.util.Map;

/** How rows are put into a database as they were, with nothing of its own rules adding to them by the way. */
public interface Filling {
  /** What a column is made of, as far as it matters to whoever fills it. */
  enum Kind {
    /** Given as it is. */
    PLAIN,
    /** Bytes, told as such or as Base64. */
    BYTES,
    /** A truth value, told as 0 or 1. */
    TRUTH
  }

  /** Lets the rules rest, in a transaction that was begun. */
  void begin(Statement s, List<String> tables) throws SQLException;

  /** The columns of a table. */
  Map<String, Kind> columns(Statement s, String table) throws SQLException;

  /** Sets the largest number that a table has given. */
  void number(Statement s, String table, long largest) throws SQLException;

  /**
   * Puts the rules back in force.
   *
   * @return which table has a row that belongs to nobody, in words, or empty
   */
  String end(Statement s) throws SQLException;
}
