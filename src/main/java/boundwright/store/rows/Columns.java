package boundwright.store.rows;

import boundwright.footfall.Foot;
import boundwright.quantity.RefusedException;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/** Reads columns that need more than a getter: words of the program's enumerations, and numbers that may be missing. */
public final class Columns {
  private Columns() {}

  /** The number in {@code column}, or null. Asks for null at once: the driver forgets it at the next column. */
  public static @Nullable Double number(ResultSet r, String column) throws SQLException {
    double value = r.getDouble(column);
    return r.wasNull() ? null : value;
  }

  /** The whole number in {@code column}, or null. */
  public static @Nullable Integer whole(ResultSet r, String column) throws SQLException {
    int value = r.getInt(column);
    return r.wasNull() ? null : value;
  }

  /** The day in {@code column}, or null. */
  public static @Nullable LocalDate day(ResultSet r, String column) throws SQLException {
    String value = r.getString(column);
    return value == null ? null : LocalDate.parse(value);
  }

  /** The foot in {@code column}, kept by its letter. */
  public static Foot foot(ResultSet r, String column) throws SQLException {
    return "R".equals(r.getString(column)) ? Foot.RIGHT : Foot.LEFT;
  }

  /** The moment in {@code column}, or null. */
  public static @Nullable Instant moment(ResultSet r, String column) throws SQLException {
    String value = r.getString(column);
    return value == null ? null : Instant.parse(value);
  }

  /** The constant called {@code word}; refuses one that this program does not know instead of guessing another. */
  public static <E extends Enum<E>> E word(Class<E> type, String what, String word) {
    try {
      return Enum.valueOf(type, word);
    } catch (IllegalArgumentException e) {
      throw new RefusedException(
          "The database holds a " + what + " '" + word + "' that this program does not know. Nothing in it was changed."
              + " Run the program that wrote it, or put back your last backup.", e);
    }
  }
}
