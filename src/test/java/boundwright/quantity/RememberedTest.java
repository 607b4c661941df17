package boundwright.quantity;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.atomic.AtomicReference;
import org.junit.jupiter.api.Test;

/** What was worked out is not worked out again, as long as it is asked for often enough. */
class RememberedTest {
  private final List<String> worked = new ArrayList<>();
  private final Remembered<String, String> two = new Remembered<>(2);

  private String read(String key) {
    return two.of(key, k -> {
      worked.add(k);
      return "read " + k;
    });
  }

  @Test
  void whatWasAskedForLongestAgoIsForgottenFirst() {
    assertThat(read("a")).isEqualTo("read a");
    read("b");
    read("a");
    read("c"); // b goes
    read("a");
    read("b");
    assertThat(worked).containsExactly("a", "b", "c", "b");
  }

  @Test
  void ofTwoWhoWorkItOutAtOnceBothAreGivenTheFirst() throws InterruptedException {
    Remembered<String, Object> objects = new Remembered<>(2);
    CountDownLatch begun = new CountDownLatch(1);
    CountDownLatch done = new CountDownLatch(1);
    AtomicReference<Object> late = new AtomicReference<>();
    Thread slow =
        new Thread(
            () ->
                late.set(
                    objects.of("a", k -> {
                      begun.countDown();
                      try {
                        done.await();
                      } catch (InterruptedException e) {
                        Thread.currentThread().interrupt();
                      }
                      return new Object();
                    })));
    slow.start();
    begun.await();
    Object first = objects.of("a", k -> new Object());
    done.countDown();
    slow.join();
    assertThat(late.get()).isSameAs(first);
  }
}
