package boundwright.store.engine;

import boundwright.quantity.RefusedException;
import java.sql.SQLException;
import org.jspecify.annotations.Nullable;

/**
 * The one place where a failure of a PostgreSQL becomes a sentence. What the server or the driver wrote is left out of it, as it may hold what
 * was entered, or a user's name.
 */
final class PostgresTrouble {
  private final PostgresAddress address;

  PostgresTrouble(PostgresAddress address) {
    this.address = address;
  }

  /** {@code e} in words if the database is behind it; otherwise {@code e} itself, which is a bug and not trouble. */
  RuntimeException said(RuntimeException e) {
    SQLException cause = behind(e);
    return e instanceof RefusedException || cause == null ? e : new RefusedException(sentence(cause), e);
  }

  /** A failure of the server or the driver in words. */
  RefusedException said(SQLException e) {
    return new RefusedException(sentence(e), e);
  }

  private String sentence(SQLException e) {
    String state = e.getSQLState() == null ? "" : e.getSQLState();
    return switch (state) {
      case "23503" -> "This athlete is not in the store (any more). Nothing was kept. Load the squad again and pick the athlete.";
      case "55P03", "40P01", "40001" -> locked();
      case "22021", "22P05" -> "The entry holds a character that the database cannot keep (U+0000, say). Nothing of it was kept. Take it out and try again.";
      case "3D000" -> "There is no database " + address + ". Make it (createdb), or check its name.";
      case "3F000", "42501" -> "The database " + address + " does not give this user the right to do that. Nothing was kept. Give it the schema, or the right to make one.";
      default -> ofFamily(state.length() < 2 ? "08" : state.substring(0, 2), state);
    };
  }

  private String ofFamily(String family, String state) {
    return switch (family) {
      case "08", "57" -> gone();
      case "28" ->
          "The database " + address + " did not let the program in. Check the user, and the password in $" + PostgresAddress.PASSWORD_VARIABLE + ".";
      case "53" ->
          "The server of the database " + address + " has no room left: disk, memory or connections. Nothing of this entry was kept; everything logged"
              + " before it is safe. Free some and log it again.";
      case "42" -> "The database " + address + " is not as this program made it (" + state + "). Nothing was kept. Open it with the newest boundwright.";
      default ->
          "The database " + address + " refused the entry (" + state + "). Nothing of it was kept; everything logged before it is safe.";
    };
  }

  /** Another process holds the store. */
  String locked() {
    return "Another boundwright is writing to " + address + ". Nothing of this entry was kept. Wait until it is done and try again.";
  }

  private String gone() {
    return "The database " + address + " cannot be reached. Look whether its server runs and the network is there, then load the page again"
        + " and look whether the last entry is there before you make it anew.";
  }

  private static @Nullable SQLException behind(Throwable e) {
    SQLException found = null;
    for (Throwable t = e; t != null; t = t.getCause()) {
      if (t instanceof SQLException s) {
        found = s; // the innermost: the pool's own says only that it got none
      }
    }
    return found;
  }
}
