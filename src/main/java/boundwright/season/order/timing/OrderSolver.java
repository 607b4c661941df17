package boundwright.season.order.timing;

import boundwright.season.order.timing.Chains.Op;
import boundwright.season.order.timing.Chains.Times;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.function.ToIntFunction;
import java.util.random.RandomGenerator;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/**
 * Finds an order: the earliest finish first, then the shortest longest wait of an athlete who is rested, then the fewest tapes laid. Orders
 * are built by rules ({@link Dispatch}), bettered by small changes, and where the finish is above the bound, searched for layer by layer
 * ({@link LayeredSearch}).
 */
public final class OrderSolver {
  /** Up to so many athletes the search is given room to prove the finish. */
  public static final int EXACT = 12;

  private static final int[] PRESSES = {0, 30, 60, 120, 300, 100_000};
  private static final int[] PATIENCES = {0, 10, 30};
  private static final int NUDGE_S = 60;
  private static final int SHIFT_S = 400;
  /** A large squad's finish so near to the bound is not searched on. */
  private static final double NEAR = 1.005;
  private static final int WIDE = 3;

  /**
   * How hard it is thought.
   *
   * @param trials small changes that are tried
   * @param steps of the layered search, each a rep looked at in an order; 0: none is made
   */
  public record Effort(int trials, long steps) {
    /** For an answer to the coach. */
    public static final Effort FULL = new Effort(400, 400_000_000L);
    /** For a page that waits for it. */
    public static final Effort BRISK = new Effort(200, 25_000_000L);
    /** To see whether what was given up fits after all. */
    public static final Effort CAREFUL = new Effort(60, 0);
    /** To see whether something fits. */
    public static final Effort QUICK = new Effort(0, 0);
  }

  /**
   * An order.
   *
   * @param times when and where; null where a rep finds no place that is open for long enough
   * @param finish of it [s]
   * @param simple bound of rep time, watched time and chains [s]
   * @param bound the best that is known [s], at least {@code simple}
   * @param proven whether no order finishes before
   */
  public record Solved(@Nullable Times times, int finish, int simple, int bound, boolean proven) {}

  private final Chains c;
  private final double[] marks;
  private final ToIntFunction<Times> tapes;
  private final RandomGenerator random;
  private @Nullable Times best;
  private int finish = Integer.MAX_VALUE;
  private int wait;
  private int laid;

  /**
   * @param marks a middle mark of each athlete [m]: neighbours are sent to the same pit
   * @param tapes how many tapes an order needs
   */
  public OrderSolver(Chains c, double[] marks, ToIntFunction<Times> tapes, RandomGenerator random) {
    this.c = c;
    this.marks = marks;
    this.tapes = tapes;
    this.random = random;
  }

  /** The best order that was found with this effort. */
  public Solved solve(Effort effort) {
    int simple = Bounds.simple(c);
    if (!c.placeable()) {
      return new Solved(null, Integer.MAX_VALUE, simple, simple, false);
    }
    Dispatch dispatch = new Dispatch(c);
    int[] none = new int[c.athletes()];
    List<Dispatch.Rule> good = new ArrayList<>();
    for (int[][] home : List.of(homes(), free())) {
      for (int patience : PATIENCES) {
        for (int press : PRESSES) {
          if (effort.trials == 0 && (patience > 0 || (press != 60 && press != PRESSES[PRESSES.length - 1]))) {
            continue;
          }
          Dispatch.Rule rule = new Dispatch.Rule(simple, press, patience, home, none);
          if (offer(dispatch.build(rule))) {
            good.add(rule);
          }
        }
      }
    }
    if (effort.trials == 0) {
      return new Solved(best, finish, simple, simple, finish == simple);
    }
    int bound = effort.steps > 0 ? Bounds.strong(c) : simple;
    if (!good.isEmpty()) {
      better(dispatch, good.get(good.size() - 1), effort.trials);
      inserted(effort.trials, bound);
    }
    boolean proven = finish == bound;
    boolean exact = c.athletes() <= EXACT;
    if (!proven && (exact || finish > bound * NEAR)) {
      // a narrow search first: the earlier the finish that is known, the less is left for the wide one
      for (long steps : exact ? new long[] {effort.steps / 8, effort.steps, WIDE * effort.steps} : new long[] {effort.steps / 8}) {
        if (!proven) {
          LayeredSearch search = new LayeredSearch(c, width(steps));
          Times found = search.before(finish);
          proven = found == null && !search.cut() && best != null;
          offer(found);
          proven |= finish == bound;
        }
      }
    }
    return new Solved(best, finish, simple, proven ? finish : bound, proven);
  }

  private int width(long steps) {
    long layer = (long) c.count() * c.count() * c.athletes() * c.places.size();
    return (int) Math.min(6000, Math.max(20, steps / Math.max(1, layer)));
  }

  /** Whether it is better than what is known. */
  private boolean offer(@Nullable Times times) {
    if (times == null) {
      return false;
    }
    int end = times.finish(c);
    if (end > finish) {
      return false;
    }
    int longest = times.longestWait(c);
    int needs = tapes.applyAsInt(times);
    if (end < finish || longest < wait || (longest == wait && needs < laid)) {
      best = times;
      finish = end;
      wait = longest;
      laid = needs;
      return true;
    }
    return false;
  }

  private void better(Dispatch dispatch, Dispatch.Rule begin, int trials) {
    Dispatch.Rule rule = begin;
    for (int i = 0; i < trials; i++) {
      int[] nudge = rule.nudge().clone();
      int[][] home = Arrays.stream(rule.home()).map(int[]::clone).toArray(int[][]::new);
      int kind = random.nextInt(3);
      int a = random.nextInt(c.athletes());
      int b = random.nextInt(c.athletes());
      if (kind == 0) {
        nudge[a] = random.nextInt(-NUDGE_S, NUDGE_S + 1);
        nudge[b] = random.nextInt(-NUDGE_S, NUDGE_S + 1);
      } else if (kind == 1) {
        int[] h = home[a];
        home[a] = home[b];
        home[b] = h;
      } else {
        home[a] = home[b].clone();
      }
      Dispatch.Rule tried =
          new Dispatch.Rule(
              finish, PRESSES[random.nextInt(PRESSES.length)], PATIENCES[random.nextInt(PATIENCES.length)], home, nudge);
      if (offer(dispatch.build(tried))) {
        rule = tried;
      }
    }
  }

  /** The same by insertion: who has least to spare first, the order of the list changed a little at a time. */
  private void inserted(int trials, int bound) {
    Insertion insertion = new Insertion(c, finish + 1);
    int n = c.athletes();
    double[][] key = new double[n][];
    for (int a = 0; a < n; a++) {
      key[a] = new double[c.count(a)];
      for (int k = 0; k < key[a].length; k++) {
        key[a][k] = -c.rest[a][k];
      }
    }
    int[][] home = homes();
    int now = Integer.MAX_VALUE;
    for (int i = 0; i < trials && (finish > bound || i == 0); i++) {
      double[][] tried = Arrays.stream(key).map(double[]::clone).toArray(double[][]::new);
      int[][] at = home;
      if (i == 1) {
        at = free();
      } else if (i > 1) {
        change(tried);
        if (random.nextInt(4) == 0) {
          at = home.clone();
          at[random.nextInt(n)] = home[random.nextInt(n)].clone();
        }
      }
      Times times = insertion.build(tried, at);
      if (times != null) {
        int end = times.finish(c);
        offer(times);
        if (end <= now) {
          now = end;
          key = tried;
          home = at;
        }
      }
    }
  }

  /** Some reps of one athlete, or all of them, come sooner or later in the list. */
  private void change(double[][] key) {
    int changes = 1 + random.nextInt(2);
    for (int i = 0; i < changes; i++) {
      double[] own = key[random.nextInt(key.length)];
      if (own.length > 0) {
        double by = random.nextDouble(-SHIFT_S, SHIFT_S);
        int from = random.nextInt(own.length);
        int to = random.nextInt(3) == 0 ? own.length : Math.min(own.length, from + 1 + random.nextInt(3));
        for (int k = random.nextInt(3) == 0 ? 0 : from; k < to; k++) {
          own[k] += by;
        }
      }
    }
  }

  private int[][] free() {
    int[][] out = new int[c.athletes()][2];
    for (int[] h : out) {
      Arrays.fill(h, -1);
    }
    return out;
  }

  /** Neighbours by their marks at one pit, each pit with its share of the reps by its lanes. */
  private int[][] homes() {
    int[][] out = free();
    for (boolean sand : new boolean[] {true, false}) {
      List<Integer> places = IntStream.range(0, c.places.size()).filter(p -> sand ? c.places.get(p).sand() : c.places.get(p).flat()).boxed().toList();
      if (places.size() < 2) {
        continue;
      }
      List<Integer> order = new ArrayList<>(IntStream.range(0, c.athletes()).boxed().toList());
      order.sort(Comparator.comparingDouble(a -> marks[a]));
      double all = order.stream().mapToInt(a -> hold(a, sand)).sum();
      int lanes = places.stream().mapToInt(p -> c.places.get(p).lanes()).sum();
      int at = 0;
      double upTo = all * c.places.get(places.get(0)).lanes() / lanes;
      double sum = 0;
      for (int a : order) {
        int hold = hold(a, sand);
        while (at + 1 < places.size() && sum + hold / 2.0 > upTo) {
          at++;
          upTo += all * c.places.get(places.get(at)).lanes() / lanes;
        }
        out[a][sand ? 0 : 1] = places.get(at);
        sum += hold;
      }
    }
    return out;
  }

  private int hold(int athlete, boolean sand) {
    return c.ops.get(athlete).stream().filter(o -> o.sand() == sand).mapToInt(Op::hold).sum();
  }
}
