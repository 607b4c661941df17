package boundwright.runway;

import boundwright.athlete.Athlete;
import boundwright.athlete.Level;
import boundwright.athlete.Profile;
import boundwright.athlete.Surface;
import boundwright.flight.FlightModel;
import boundwright.flight.Outcome;
import boundwright.flight.Rep;
import boundwright.flight.RunUp;
import boundwright.footfall.Foot;
import boundwright.footfall.Sequence;
import boundwright.quantity.Estimate;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/**
 * First days of {@link Newcomer}s with nothing but taps, for {@code BeginningTest}; and, run by itself, the table of
 * {@code docs/first-day.md}: {@code bench/first-day [athletes of each level] [seed]}.
 */
public final class FirstDays {
  static final int REPS = 6;
  static final LocalDate DAY = LocalDate.of(2026, 3, 2);
  private static final Estimate NONE = new Estimate(0, 0, 0);
  private static final RunUp RUN_UP = new RunUp(NONE, NONE, 0);

  /** How the tape is laid. */
  enum Laid {
    /** As advised. */
    BEGINNING,
    /** As advised, every move as large as the model says. */
    WHOLE_MOVES,
    /** Where a rep counts most likely, as before there were beginnings. */
    BEST_OF_BEFORE
  }

  /** What was seen of one drill. */
  static final class Seen {
    int days;
    final int[] in = new int[REPS];
    final double[] told = new double[REPS];
    final List<Double> firstMoves = new ArrayList<>();
    /** The largest move after one tap, as a share of the last flight expected. */
    double largestMove;
    int worksAfterThree;
    /** By what is said of the chance: reps, reps in the sand, sum of chances. */
    final Map<String, double[]> byOdds = new TreeMap<>();

    double in(int rep) {
      return in[rep] / (double) days;
    }

    double told(int rep) {
      return told[rep] / days;
    }
  }

  private FirstDays() {}

  static Seen of(Laid laid, Sequence drill, int steps, int athletes, long seed) {
    Seen seen = new Seen();
    for (Level level : Level.KNOWN) {
      FlightModel before =
          FlightModel.prior(new Profile(new Athlete(1, "Newcomer", level, Foot.RIGHT, steps), List.of(), List.of()));
      Double first = MarkAdvisor.firstMark(before, drill, steps, Surface.TRACK, CoachSettings.DEFAULT, DAY);
      for (int a = 0; a < athletes; a++) {
        day(seen, laid, drill, steps, before, first, new Newcomer(level, new Random(seed + 31L * a + Level.KNOWN.indexOf(level))));
      }
    }
    return seen;
  }

  private static void day(Seen seen, Laid laid, Sequence drill, int steps, FlightModel before, @Nullable Double first, Newcomer athlete) {
    FlightModel model = before;
    seen.days++;
    double mark = 0;
    for (int r = 0; r < REPS; r++) {
      MarkAdvice advice =
          MarkAdvisor.advise(
              model, RUN_UP, drill, steps, Surface.TRACK, CoachSettings.DEFAULT, DAY, laid == Laid.BEGINNING ? first : null);
      MarkChances counts = MarkChances.of(advice.forecast(), advice.settings());
      MarkChances lands = counts.withoutMargins();
      double lay = Math.round(100 * (laid == Laid.BEST_OF_BEFORE ? counts.best() : advice.markToSand_m())) / 100.0;
      if (r == 1) {
        seen.firstMoves.add(Math.abs(lay - mark));
        seen.largestMove = Math.max(seen.largestMove, Math.abs(lay - mark) / (lands.landing() - lands.lastContact()));
      }
      if (r == 3 && advice.window() != null) {
        seen.worksAfterThree++;
      }
      mark = lay;
      double[] p = athlete.rep(drill, steps);
      int n = drill.size();
      Outcome outcome = p[n - 1] > mark ? Outcome.LATE : p[n] < mark ? Outcome.SHORT : Outcome.IN;
      double chance = lands.counts(mark);
      seen.told[r] += chance;
      seen.in[r] += outcome == Outcome.IN ? 1 : 0;
      Beginning b = advice.beginning();
      if (b != null) {
        double[] of = seen.byOdds.computeIfAbsent(b.odds(), k -> new double[3]);
        of[0]++;
        of[1] += outcome == Outcome.IN ? 1 : 0;
        of[2] += chance;
      }
      model = model.learn(new Rep(0, 1, DAY, drill, steps, Surface.TRACK, List.of(), null, outcome, mark, List.of()));
    }
  }

  /** Prints the table. */
  public static void main(String[] args) {
    int athletes = args.length > 0 ? Integer.parseInt(args[0]) : 100;
    long seed = args.length > 1 ? Long.parseLong(args[1]) : 1300;
    System.out.printf("%d athletes of each level, seed %d%n", athletes, seed);
    System.out.println("| drill | tape | told, rep 1 | in the sand, reps 1 to 6 | move after one tap, mean / 9 in 10 / largest [m] | of the last flight | works after 3 |");
    System.out.println("| --- | --- | --- | --- | --- | --- | --- |");
    for (String letters : List.of("RRL", "RRL x2", "RL x5")) {
      for (int steps : new int[] {0, 4}) {
        for (Laid laid : Laid.values()) {
          Seen s = of(laid, Sequence.parse(letters), steps, athletes, seed);
          double[] moves = s.firstMoves.stream().mapToDouble(d -> d).sorted().toArray();
          System.out.printf(
              "| %s, %d steps | %s | %.2f | %.2f %.2f %.2f %.2f %.2f %.2f | %.2f / %.2f / %.2f | %.2f | %.2f |%n",
              letters, steps, laid.name().toLowerCase(java.util.Locale.ROOT).replace('_', ' '), s.told(0), s.in(0), s.in(1), s.in(2), s.in(3),
              s.in(4), s.in(5), java.util.Arrays.stream(moves).average().orElse(0), moves[moves.length * 9 / 10], moves[moves.length - 1],
              s.largestMove, s.worksAfterThree / (double) s.days);
          if (laid == Laid.BEGINNING) {
            s.byOdds.forEach((k, v) -> System.out.printf("    %s: told %.3f, in the sand %.3f of %.0f%n", k, v[2] / v[0], v[1] / v[0], v[0]));
          }
        }
      }
    }
  }
}
