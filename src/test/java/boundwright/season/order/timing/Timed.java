package boundwright.season.order.timing;

import static org.assertj.core.api.Assertions.assertThat;

import boundwright.season.order.timing.Chains.Op;
import boundwright.season.order.timing.Chains.Times;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/** What holds of every order, looked at second by second. */
final class Timed {
  private Timed() {}

  static void check(Chains c, @Nullable Times found, String as) {
    Times times = Objects.requireNonNull(found, as);
    int end = times.finish(c);
    int[][] busy = new int[c.places.size()][end];
    int[] watching = new int[end];
    for (int a = 0; a < c.athletes(); a++) {
      int ready = 0;
      for (int k = 0; k < c.count(a); k++) {
        Op op = c.op(a, k);
        int start = times.start()[a][k];
        int place = times.place()[a][k];
        assertThat(start).as(as + ": rest of " + a + " before rep " + k).isGreaterThanOrEqualTo(ready);
        ready = start + op.lag();
        assertThat(c.places.get(place).serves(op)).as(as).isTrue();
        assertThat(start + op.hold()).as(as).isLessThanOrEqualTo(c.places.get(place).until());
        if (!c.first(a, k)) {
          assertThat(place).as(as + ": a drill is done at one place").isEqualTo(times.place()[a][k - 1]);
        }
        for (int t = start; t < start + op.hold(); t++) {
          assertThat(++busy[place][t]).as(as + ": lanes").isLessThanOrEqualTo(c.places.get(place).lanes());
        }
        for (int t = start; t < start + op.eyes(); t++) {
          assertThat(++watching[t]).as(as + ": eyes").isLessThanOrEqualTo(c.coaches);
        }
      }
    }
  }
}
