package boundwright.flight.season;

import boundwright.athlete.Level;
import boundwright.flight.FlightModel;
import boundwright.flight.SquadPrior;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import java.util.function.Function;

/**
 * Prints how well the learning keeps its word over simulated seasons: the table of {@code docs/learning.md}. Run with
 * {@code bench/learning [athletes of each kind] [seed] [part ...]}; 60 athletes take some minutes on one core. Seeds below
 * 500 000 were used for settling the priors, those from 700 000 on for reporting.
 */
public final class LearningTable {
  /** Athletes whose landing differs by some 2 % from rep to rep, and by some 4 %. */
  static final double STEADY = 0.4;
  /** See {@link #STEADY}. */
  static final double USUAL = 0.8;

  private static final List<Logging> PLAIN = List.of(Logging.PRINTS, Logging.LANDING, Logging.TAPS, Logging.MIXED);

  private final int athletes;
  private final long seed;
  private final double spread;

  LearningTable(int athletes, long seed, double spread) {
    this.athletes = athletes;
    this.seed = seed;
    this.spread = spread;
  }

  /** Prints the parts named, or all: {@code ratio season bail sharp squad new}. */
  public static void main(String[] args) {
    int athletes = args.length > 0 ? Integer.parseInt(args[0]) : 60;
    long seed = args.length > 1 ? Long.parseLong(args[1]) : 700_000;
    List<String> parts = args.length > 2 ? List.of(args).subList(2, args.length) : List.of("ratio", "season", "bail", "sharp", "squad", "new");
    for (double spread : new double[] {STEADY, USUAL}) {
      LearningTable table = new LearningTable(athletes, seed, spread);
      System.out.printf(Locale.ROOT, "%d athletes of each kind, scatter x %.1f, seed %d%n", athletes, spread, seed);
      for (String part : parts) {
        switch (part) {
          case "ratio" -> table.ratio();
          case "season" -> table.seasons(List.of(Logging.values()));
          case "taps" -> table.seasons(List.of(Logging.THEN_TAPS, Logging.THEN_ASKED));
          case "bail" -> table.bailOuts();
          case "sharp" -> table.sharp();
          case "squad" -> table.squads();
          default -> table.never();
        }
      }
    }
  }

  List<Season> run(Scenario scenario, Logging logging, double ratio, double bailOuts, List<Drill> drills, int most) {
    List<Season> out = new ArrayList<>();
    for (int i = 0; i < athletes; i++) {
      out.add(one(i, scenario, logging, ratio, bailOuts, drills).run(most));
    }
    return out;
  }

  /** The same athlete for the same number and seed, whatever is logged. */
  Season one(int i, Scenario scenario, Logging logging, double ratio, double bailOuts, List<Drill> drills) {
    return one(i, scenario, logging, ratio, bailOuts, drills, SquadPrior.NONE);
  }

  Season one(
      int i, Scenario scenario, Logging logging, double ratio, double bailOuts, List<Drill> drills, SquadPrior squad) {
    Random r = new Random(seed + 97L * i);
    double drawn = 1.15 + 0.3 * r.nextDouble();
    double own = Double.isNaN(ratio) ? drawn : ratio;
    double wild = this.spread * Math.exp(0.2 * r.nextGaussian());
    HiddenAthlete a = new HiddenAthlete(Level.KNOWN.get(i % 3), scenario, own, wild, r);
    return new Season(a, FlightModel.prior(a.profile(i + 1, r), squad), logging, bailOuts, drills, seed + 97L * i + 13);
  }

  static Score sum(List<Season> seasons, Function<Season, Score> which) {
    Score all = new Score();
    seasons.forEach(s -> all.add(which.apply(s)));
    return all;
  }

  static Rules rules(List<Season> seasons) {
    Rules all = new Rules();
    seasons.forEach(s -> all.add(s.rules));
    return all;
  }

  private void ratio() {
    for (double ratio : new double[] {1.10, 1.21, 1.31, 1.44, 1.50}) {
      List<Season> s = run(Scenario.STEADY, Logging.LANDING, ratio, 0, Drill.FEW, 108);
      System.out.printf(Locale.ROOT, "landing only, last flight %.2f of the bound, after 108 reps: %s%n", ratio, sum(s, x -> x.scored(108)).line());
    }
  }

  private void seasons(List<Logging> ways) {
    for (Logging logging : ways) {
      for (Scenario scenario : Scenario.values()) {
        if (scenario == Scenario.GROWING) {
          continue; // with and without heights: GrowingSeasonTest
        }
        List<Season> s = run(scenario, logging, Double.NaN, 0, Drill.FEW, 1000);
        System.out.printf(Locale.ROOT, "%s %s: %s%n", logging, scenario, sum(s, x -> x.late).line());
        if (scenario.firstDayBack() < 1000) {
          System.out.printf(Locale.ROOT, "%s %s first session back: %s%n", logging, scenario, sum(s, x -> x.firstBack).line());
        }
        System.out.printf(Locale.ROOT, "    rules: %s%n", rules(s).line());
        if (logging == Logging.ASKED || logging == Logging.THEN_ASKED) {
          int measured = s.stream().mapToInt(x -> x.measures).sum();
          System.out.printf(Locale.ROOT, "    measured when asked: %.3f of the reps%n", measured / (double) s.stream().mapToInt(x -> x.reps).sum());
        }
      }
    }
  }

  private void bailOuts() {
    for (Logging logging : PLAIN) {
      Score without = sum(run(Scenario.STEADY, logging, Double.NaN, 0, Drill.FEW, 1000), x -> x.late);
      Score with = sum(run(Scenario.STEADY, logging, Double.NaN, 0.04, Drill.FEW, 1000), x -> x.late);
      System.out.printf(
          Locale.ROOT, "%s 4 %% abandoned unmarked: width x %.3f; %s%n    without: %s%n", logging, with.width / without.width, with.line(), without.line());
    }
  }

  private void sharp() {
    for (Logging logging : PLAIN) {
      List<Season> s = run(Scenario.STEADY, logging, Double.NaN, 0, Drill.MIXED, 60);
      for (int reps : new int[] {6, 24, 60}) {
        System.out.printf(Locale.ROOT, "mixed drills and rungs, %s, after %d reps: %s%n", logging, reps, sum(s, x -> x.scored(reps)).line());
      }
      System.out.printf(Locale.ROOT, "    rules: %s%n", rules(s).line());
    }
  }

  /** Athletes 12 to 23 of a squad of which athletes 0 to 11 logged 48 reps each. */
  private void squads() {
    for (Logging logging : PLAIN) {
      for (boolean told : new boolean[] {false, true}) {
        List<Season> newcomers = new ArrayList<>();
        Score before = new Score();
        for (int first = 0; first < athletes; first += 24) {
          Map<Long, FlightModel> members = new HashMap<>();
          for (int i = first; i < first + 12; i++) {
            members.put(i + 1L, one(i, Scenario.STEADY, logging, Double.NaN, 0, Drill.MIXED).run(48).model());
          }
          SquadPrior squad = told ? SquadPrior.of(1, members) : SquadPrior.NONE;
          for (int i = first + 12; i < first + 24; i++) {
            Season s = one(i, Scenario.STEADY, logging, Double.NaN, 0, Drill.MIXED, squad);
            for (Drill d : Drill.MIXED) {
              s.ask(before, d);
            }
            newcomers.add(s.run(24));
          }
        }
        String of = logging + (told ? ", told by a squad" : ", alone");
        System.out.printf(Locale.ROOT, "newcomer, %s, no rep: %s%n", of, before.line());
        for (int reps : new int[] {6, 24}) {
          System.out.printf(Locale.ROOT, "newcomer, %s, after %d reps: %s%n", of, reps, sum(newcomers, x -> x.scored(reps)).line());
        }
      }
    }
  }

  private void never() {
    for (Logging logging : List.of(Logging.PRINTS, Logging.LANDING, Logging.MIXED)) {
      rung(logging, Drill.STANDING, 0, 2);
      rung(logging, Drill.TWOS, 2, 4);
      rung(logging, Drill.FEW, 4, 6);
      rung(logging, Drill.SIXES, 6, 8);
      Score drill = new Score();
      Rules rules = new Rules();
      for (Season x : run(Scenario.STEADY, logging, Double.NaN, 0, Drill.FEW, 36)) {
        x.askNever(drill, rules, Drill.of("RRLL RRLL", 4), Drill.FEW.get(0), 0);
        x.askNever(drill, rules, Drill.of("R x5", 4), Drill.FEW.get(1), 0);
      }
      System.out.printf(Locale.ROOT, "%s, a drill never tried: %s%n    rules: %s%n", logging, drill.line(), rules.line());
    }
  }

  private void rung(Logging logging, List<Drill> known, int from, int to) {
    Score score = new Score();
    Rules rules = new Rules();
    for (Season x : run(Scenario.STEADY, logging, Double.NaN, 0, known, 36)) {
      for (Drill d : known) {
        if (d.steps() == from) {
          x.askNever(score, rules, d.from(to), d, 1.05);
        }
      }
    }
    System.out.printf(Locale.ROOT, "%s, a rung never tried, from %d to %d: %s%n    rules: %s%n", logging, from, to, score.line(), rules.line());
  }
}
