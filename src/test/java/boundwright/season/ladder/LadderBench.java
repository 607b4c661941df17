package boundwright.season.ladder;

import boundwright.readiness.GateRules;
import boundwright.season.ladder.InventedClimbs.Case;
import boundwright.season.ladder.InventedClimbs.Score;
import boundwright.season.ladder.InventedClimbs.Squad;
import java.util.Locale;
import java.util.Random;

/**
 * Prints how the expected day errs with 0, 5, 20 and 60 known stays of a squad. The athletes are {@link Learner}s, asked by the real gate
 * after each session; squads differ in pace (SD of the logarithm .35), athletes within a squad likewise, and in attendance.
 *
 * <p>Run: {@code bench/ladder [squads [seed]]}
 */
public final class LadderBench {
  private LadderBench() {}

  /** New athletes, those whose stay is running, and both. */
  record Scores(Score fresh, Score running, Score all) {}

  static Scores scores(int known, int squads, double lowestAttendance, long seed) {
    Score fresh = new Score();
    Score running = new Score();
    Score all = new Score();
    Random r = new Random(seed);
    for (int s = 0; s < squads; s++) {
      Squad squad = InventedClimbs.squad(known, 6, Math.exp(0.35 * r.nextGaussian()), lowestAttendance, r);
      SquadPace pace = SquadPace.of(squad.stays(), GateRules.DEFAULT.stay(), PacePrior.USUAL);
      for (Case c : squad.cases()) {
        StayForecast f = InventedClimbs.forecast(c, pace);
        (c.spent().isEmpty() ? fresh : running).add(c, f);
        all.add(c, f);
      }
      fresh.endSquad();
      running.endSquad();
      all.endSquad();
    }
    return new Scores(fresh, running, all);
  }

  /** Prints the table. */
  public static void main(String[] args) {
    int squads = args.length > 0 ? Integer.parseInt(args[0]) : 100;
    long seed = args.length > 1 ? Long.parseLong(args[1]) : 15;
    System.out.println(squads + " squads a row, seed " + seed + "; own output");
    System.out.println("| attendance | stays known | athlete | cases (no end in sight) | expected less true day | error, mean size | earliest possible: error | in the 80 % range | ready by the decision day: said, came |");
    for (double attendance : new double[] {1, 0.5}) {
      for (int known : new int[] {0, 5, 20, 60}) {
        Scores s = scores(known, squads, attendance, seed);
        print(attendance, known, "new", s.fresh());
        if (known > 0) {
          print(attendance, known, "running", s.running());
        }
      }
    }
  }

  private static void print(double attendance, int known, String who, Score s) {
    System.out.printf(Locale.ROOT, "| %s | %d | %s | %d (%d) | %+.1f +- %.1f d | %.1f d | %.1f d | %.0f %% | %.2f, %.2f (%+.2f +- %.2f) |%n",
        attendance == 1 ? "1" : "0.5 to 1", known, who, s.cases(), s.unseen(), s.bias(), s.biasError(), s.absolute(), s.earliest(), 100 * s.coverage(),
        s.chance(), s.came(), s.surprise(), s.surpriseError());
  }
}
