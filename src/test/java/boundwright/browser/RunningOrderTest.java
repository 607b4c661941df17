package boundwright.browser;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** Laws of the running order, asked of the page's own script. Seeded; the seed is in the failure. */
class RunningOrderTest extends PhoneCase {
  private long next(String what, List<Integer> came, List<Integer> before, List<Integer> here, int now) {
    return ((Number) page.evaluate("([c, b, h, n]) => window.boundwrightOrder." + what + "(c, b, h, n)", List.of(came, before, here, now))).longValue();
  }

  @Test
  void laws() {
    visit("/runway");
    page.waitForFunction("window.boundwrightOrder");
    long seed = 20261129;
    Random random = new Random(seed);
    for (int trial = 0; trial < 60; trial++) {
      String as = "seed " + seed + " trial " + trial;
      int n = 2 + random.nextInt(8);
      List<Integer> here = IntStream.rangeClosed(1, n + 4).boxed().toList();
      List<Integer> queue = new ArrayList<>(here.subList(0, n));
      Collections.shuffle(queue, random);
      int inARow = 1 + random.nextInt(3);
      List<Integer> came = new ArrayList<>();
      for (int round = 0; round < 2; round++) {
        for (int who : queue) {
          came.addAll(Collections.nCopies(inARow, who));
        }
      }
      came.addAll(Collections.nCopies(inARow, queue.get(0)));
      // a queue that goes round is known after one round
      for (int i = 0; i < n; i++) {
        assertThat(next("next", came, List.of(), here, queue.get(i % n))).as(as).isEqualTo(queue.get((i + 1) % n).longValue());
        int after = queue.get((i + 1) % n);
        came.add(after);
        for (int k = 1; k < inARow; k++) {
          // and whoever takes more reps in a row is up again until they are done
          assertThat(next("next", came, List.of(), here, after)).as(as + " again").isEqualTo(after);
          came.add(after);
        }
      }
      // the first round of today goes as the last session did
      List<Integer> today = new ArrayList<>();
      for (int i = 0; i + 1 < n; i++) {
        today.add(queue.get(i));
        assertThat(next("next", today, came, here, queue.get(i))).as(as + " as last time").isEqualTo(queue.get(i + 1).longValue());
      }
      // always somebody who is here, and passing by never stays
      List<Integer> any = random.ints(random.nextInt(30), 1, n + 8).boxed().toList();
      int now = 1 + random.nextInt(n + 4);
      assertThat(here.stream().map(Integer::longValue)).as(as).contains(next("next", any, came, here, now));
      assertThat(next("after", any, came, here, now)).as(as).isNotEqualTo(now);
      assertThat(here.stream().map(Integer::longValue)).as(as).contains(next("after", any, came, here, now));
    }
    // a squad that nobody knows goes down its list and begins again with the one who waited longest
    assertThat(next("next", List.of(1, 2, 3), List.of(), List.of(1, 2, 3), 3)).isEqualTo(1);
    assertThat(next("next", List.of(1), List.of(), List.of(1, 2, 3), 1)).isEqualTo(2);
    assertThat(next("next", List.of(1), List.of(), List.of(1), 1)).isEqualTo(1);
  }

  private long planned(String what, List<Integer> came, List<Integer> here, int now, List<Integer> order) {
    return ((Number) page.evaluate("([c, h, n, o]) => window.boundwrightOrder." + what + "(c, [], h, n, {order: o})", List.of(came, here, now, order))).longValue();
  }

  @Test
  void aPlannedOrderIsGoneByUntilTheyComeOtherwise() {
    visit("/runway");
    page.waitForFunction("window.boundwrightOrder");
    long seed = 15;
    Random random = new Random(seed);
    for (int trial = 0; trial < 30; trial++) {
      String as = "seed " + seed + " trial " + trial;
      int n = 3 + random.nextInt(6);
      List<Integer> here = IntStream.rangeClosed(1, n).boxed().toList();
      List<Integer> order = new ArrayList<>();
      for (int round = 0; round < 3; round++) {
        List<Integer> one = new ArrayList<>(here);
        Collections.shuffle(one, random);
        if (!order.isEmpty() && order.get(order.size() - 1).equals(one.get(0))) {
          Collections.swap(one, 0, 1);
        }
        order.addAll(one);
      }
      List<Integer> came = new ArrayList<>();
      int now = order.get(order.size() - 1);
      for (int due : order) {
        if (due != now) {
          assertThat(planned("next", came, here, now, order)).as(as + " after " + came).isEqualTo(due);
          assertThat(planned("after", came, here, now, order)).as(as + " after " + came).isEqualTo(due);
        }
        came.add(due);
        now = due;
      }
      // a queue that goes round backwards, whatever was planned, is learned as without a plan
      List<Integer> back = new ArrayList<>(here);
      Collections.reverse(back);
      List<Integer> plan = IntStream.range(0, 4 * n).mapToObj(i -> i % n + 1).toList();
      List<Integer> own = new ArrayList<>(back);
      own.addAll(back);
      for (int i = 0; i < n; i++) {
        assertThat(planned("next", own, here, own.get(own.size() - 1), plan)).as(as + " own way " + own).isEqualTo(back.get(i).longValue());
        own.add(back.get(i));
      }
      // one who steps aside is asked again, and does not upset the plan
      List<Integer> swapped = new ArrayList<>(List.of(2));
      assertThat(planned("next", swapped, here, 2, plan)).as(as).isEqualTo(1);
    }
  }

  @Test
  void theLastOnesAndTheOneBefore() {
    visit("/runway");
    page.waitForFunction("window.boundwrightOrder");
    assertThat(page.evaluate("window.boundwrightOrder.lastOnes([1, 2, 3, 2, 4], [1, 2, 3, 4, 5, 6], 4, 5)")).isEqualTo(List.of(2, 3, 1, 5, 6));
    assertThat(page.evaluate("window.boundwrightOrder.previous([1, 2, 3], [1, 2, 3, 4], 4)")).isEqualTo(3);
    assertThat(page.evaluate("window.boundwrightOrder.previous([1, 2, 3], [1, 2, 3, 4], 3)")).isEqualTo(2);
    assertThat(page.evaluate("window.boundwrightOrder.previous([], [1, 2, 3, 4], 1)")).isEqualTo(4);
  }
}
