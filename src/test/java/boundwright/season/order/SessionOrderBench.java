package boundwright.season.order;

import boundwright.season.order.InventedSessions.Shape;
import boundwright.season.order.OrderSettings.Watch;
import java.io.PrintStream;
import java.lang.management.ManagementFactory;
import java.util.Arrays;
import java.util.Locale;
import java.util.Objects;
import java.util.SplittableRandom;

/**
 * How near the finish of a session is to the earliest there can be, how many tapes are laid and how long it takes to think. Run it with {@code
 * bench/session-order}; a number as argument is the sessions of each kind (default 10). The table stands in {@code docs/session-order.md}.
 */
public final class SessionOrderBench {
  private static final long SEED = 24;

  private SessionOrderBench() {}

  private record Kind(String name, Shape shape) {}

  private static Kind kind(String name, int athletes, int pits, int flat, int coaches, boolean mixed) {
    return new Kind(name, new Shape(athletes, pits, 1, flat, 3, coaches, mixed, Watch.SAND));
  }

  /** Prints the table. */
  public static void main(String[] arguments) {
    int sessions = arguments.length > 0 ? Integer.parseInt(arguments[0]) : 10;
    PrintStream out = System.out;
    out.println("| session | reps | proven | above the bound known, mean / most | above the simple bound, mean / most | laid / least x drills | seconds of one core, median / most |");
    out.println("| --- | --- | --- | --- | --- | --- | --- |");
    for (Kind kind :
        new Kind[] {
          kind("3 athletes, 1 pit, unlike steps", 3, 1, 0, 1, true),
          kind("6 athletes, 1 pit, unlike steps", 6, 1, 0, 1, true),
          kind("6 athletes, 1 pit and grass, unlike steps", 6, 1, 2, 1, true),
          kind("9 athletes, 2 pits, unlike steps", 9, 2, 0, 1, true),
          kind("12 athletes, 1 pit, unlike steps", 12, 1, 0, 1, true),
          kind("12 athletes, 2 pits, same steps", 12, 2, 0, 2, false),
          kind("12 athletes, 2 pits, unlike steps", 12, 2, 0, 1, true),
          kind("12 athletes, 1 pit and grass, unlike steps", 12, 1, 2, 1, true),
          kind("24 athletes, 2 pits, same steps, 2 coaches", 24, 2, 0, 2, false),
          kind("24 athletes, 2 pits, unlike steps, 2 coaches", 24, 2, 0, 2, true),
          kind("24 athletes, 2 pits, unlike steps, 1 coach", 24, 2, 0, 1, true),
          kind("24 athletes, 2 pits and grass, unlike steps", 24, 2, 2, 1, true),
          kind("60 athletes, 2 pits, unlike steps, 2 coaches", 60, 2, 0, 2, true)
        }) {
      row(kind, sessions, out);
    }
  }

  private static void row(Kind kind, int sessions, PrintStream out) {
    SplittableRandom random = new SplittableRandom(SEED);
    int proven = 0;
    int reps = 0;
    int laid = 0;
    int least = 0;
    double[] known = new double[sessions];
    double[] simple = new double[sessions];
    double[] seconds = new double[sessions];
    for (int i = 0; i < sessions; i++) {
      SessionAsk ask = InventedSessions.of(kind.shape, random);
      long began = core_ns();
      RunningOrder order = OrderPlanner.thorough(i).plan(ask.within(SessionAsk.MOST_MINUTES));
      seconds[i] = (core_ns() - began) / 1e9;
      proven += order.proven() ? 1 : 0;
      reps += order.goes().size();
      laid += order.tapes().size();
      least += leastEach(ask) * kind.shape.pits();
      known[i] = 100.0 * (order.finish_s() - order.least_s()) / order.least_s();
      simple[i] = 100.0 * (order.finish_s() - order.bound_s()) / order.bound_s();
    }
    Arrays.sort(seconds);
    out.printf(
        Locale.ROOT, "| %s | %d | %d of %d | %.2f %% / %.2f %% | %.2f %% / %.2f %% | %d / %d | %.1f / %.1f |%n", kind.name, reps / sessions, proven,
        sessions, mean(known), most(known), mean(simple), most(simple), laid, least, seconds[sessions / 2], seconds[sessions - 1]);
    out.flush();
  }

  /** The least number of tapes of each drill of the whole squad by itself, together. */
  private static int leastEach(SessionAsk ask) {
    int sum = 0;
    for (int d = 0; d < ask.drills().size(); d++) {
      int drill = d;
      sum += TapeSets.least(ask.athletes().stream().map(a -> a.parts().get(drill).works()).filter(Objects::nonNull).toList());
    }
    return sum;
  }

  /** What this thread has had of a core [ns]: other work on the machine does not count. */
  private static long core_ns() {
    return ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
  }

  private static double mean(double[] all) {
    return Arrays.stream(all).average().orElse(0);
  }

  private static double most(double[] all) {
    return Arrays.stream(all).max().orElse(0);
  }
}
