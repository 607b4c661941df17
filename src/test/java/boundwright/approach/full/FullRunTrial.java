package boundwright.approach.full;

import boundwright.approach.full.SimulatedJumpers.Jumper;
import boundwright.approach.full.SimulatedJumpers.Squad;
import boundwright.approach.weather.Weather;
import boundwright.quantity.Estimate;
import java.util.List;
import java.util.Locale;
import java.util.Random;

/**
 * Prints how often the 90 % intervals held on simulated squads: the table in docs/full-run.md. Run:
 * {@code java -cp ... boundwright.approach.full.FullRunTrial SEED ROUNDS}.
 */
public final class FullRunTrial {
  /** The squads of the table. */
  static final List<Kind> KINDS =
      List.of(
          new Kind("twelve, mixed, 4 to 16 steps", new Squad(12, 4, 16, 8, 3, 8.6, 0.6, 0.7)),
          new Kind("five girls of 8 to 11 m, 4 to 12 steps", new Squad(5, 4, 12, 5, 3, 7.2, 0.4, 0)),
          new Kind("thirty, 6 to 18 steps, no wind noted", new Squad(30, 6, 18, 6, 2, 8.8, 0.7, 0)),
          new Kind("three, one day each", new Squad(3, 6, 14, 1, 3, 8.5, 0.5, 1)),
          new Kind("eight fast men, 8 to 20 steps", new Squad(8, 8, 20, 10, 3, 9.9, 0.3, 1)));

  record Kind(String name, Squad squad) {}

  /** What came of one kind: shares held of mean and single, mean half width [m], mean interval score of single [m]. */
  record Held(int asked, double level, double single, double levelHalf_m, double singleHalf_m, double score_m, double bias_m) {}

  private FullRunTrial() {}

  /** Asks for four more steps than an athlete has jumped from, and for four fewer than that, as far as the rule lets them be told. */
  static Held run(Squad squad, long seed, int rounds) {
    int asked = 0;
    int level = 0;
    int single = 0;
    double levelHalf = 0;
    double singleHalf = 0;
    double score = 0;
    double bias = 0;
    for (int round = 0; round < rounds; round++) {
      SimulatedJumpers sim = new SimulatedJumpers(squad, seed + 1000L * round);
      FullRunModel model = FullRunModel.of(sim.seen, SimulatedJumpers.TODAY, new Random(20_261_130L));
      int most = model.steps().get(model.steps().size() - 1) + FullRunModel.FURTHEST;
      Random truth = new Random(seed ^ (7919L * (round + 1)));
      for (Jumper who : sim.jumpers) {
        int own = model.steps(who.id).get(model.steps(who.id).size() - 1);
        int steps = Math.min(most, own + (truth.nextBoolean() ? 4 : 8));
        FullRunForecast f = model.forecast(who.id, steps);
        Estimate mean = f.level_m();
        Estimate jump = f.jump_m();
        double m = who.level(steps, truth);
        double y = who.single(steps, truth);
        asked++;
        level += m >= mean.p05() && m <= mean.p95() ? 1 : 0;
        single += y >= jump.p05() && y <= jump.p95() ? 1 : 0;
        levelHalf += mean.halfWidth();
        singleHalf += jump.halfWidth();
        bias += mean.p50() - m;
        score += 2 * jump.halfWidth() + (y < jump.p05() ? 20 * (jump.p05() - y) : y > jump.p95() ? 20 * (y - jump.p95()) : 0);
      }
    }
    double n = asked;
    return new Held(asked, level / n, single / n, levelHalf / n, singleHalf / n, score / n, bias / n);
  }

  /** Asks of one jump of somebody of whom, and of whose squad, nothing else is known: so many jumpers of each kind. */
  static Held alone(int from, int steps, long seed, int jumpers) {
    int level = 0;
    int single = 0;
    double half = 0;
    double singleHalf = 0;
    double bias = 0;
    for (Kind kind : KINDS) {
      for (int i = 0; i < jumpers; i++) {
        Jumper who = new SimulatedJumpers(kind.squad(), seed + 1000L * i).jumpers.get(0);
        Random truth = new Random(seed ^ (7919L * (i + 1)));
        SeenDistance seen = new SeenDistance(who.id, SimulatedJumpers.TODAY, from, who.single(from, truth), Weather.UNKNOWN);
        FullRunForecast f = FullRunModel.of(List.of(seen), SimulatedJumpers.TODAY, new Random(20_261_130L)).forecast(who.id, steps);
        double m = who.level(steps, truth);
        double y = who.single(steps, truth);
        level += m >= f.level_m().p05() && m <= f.level_m().p95() ? 1 : 0;
        single += y >= f.jump_m().p05() && y <= f.jump_m().p95() ? 1 : 0;
        half += f.level_m().halfWidth();
        singleHalf += f.jump_m().halfWidth();
        bias += f.level_m().p50() - m;
      }
    }
    double n = KINDS.size() * jumpers;
    return new Held(KINDS.size() * jumpers, level / n, single / n, half / n, singleHalf / n, 0, bias / n);
  }

  /** Seed and rounds. */
  public static void main(String[] args) {
    long seed = Long.parseLong(args[0]);
    int rounds = Integer.parseInt(args[1]);
    System.out.println("| squad | asked | mean held | jump held | mean +- m | jump +- m | score m | mean off by m |");
    for (Kind k : KINDS) {
      long start = System.nanoTime();
      Held h = run(k.squad, seed, rounds);
      System.out.printf(
          Locale.ROOT, "| %s | %d | %.1f %% | %.1f %% | %.2f | %.2f | %.2f | %+.2f | %.0f ms each%n", k.name, h.asked, 100 * h.level, 100 * h.single, h.levelHalf_m, h.singleHalf_m,
          h.score_m, h.bias_m, (System.nanoTime() - start) / 1e6 / rounds);
    }
    for (int[] ask : new int[][] {{4, 12}, {4, 16}, {6, 14}, {6, 18}, {8, 16}, {8, 20}, {12, 20}, {16, 6}, {16, 4}}) {
      Held h = alone(ask[0], ask[1], seed, 2 * rounds);
      System.out.printf(
          Locale.ROOT, "| one jump from %d, asked of %d | %d | %.1f %% | %.1f %% | %.2f | %.2f | %+.2f |%n", ask[0], ask[1], h.asked, 100 * h.level, 100 * h.single, h.levelHalf_m,
          h.singleHalf_m, h.bias_m);
    }
  }
}
