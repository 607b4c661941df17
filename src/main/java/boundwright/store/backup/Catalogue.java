package boundwright.store.backup;

import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;
import java.util.Map;

/** What a database says of itself: which tables there are, how their rows are read in the order in which they came, which numbers were given. */
public interface Catalogue {
  /**
   * A reference from one table to another.
   *
   * @param whenErased what becomes of the row when the one it points to is erased, as SQL says it: {@code CASCADE}, {@code SET NULL}
   */
  record Reference(String table, String column, String target, String targetColumn, String whenErased) {}

  /** The program's own tables, in the order of their names: any other would not outlive a copy. */
  List<String> tables(Statement s) throws SQLException;

  /**
   * The question for rows of a table, in the order in which they came, with the same columns and kinds of values from every database.
   *
   * @param where a condition, or empty for all
   */
  String rows(Statement s, String table, String where) throws SQLException;

  /** The largest number that each table has given, by table in the order of their names. */
  Map<String, Long> numbers(Statement s) throws SQLException;

  /** All references, in the order of the tables' and the columns' names. */
  List<Reference> references(Statement s) throws SQLException;
}
