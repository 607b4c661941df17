package boundwright.store;

import boundwright.store.backup.DataCheck;
import boundwright.store.backup.Restore;
import boundwright.store.engine.Database;
import boundwright.store.engine.Schema;
import boundwright.store.rows.SettingRows;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.time.Clock;
import java.time.ZoneId;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import org.sqlite.SQLiteConfig;

/**
 * What safety costs and how long a squad of years takes to come back: 60 invented athletes with five seasons each. Run it with
 * {@code bench/safety [REPS_EACH]}, 1000 if left out.
 */
public final class SafetyBench {
  private static final int ATHLETES = 60;
  private static final int SEASONS = 5;
  private static final int COMMITS = 400;
  private static final char[] PASSPHRASE = "four invented words here".toCharArray();

  private SafetyBench() {}

  private interface Work {
    void run() throws Exception;
  }

  private static void timed(String what, Work work) throws Exception {
    long begin = System.nanoTime();
    work.run();
    System.out.printf(Locale.ROOT, "%-44s %8.2f s%n", what, (System.nanoTime() - begin) / 1e9);
  }

  /** Arguments: reps of each athlete. */
  public static void main(String[] arguments) throws Exception {
    int each = arguments.length > 0 ? Integer.parseInt(arguments[0]) : 1000;
    Path home = Files.createTempDirectory(Path.of("target"), "safety");
    Clock clock = Clock.system(ZoneId.systemDefault());
    Path sealed = home.resolve("away.zip.age");
    Path data = home.resolve("data");
    try (Workbench w = Workbench.open(data, clock)) {
      w.reps().write(
          writer -> {
            Random random = new Random(5);
            for (int a = 1; a <= ATHLETES; a++) {
              long id = w.athletes().add(Fixtures.athlete("Athlete " + a)).id();
              for (int i = 0; i < each; i++) {
                writer.add(Fixtures.any(random, id));
              }
            }
            return 0;
          });
      w.database().write(h -> h.execute("UPDATE rep SET date = date(date, '-' || (abs(random()) % " + SEASONS * 365 + ") || ' days')"));
      System.out.printf("%d athletes, %d reps%n", ATHLETES, ATHLETES * each);
      counted(w.database(), data.resolve(Schema.FILE_NAME));
      timed("backup in the folder, looked through", () -> w.backups().now());
      timed("backup out of the folder, sealed", () -> w.backups().sealed(Files.newOutputStream(sealed), PASSPHRASE, true, new SecureRandom()));
    }
    timed("data looked through", () -> System.out.println(new DataCheck(data, clock).look().troubles()));
    Restore restore = Workbench.restoring(home.resolve("other"), clock);
    timed("sealed backup brought back", () -> System.out.println(restore.from(sealed, () -> PASSPHRASE).counts().of("rep") + " reps"));
  }

  /** Commits of the store, which counts them, and of a bare connection, in turn, on the same file. */
  private static void counted(Database with, Path file) throws SQLException {
    SQLiteConfig config = new SQLiteConfig();
    config.setJournalMode(SQLiteConfig.JournalMode.WAL);
    config.setSynchronous(SQLiteConfig.SynchronousMode.FULL);
    try (Connection bare = config.createConnection("jdbc:sqlite:" + file);
        PreparedStatement keep = bare.prepareStatement("UPDATE setting SET number = ? WHERE key = 'bench'")) {
      for (String round : List.of("warm-up", "measured")) {
        double[] one = new double[COMMITS];
        double[] none = new double[COMMITS];
        for (int i = 0; i < COMMITS; i++) {
          one[i] = commit(with, i);
          long begin = System.nanoTime();
          keep.setDouble(1, i + .5);
          keep.execute();
          none[i] = (System.nanoTime() - begin) / 1e6;
        }
        Arrays.sort(one);
        Arrays.sort(none);
        System.out.printf(
            Locale.ROOT, "%s: a commit of the store, counted, %.3f ms, of a bare connection %.3f ms (medians of %d)%n", round, one[COMMITS / 2], none[COMMITS / 2], COMMITS);
      }
    }
  }

  private static double commit(Database database, int number) {
    long begin = System.nanoTime();
    database.write(
        h -> {
          SettingRows.keep(h, "bench", number, "1");
          return number;
        });
    return (System.nanoTime() - begin) / 1e6;
  }
}
