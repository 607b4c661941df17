package boundwright.season.proof;

import boundwright.season.MadeUpSeason;
import boundwright.season.SeasonInput;
import boundwright.season.Venue;
import boundwright.season.solve.Joint;
import boundwright.season.solve.SeasonPlanner;
import boundwright.season.year.DailyModel;
import boundwright.season.year.DailyModel.Solved;
import boundwright.season.year.Level;
import boundwright.season.year.YearProblem;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;

/**
 * Small invented squads beside CP-SAT, level by level: what the program found, what CP-SAT found, what it proved, and the sum of what it
 * proved of each athlete alone. Run: {@code bench/season-proof ATHLETES WEEKS SEEDS SECONDS}, as {@code bench/season-proof 3 8 5 60}.
 * One thread; it takes up to three levels x (1 + athletes) x SECONDS a seed.
 */
public final class SeasonProof {
  private static final String[] NAMES = {"wishes not met", "off [contacts]", "cautions"};

  private SeasonProof() {}

  /** Athletes, weeks, seeds, seconds a level. */
  public static void main(String[] args) {
    int athletes = Integer.parseInt(args[0]);
    int weeks = Integer.parseInt(args[1]);
    double seconds = Double.parseDouble(args[3]);
    System.out.println("seed  level             ours  CP-SAT's best  bound  each alone  says");
    for (int seed = 1; seed <= Integer.parseInt(args[2]); seed++) {
      SeasonInput input = MadeUpSeason.of(athletes, weeks, seed);
      SeasonPlanner planner = new SeasonPlanner(input, MadeUpSeason.climbs(input, 4), null, seed);
      long[] ours = planner.plan(Duration.ofSeconds(20), t -> {}).joint().total();
      int[] room = input.venues().stream().mapToInt(Venue::athletes).toArray();
      if (ours[Level.REFUSED.at()] > 0) {
        System.out.println(seed + "  something is refused in our plan: " + ours[Level.REFUSED.at()]);
        continue;
      }
      DailyModel model = new DailyModel(planner.problems(), room);
      List<Solved> together = model.levels(ours, seconds);
      List<List<Solved>> alone = new ArrayList<>();
      for (YearProblem p : athletes == 1 ? List.<YearProblem>of() : planner.problems()) {
        alone.add(new DailyModel(List.of(p), room).levels(null, seconds));
      }
      Joint theirs = new Joint(planner.problems(), input.venues());
      for (int a = 0; a < model.found().size(); a++) {
        for (int t = 0; t < input.days(); t++) {
          theirs.choose(a, t, model.found().get(a).get(t));
        }
      }
      System.out.println("      CP-SAT's last plan in our own score: " + (model.found().isEmpty() ? "none" : Arrays.toString(theirs.total())));
      boolean tight = athletes > 1;
      for (int k = 0; k < together.size(); k++) {
        Solved s = together.get(k);
        long mine = ours[Level.WISHES.at() + k];
        int at = k;
        boolean reached = tight && alone.stream().allMatch(l -> l.size() > at);
        long sum = reached ? alone.stream().mapToLong(l -> l.get(at).bound()).sum() : -1;
        // a sum bounds a level only where the levels before are as good as everybody's alone
        tight = reached && sum == mine;
        System.out.printf(
            Locale.ROOT, "%4d  %-15s %6d  %13s  %5d  %10s  %s%n", seed, NAMES[k], mine, s.best() < 0 ? "none" : String.valueOf(s.best()), s.bound(), sum < 0 ? "-" : String.valueOf(sum),
            says(mine, s, sum));
      }
    }
  }

  private static String says(long mine, Solved s, long alone) {
    long bound = Math.max(s.bound(), alone);
    if (s.best() >= 0 && s.best() < mine) {
      return "WORSE than CP-SAT";
    }
    return mine == bound ? "best, proven" : s.best() == mine ? "equal, not proven" : s.best() < 0 ? "CP-SAT found none" : "better than CP-SAT, not proven";
  }
}
