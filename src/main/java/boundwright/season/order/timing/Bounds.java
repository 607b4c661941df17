package boundwright.season.order.timing;

import boundwright.season.order.timing.Chains.Lanes;
import boundwright.season.order.timing.Chains.Op;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.function.Predicate;
import java.util.function.ToIntFunction;

/** What no order can finish before. */
final class Bounds {
  private Bounds() {}

  /** The larger of rep time over lanes, watched rep time over coaches, and the longest chain of work and rest [s]. */
  static int simple(Chains c) {
    int most = 0;
    for (int a = 0; a < c.athletes(); a++) {
      most = Math.max(most, c.rest[a][0]);
    }
    for (Part part : parts(c)) {
      int work = c.ops.stream().flatMap(List::stream).filter(part.of).mapToInt(part.takes).sum();
      most = Math.max(most, part.machines == 0 ? 0 : (work + part.machines - 1) / part.machines);
    }
    return most;
  }

  /**
   * A share of the reps that has machines of its own: reps into sand and the lanes that take them, others and theirs, all and all, watched
   * ones and the coaches.
   */
  record Part(Predicate<Op> of, ToIntFunction<Op> takes, int machines) {}

  static List<Part> parts(Chains c) {
    int sand = c.places.stream().filter(Lanes::sand).mapToInt(Lanes::lanes).sum();
    int flat = c.places.stream().filter(Lanes::flat).mapToInt(Lanes::lanes).sum();
    return List.of(
        new Part(Op::sand, Op::hold, sand),
        new Part(o -> !o.sand(), Op::hold, flat),
        new Part(o -> true, Op::hold, c.laneCount()),
        new Part(o -> o.eyes() > 0, Op::eyes, c.coaches));
  }

  private record Job(int head, int work, int tail) {}

  /**
   * At least the simple bound: of every set of reps none of which can start before a time nor be followed by less than a time, the
   * machines' own work in between (heads, work and tails, as in the bounds of one-machine scheduling, Carlier 1982, from memory).
   */
  static int strong(Chains c) {
    int most = simple(c);
    for (Part part : parts(c)) {
      if (part.machines == 0) {
        continue;
      }
      List<Job> jobs = new ArrayList<>();
      for (int a = 0; a < c.athletes(); a++) {
        int head = 0;
        for (int k = 0; k < c.count(a); k++) {
          Op op = c.op(a, k);
          if (part.of.test(op)) {
            int work = part.takes.applyAsInt(op);
            jobs.add(new Job(head, work, c.rest[a][k] - work));
          }
          head += op.lag();
        }
      }
      most = Math.max(most, bound(jobs, part.machines));
    }
    return most;
  }

  private static int bound(List<Job> jobs, int m) {
    List<Job> byTail = new ArrayList<>(jobs);
    byTail.sort(Comparator.comparingInt(Job::tail).reversed());
    int most = 0;
    for (int head : jobs.stream().mapToInt(Job::head).distinct().sorted().toArray()) {
      long work = 0;
      int n = 0;
      int[] least = new int[m];
      Arrays.fill(least, Integer.MAX_VALUE);
      int[] last = new int[m];
      for (Job j : byTail) {
        if (j.head < head) {
          continue;
        }
        work += j.work;
        n++;
        insert(least, j.head);
        // the m smallest tails are the last ones that came
        System.arraycopy(last, 1, last, 0, m - 1);
        last[m - 1] = j.tail;
        if (n < m) {
          most = Math.max(most, j.head + j.work + j.tail);
          continue;
        }
        long idle = Arrays.stream(last).asLongStream().sum() + Arrays.stream(least).asLongStream().sum();
        most = Math.max(most, (int) ((idle + work + m - 1) / m));
      }
    }
    return most;
  }

  /** Keeps the smallest in order. */
  private static void insert(int[] least, int value) {
    int at = least.length - 1;
    if (value >= least[at]) {
      return;
    }
    while (at > 0 && least[at - 1] > value) {
      least[at] = least[at - 1];
      at--;
    }
    least[at] = value;
  }

  /** When machines that are free at these times, in order, have done so much work at the earliest. */
  static int filled(int[] free, int least, long work) {
    long sum = work;
    int best = Integer.MAX_VALUE;
    for (int i = 0; i < free.length; i++) {
      sum += Math.max(free[i], least);
      best = (int) Math.min(best, (sum + i) / (i + 1));
    }
    return best;
  }
}
