package boundwright.season.chance;

import boundwright.season.Done;
import boundwright.season.MadeUpSeason;
import boundwright.season.SeasonInput;
import boundwright.season.SeasonPlan;
import boundwright.season.solve.SeasonPlanner;
import boundwright.season.solve.SeasonWork;
import java.lang.management.ManagementFactory;
import java.time.DayOfWeek;
import java.time.Duration;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.function.ToDoubleFunction;

/**
 * Simulates made-up seasons and prints how long it takes and what it says: {@code bench/season-simulate table ATHLETES WEEKS SECONDS SEASONS
 * THREADS SEEDS}, SECONDS those of the search for the plan.
 */
public final class SimulateBench {
  private SimulateBench() {}

  /** Athletes, weeks, seconds of planning, seasons, threads, seeds. */
  public static void main(String[] args) {
    int[] a = Arrays.stream(args).skip(1).mapToInt(Integer::parseInt).toArray();
    for (int seed = 1; seed <= a[5]; seed++) {
      SeasonInput input = MadeUpSeason.of(a[0], a[1], seed);
      SeasonPlanner.Planned planned = SeasonWork.ofFile().planner(input, null, input.first(), seed).plan(Duration.ofSeconds(a[2]), t -> {});
      SeasonPlan plan = planned.plan();
      SeasonWork.Habits habits = SeasonWork.ofFile().habits(input.first());
      List<WhatIf> asked = List.of(new WhatIf.MoreHours("gym", "Mill gym", DayOfWeek.TUESDAY), new WhatIf.OneMeetLess("m5", "Meet 6"));
      for (List<WhatIf> what : List.of(List.<WhatIf>of(), asked)) {
        long start = System.nanoTime();
        double cpu = cpu_s();
        SeasonSimulator simulator =
            new SeasonSimulator(input, plan, Done.nothing(input), habits, Attendance.learned(input.squad(), habits.turnout()), Learning.learned(habits.pace()), what, seed);
        double ready = (System.nanoTime() - start) / 1e9;
        Chances c = simulator.run(a[3], a[4], n -> {});
        print(seed, what.size(), ready, (System.nanoTime() - start) / 1e9, cpu_s() - cpu, c);
      }
    }
  }

  /** Time of the processors that this program has used [s]: what is left when other work runs beside. */
  private static double cpu_s() {
    return ManagementFactory.getPlatformMXBean(com.sun.management.OperatingSystemMXBean.class).getProcessCpuTime() / 1e9;
  }

  private static double mean(Chances c, ToDoubleFunction<Chances.Athlete> of) {
    return c.athletes().stream().mapToDouble(of).average().orElse(0);
  }

  private static void print(int seed, int asked, double ready_s, double all_s, double cpu_s, Chances c) {
    System.out.printf(
        Locale.ROOT, "seed %d, %d asked beside: %d seasons in %.1f s, CPU %.1f s (%.2f s to begin); refused days %d, %d seasons judged by the limits%n", seed, asked,
        c.seasons(), all_s, cpu_s, ready_s, c.refusedDays(), c.checked());
    double middle = c.squad().stream().mapToDouble(Chances.Band::middle).sum();
    double planned = c.squad().stream().mapToDouble(Chances.Band::planned).sum();
    double reached = c.athletes().stream().flatMap(a -> a.approaches().stream()).mapToDouble(p -> p.atLeast(p.planned())).average().orElse(0);
    if (asked == 0) {
      System.out.printf(
          Locale.ROOT, "   an athlete's season: done %.1f, missed %.1f, mended %.1f; planned approaches %.2f; middle of the load %.2f of the plan; meets given up %.2f, tapers missed %.2f in the squad%n",
          mean(c, Chances.Athlete::sessions), mean(c, Chances.Athlete::missed), mean(c, Chances.Athlete::mended), reached, middle / planned, c.meetsGivenUp(), c.tapersMissed());
    }
    c.answers().forEach(x -> x.squad().forEach(b -> System.out.printf(Locale.ROOT, "   %s: %s %+.4f +- %.4f %s%n", x.what().said(), b.of(), b.mean(), b.error(), b.unit())));
  }
}
