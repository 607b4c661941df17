package boundwright.store;

import static org.assertj.core.api.Assertions.assertThat;

import boundwright.quantity.RefusedException;
import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.parallel.Isolated;

/** What is done beside, and what it says when it is broken off. */
@Isolated("it listens to the error stream of the process")
class BesideTest {
  @Test
  void closingInTheMiddleOfItIsNotATrouble() throws InterruptedException {
    CountDownLatch begun = new CountDownLatch(1);
    String said = saidBy(() -> {
      Beside beside = new Beside();
      beside.apart();
      beside.execute(
          () -> {
            begun.countDown();
            try {
              TimeUnit.MINUTES.sleep(1);
            } catch (InterruptedException e) {
              throw new RefusedException("The program is being closed. Nothing of this entry was kept.", e);
            }
          });
      begun.await();
      beside.close();
    });
    assertThat(said).isEmpty();
  }

  @Test
  void whatIsRefusedBesideIsASentence() throws InterruptedException {
    String said = saidBy(() -> {
      Beside beside = new Beside();
      beside.apart();
      beside.execute(() -> {
        throw new RefusedException("The disk is full. Nothing of this entry was kept.");
      });
      CountDownLatch after = new CountDownLatch(1);
      beside.execute(after::countDown);
      after.await();
      beside.close();
    });
    assertThat(said).contains("it is done when somebody asks", "The disk is full.").doesNotContain("\tat ");
  }

  private interface Doing {
    void go() throws InterruptedException;
  }

  private static String saidBy(Doing doing) throws InterruptedException {
    PrintStream before = System.err;
    ByteArrayOutputStream heard = new ByteArrayOutputStream();
    System.setErr(new PrintStream(heard, true, StandardCharsets.UTF_8));
    try {
      doing.go();
    } finally {
      System.setErr(before);
    }
    return heard.toString(StandardCharsets.UTF_8);
  }
}
