package boundwright.season.solve;

import boundwright.season.MadeUpSeason;
import boundwright.season.SeasonInput;
import boundwright.season.weeks.WantedWeek;
import boundwright.season.weeks.WantedWeeks;
import boundwright.season.year.Level;
import boundwright.season.year.YearLine;
import boundwright.season.year.YearProblem;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;

public final class SeasonTrial {
  static long cpu() { return java.lang.management.ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime(); }
  public static void main(String[] args) {
    int athletes = Integer.parseInt(args[0]);
    int weeks = Integer.parseInt(args[1]);
    int width = Integer.parseInt(args[2]);
    for (int seed = 1; seed <= Integer.parseInt(args[3]); seed++) {
      long t0 = cpu();
      SeasonInput input = MadeUpSeason.of(athletes, weeks, seed);
      WantedWeeks ww = new WantedWeeks(input);
      List<List<WantedWeek>> wanted = new ArrayList<>();
      input.squad().forEach(m -> wanted.add(ww.of(m)));
      List<YearProblem> problems = YearProblem.all(input, MadeUpSeason.climbs(input, 8), wanted, null);
      long t1 = cpu();
      long w = problems.stream().mapToLong(YearProblem::wanted).sum() / 100;
      System.out.printf("seed %d problem %.2f s, wanted %d%n", seed, (t1 - t0) / 1e9, w);
      SeasonSolver solver = new SeasonSolver(problems, input.venues(), seed);
      t0 = System.nanoTime(); t1 = cpu();
      Joint first = solver.first();
      System.out.printf("  first %.2f s cpu %.2f refusals %d %s%n", (System.nanoTime() - t0) / 1e9, (cpu() - t1) / 1e9, first.refusals(), Arrays.toString(first.total()));
      t0 = System.nanoTime(); t1 = cpu();
      Joint joint = solver.better(first, java.time.Duration.ofSeconds(width), x -> {});
      System.out.printf("  better %.2f s cpu %.2f refusals %d %s%n", (System.nanoTime() - t0) / 1e9, (cpu() - t1) / 1e9, joint.refusals(), Arrays.toString(joint.total()));
      if (args.length > 4) {
        YearLine l = joint.line(Integer.parseInt(args[4]));
        for (int k = 0; k < weeks; k++) {
          System.out.printf("   week %d wanted %d got %d  %s off %d%n", k, l.problem().wantedLoad(k) / 100, l.week(k) / 100, wanted.get(Integer.parseInt(args[4])).get(k).sessions(), l.weekCost(k, Level.OFF));
        }
      }
    }
  }
}
