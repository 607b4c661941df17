package boundwright.store.backup;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Collection;
import java.util.Set;
import org.sqlite.SQLiteConfig;

/** Who was erased, by the random name that the database had for them, and erasing them again from a copy of before. */
public final class Erasures {
  /** What is to go first: what the squad says of each other holds something of the erased too, and is made again without them. */
  public static final String BEFORE = "DELETE FROM squad_prior";
  /** What is to go afterwards: a season of nobody is of no use, and its name may be theirs. */
  public static final String AFTER = "DELETE FROM season WHERE id NOT IN (SELECT season_id FROM season_member)";

  private Erasures() {}

  /** Name of an athlete in a database from before names were given: as script V16 gives it. */
  private static final String OLD_TOKENS =
      "(SELECT a.id AS athlete_id, substr(printf('%08x', a.id) || replace(replace(replace(replace(f.installed_on, '-', ''), ' ', ''), ':', ''),"
          + " '.', '') || '000000000000000000000000', 1, 32) AS token FROM athlete a,"
          + " (SELECT installed_on FROM flyway_schema_history ORDER BY installed_rank LIMIT 1) f)";

  /** Who was erased from a database; nobody if it cannot be read or is older than this. */
  static Set<String> of(Path database) {
    try (Connection c = Counts.looking(database);
        Statement s = c.createStatement()) {
      return knows(s) ? Set.copyOf(Counts.texts(s, "SELECT token FROM erasure")) : Set.of();
    } catch (SQLException unreadable) {
      return Set.of(); // a damaged database says nothing of anybody
    }
  }

  /** How many of them a database still holds. */
  static int present(Path database, Collection<String> tokens) throws SQLException {
    int there = 0;
    try (Connection c = Counts.looking(database);
        Statement s = c.createStatement();
        PreparedStatement one = c.prepareStatement("SELECT count(*) FROM " + tokens(s) + " WHERE token = ?")) {
      for (String token : tokens) {
        one.setString(1, token);
        try (ResultSet r = one.executeQuery()) {
          there += r.next() ? r.getInt(1) : 0;
        }
      }
    }
    return there;
  }

  /**
   * Erases again, and writes down that it was done if the database knows of such things.
   *
   * @return how many athletes went
   */
  static int apply(Path database, Collection<String> tokens) throws SQLException {
    SQLiteConfig config = new SQLiteConfig();
    config.enforceForeignKeys(true);
    config.setPragma(SQLiteConfig.Pragma.SECURE_DELETE, "true");
    int gone = 0;
    try (Connection c = config.createConnection("jdbc:sqlite:" + database.toAbsolutePath());
        Statement s = c.createStatement()) {
      c.setAutoCommit(false);
      try (PreparedStatement erase = c.prepareStatement("DELETE FROM athlete WHERE id IN (SELECT athlete_id FROM " + tokens(s) + " WHERE token = ?)")) {
        for (String token : tokens) {
          erase.setString(1, token);
          gone += erase.executeUpdate();
        }
      }
      if (knows(s)) {
        try (PreparedStatement erased = c.prepareStatement("INSERT OR IGNORE INTO erasure (token) VALUES (?)")) {
          for (String token : tokens) {
            erased.setString(1, token);
            erased.execute();
          }
        }
      }
      if (gone > 0 && Counts.has(s, "squad_prior")) {
        s.execute(BEFORE);
      }
      if (gone > 0 && Counts.has(s, "season_member")) {
        s.execute(AFTER);
      }
      c.commit();
      c.setAutoCommit(true);
      s.execute("PRAGMA wal_checkpoint(TRUNCATE)");
    }
    return gone;
  }

  private static String tokens(Statement s) throws SQLException {
    return knows(s) ? "athlete_token" : OLD_TOKENS;
  }

  private static boolean knows(Statement s) throws SQLException {
    return Counts.has(s, "erasure");
  }
}
