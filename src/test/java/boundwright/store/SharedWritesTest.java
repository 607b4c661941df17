package boundwright.store;

import static org.assertj.core.api.Assertions.assertThat;

import boundwright.quantity.RefusedException;
import boundwright.store.engine.Database;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.Queue;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.CountDownLatch;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Writes that wait in line share a transaction: each is in the file when it is answered, and a refused one is undone alone. */
class SharedWritesTest {
  private static final int HANDS = 24;

  @Test
  void everyAnsweredWriteIsInTheFileAndARefusedOneIsUndoneAlone(@TempDir Path dir) throws InterruptedException {
    Queue<String> wrong = new ConcurrentLinkedQueue<>();
    try (Database database = Database.open(Stores.at(dir), Database.Tuning.USUAL, Fixtures.CLOCK)) {
      CountDownLatch holding = new CountDownLatch(1);
      CountDownLatch go = new CountDownLatch(1);
      List<Thread> hands = new ArrayList<>();
      hands.add(
          new Thread(
              () ->
                  database.write(
                      h -> {
                        holding.countDown();
                        await(go);
                        return h.execute("INSERT INTO setting (key, word) VALUES ('hand 0', 'x')");
                      })));
      hands.get(0).start();
      await(holding);
      for (int i = 1; i <= HANDS; i++) {
        int n = i;
        Thread hand = new Thread(() -> write(database, dir, n, wrong));
        hand.start();
        hands.add(hand);
      }
      go.countDown();
      for (Thread hand : hands) {
        hand.join();
      }
    }
    assertThat(wrong).isEmpty();
    assertThat(inFile(dir, "key LIKE 'hand %'")).isEqualTo(1 + HANDS - HANDS / 3);
    assertThat(inFile(dir, "key LIKE 'inner %'")).isZero();
  }

  private static void write(Database database, Path dir, int n, Queue<String> wrong) {
    boolean refuse = n % 3 == 0;
    try {
      database.write(
          h -> {
            h.execute("INSERT INTO setting (key, word) VALUES (?, 'x')", "hand " + n);
            try {
              database.write(
                  inner -> {
                    inner.execute("INSERT INTO setting (key, word) VALUES (?, 'x')", "inner " + n);
                    throw new RefusedException("only the inner one");
                  });
            } catch (RefusedException innerOnly) {
              // the outer write goes on without it
            }
            if (refuse) {
              throw new RefusedException("refused " + n);
            }
            return n;
          });
      if (refuse || inFile(dir, "key = 'hand " + n + "'") != 1) {
        wrong.add("answered but not in the file: " + n);
      }
    } catch (RefusedException e) {
      if (!refuse) {
        wrong.add(n + ": " + e.getMessage());
      }
    }
  }

  /** Seen by a connection of its own, as another program would. */
  private static long inFile(Path dir, String where) {
    try (Connection c = Stores.look(dir);
        Statement s = c.createStatement();
        ResultSet r = s.executeQuery("SELECT count(*) FROM setting WHERE " + where)) {
      return r.next() ? r.getLong(1) : 0;
    } catch (SQLException e) {
      throw new AssertionError(e);
    }
  }

  private static void await(CountDownLatch latch) {
    try {
      latch.await();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new AssertionError(e);
    }
  }
}
