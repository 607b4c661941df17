package boundwright.season.solve;

import boundwright.season.MadeUpSeason;
import boundwright.season.SeasonInput;
import boundwright.season.year.YearProblem;
import java.lang.management.ManagementFactory;
import java.time.Duration;
import java.util.Arrays;
import java.util.Locale;

/** Plans made-up seasons and prints what came of it: {@code bench/season plan ATHLETES WEEKS SECONDS SEEDS}. */
public final class SeasonTrial {
  private SeasonTrial() {}

  private static double cpu() {
    return ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime() / 1e9;
  }

  /** Athletes, weeks, seconds to search, seeds. */
  public static void main(String[] args) {
    int athletes = Integer.parseInt(args[0]);
    int weeks = Integer.parseInt(args[1]);
    for (int seed = 1; seed <= Integer.parseInt(args[3]); seed++) {
      SeasonInput input = MadeUpSeason.of(athletes, weeks, seed);
      long start = System.nanoTime();
      double cpu = cpu();
      SeasonPlanner planner = SeasonWork.ofFile().planner(input, null, input.first(), seed);
      double[] first = {-1, 0};
      SeasonPlanner.Planned out =
          planner.plan(
              Duration.ofSeconds(Integer.parseInt(args[2])),
              total -> {
                if (first[0] < 0) {
                  first[0] = (System.nanoTime() - start) / 1e9;
                  first[1] = cpu() - cpu;
                  System.out.printf(Locale.ROOT, "  first %.2f s (CPU %.2f) %s%n", first[0], first[1], Arrays.toString(total));
                }
              });
      long wanted = planner.problems().stream().mapToLong(YearProblem::wanted).sum() / 100;
      System.out.printf(
          Locale.ROOT, "seed %d: %.1f s (CPU %.1f), refused by the guard %d, by the rules %d; wanted %d; %s%n", seed, (System.nanoTime() - start) / 1e9, cpu() - cpu,
          out.refused().size(), out.joint().refusals(), wanted, Arrays.toString(out.joint().total()));
      int early = 0;
      for (boundwright.season.Member m : input.squad()) {
        early += boundwright.season.ladder.LeastStayCheck.of(m, out.plan().of(m.id()).orElseThrow(), boundwright.readiness.GateRules.DEFAULT.stay()).size();
      }
      System.out.println("   decisions before the least stay is over: " + early);
      out.refused().stream().limit(5).forEach(r -> System.out.println("   " + r.athleteId() + " " + r.date() + " " + r.finding().said()));
    }
  }
}
