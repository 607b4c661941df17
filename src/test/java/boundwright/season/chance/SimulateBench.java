package boundwright.season.chance;

import boundwright.season.Done;
import boundwright.season.MadeUpSeason;
import boundwright.season.SeasonInput;
import boundwright.season.SeasonPlan;
import boundwright.season.solve.SeasonPlanner;
import boundwright.season.solve.SeasonWork;
import java.time.DayOfWeek;
import java.time.Duration;
import java.util.List;
import java.util.Locale;

/**
 * Simulates made-up seasons and prints how long it takes and what it says: {@code bench/season-simulate table ATHLETES WEEKS SECONDS SEASONS
 * THREADS SEEDS}, SECONDS those of the search for the plan.
 */
public final class SimulateBench {
  private SimulateBench() {}

  /** Athletes, weeks, seconds of planning, seasons, threads, seeds. */
  public static void main(String[] args) {
    int[] a = java.util.Arrays.stream(args).skip(1).mapToInt(Integer::parseInt).toArray();
    for (int seed = 1; seed <= a[5]; seed++) {
      SeasonInput input = MadeUpSeason.of(a[0], a[1], seed);
      SeasonPlanner.Planned planned = SeasonWork.ofFile().planner(input, null, input.first(), seed).plan(Duration.ofSeconds(a[2]), t -> {});
      SeasonPlan plan = planned.plan();
      SeasonWork.Habits habits = SeasonWork.ofFile().habits(input.first());
      List<WhatIf> asked = List.of(new WhatIf.MoreHours("gym", "Mill gym", DayOfWeek.TUESDAY), new WhatIf.OneMeetLess("m5", "Meet 6"));
      for (List<WhatIf> what : List.of(List.<WhatIf>of(), asked)) {
        long start = System.nanoTime();
        SeasonSimulator simulator =
            new SeasonSimulator(input, plan, Done.nothing(input), habits, Attendance.learned(input.squad(), habits.turnout()), Learning.learned(habits.pace()), what, seed);
        double ready = (System.nanoTime() - start) / 1e9;
        Chances c = simulator.run(a[3], a[4], n -> {});
        print(seed, what.size(), ready, (System.nanoTime() - start) / 1e9, c);
      }
    }
  }

  private static void print(int seed, int asked, double ready_s, double all_s, Chances c) {
    double sessions = c.athletes().stream().mapToDouble(Chances.Athlete::sessions).average().orElse(0);
    double missed = c.athletes().stream().mapToDouble(Chances.Athlete::missed).average().orElse(0);
    double mended = c.athletes().stream().mapToDouble(Chances.Athlete::mended).average().orElse(0);
    System.out.printf(
        Locale.ROOT, "seed %d, %d questions beside: %d seasons in %.1f s (%.2f s to begin); refused days %d (%d seasons judged by the limits); a season: done %.1f missed %.1f mended %.1f an athlete, meets given up %.2f, tapers missed %.2f%n",
        seed, asked, c.seasons(), all_s, ready_s, c.refusedDays(), c.checked(), sessions, missed, mended, c.meetsGivenUp(), c.tapersMissed());
    c.answers().forEach(x -> x.squad().forEach(b -> System.out.printf(Locale.ROOT, "   %s: %s %+.4f +- %.4f %s%n", x.what().said(), b.of(), b.mean(), b.error(), b.unit())));
    if (asked == 0) {
      c.athletes().stream().limit(4).forEach(x -> System.out.println("   " + x.name() + " " + x.approaches().stream().skip(x.approaches().size() - 3).map(p -> p.family() + " planned " + p.planned() + " " + p.by()).toList()));
      double low = 0; double mid = 0; double high = 0; double plan = 0;
      for (Chances.Band b : c.squad()) { low += b.low(); mid += b.middle(); high += b.high(); plan += b.planned(); }
      System.out.printf(Locale.ROOT, "   squad's weeks summed: low %.0f middle %.0f high %.0f planned %.0f%n", low, mid, high, plan);
    }
  }
}
