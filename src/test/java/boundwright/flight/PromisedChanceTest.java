package boundwright.flight;

import static org.assertj.core.api.Assertions.assertThat;

import boundwright.athlete.Level;
import boundwright.athlete.Surface;
import boundwright.footfall.Sequence;
import boundwright.quantity.Estimate;
import boundwright.runway.CoachSettings;
import boundwright.runway.InHundred;
import boundwright.runway.LogNext;
import boundwright.runway.MarkAdvice;
import boundwright.runway.MarkAdvisor;
import boundwright.runway.MarkSettings;
import boundwright.runway.Window;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import org.junit.jupiter.api.Test;

/**
 * Is the chance that is shown kept by athletes who jump by another process ({@link SimulatedAthlete})? Every footprint logged,
 * 20 reps of six drills over four days, then 20 reps on ten other days, each from the best mark; and, where marks work, from
 * the two ends of what works. Own output.
 */
class PromisedChanceTest {
  private static final long SEED = 12_000;
  private static final int ATHLETES = 14;
  private static final List<Level> LEVELS = List.of(Level.BEGINNER, Level.INTERMEDIATE, Level.ADVANCED);
  private static final List<String> DRILLS = List.of("RRL x2", "RL x5", "R x5", "RRLL RRLL", "RRL", "RL");
  private static final List<Integer> STEPS = List.of(4, 4, 2, 4, 6, 2);
  private static final Estimate FIVE = new Estimate(5, 5, 5);
  /** Lower ends of the groups of shown chances, in reps of a hundred. */
  private static final int[] GROUPS = {0, 50, 80, 90, 97};

  @Test
  void whatIsShownIsKept() {
    int[] reps = new int[GROUPS.length];
    int[] counted = new int[GROUPS.length];
    double[] shown = new double[GROUPS.length];
    int ends = 0;
    int countedAtEnds = 0;
    for (int a = 0; a < ATHLETES; a++) {
      for (int l = 0; l < LEVELS.size(); l++) {
        long seed = SEED + 10L * a + l;
        SimulatedAthlete athlete = new SimulatedAthlete(LEVELS.get(l), seed);
        Random choose = new Random(seed);
        FlightModel m = FlightModel.prior(athlete.profile());
        LocalDate day = SimulatedAthlete.FIRST_DAY;
        for (int r = 0; r < 40; r++) {
          boolean learns = r < 20;
          if (r % (learns ? 5 : 2) == 0) {
            day = day.plusDays(3);
            athlete.newDay();
          }
          int k = choose.nextInt(DRILLS.size());
          Sequence s = Sequence.parse(DRILLS.get(k));
          double[] p = athlete.jump(s, STEPS.get(k));
          if (learns) {
            m = m.learn(SimulatedAthlete.measured(day, s, STEPS.get(k), p));
            continue;
          }
          MarkAdvice advice =
              MarkAdvisor.advise(m, new RunUp(FIVE, FIVE, 1), s, STEPS.get(k), Surface.TRACK, CoachSettings.DEFAULT, day);
          int group = 0;
          while (group + 1 < GROUPS.length && advice.inHundred() >= GROUPS[group + 1]) {
            group++;
          }
          reps[group]++;
          shown[group] += advice.inHundred();
          counted[group] += counts(p, advice.markToSand_m()) ? 1 : 0;
          Window w = advice.window();
          if (w != null) {
            ends += 2;
            countedAtEnds += (counts(p, w.min_m()) ? 1 : 0) + (counts(p, w.max_m()) ? 1 : 0);
          }
        }
      }
    }
    for (int g = 0; g < GROUPS.length; g++) {
      double kept = counted[g] / (double) reps[g];
      double said = shown[g] / reps[g] / 100;
      System.out.printf(Locale.ROOT, "shown from %d in 100 (mean %.1f): %.1f of 100 counted, %d reps, seed %d%n", GROUPS[g], 100 * said, 100 * kept, reps[g], SEED);
      double error = Math.sqrt(said * (1 - said) / reps[g]);
      assertThat(reps[g]).isGreaterThan(10);
      assertThat(kept).as("shown from %s in 100, seed %s", GROUPS[g], SEED).isGreaterThan(said - 3 * error - 0.01);
    }
    double atEnds = countedAtEnds / (double) ends;
    System.out.printf(Locale.ROOT, "at the ends of what works: %.1f of 100 counted, %d marks%n", 100 * atEnds, ends);
    assertThat(atEnds).as("at the ends, seed %s", SEED).isGreaterThan(InHundred.asked(MarkSettings.DEFAULT.chance()) / 100.0 - 0.03);
  }

  /** Four sessions of six taps from the best mark; with the measures that are asked for; with only the moved tapes followed. */
  @Test
  void whoMeasuresWhenAskedHasMoreRepsThatCount() {
    int[] asked = new int[3];
    double[] counted = new double[3];
    Sequence s = Sequence.parse("RRL x2");
    for (int follows = 0; follows < 3; follows++) {
      for (int a = 0; a < 3 * ATHLETES; a++) {
        SimulatedAthlete athlete = new SimulatedAthlete(LEVELS.get(a % LEVELS.size()), SEED + 10L * a);
        FlightModel m = FlightModel.prior(athlete.profile());
        LocalDate day = SimulatedAthlete.FIRST_DAY;
        Double again = null;
        for (int r = 0; r < 24; r++) {
          if (r % 6 == 0) {
            day = day.plusDays(3);
            athlete.newDay();
            again = null;
          }
          double mark =
              MarkAdvisor.advise(m, new RunUp(FIVE, FIVE, 1), s, 4, Surface.TRACK, CoachSettings.DEFAULT, day).markToSand_m();
          LogNext next =
              follows == 0 || again != null ? null : MarkAdvisor.whatToLog(m, s, 4, Surface.TRACK, CoachSettings.DEFAULT, day);
          Double tape = next == null ? again : next.tapeToSand_m();
          again = next == null ? null : tape;
          boolean measures = follows == 1 && next != null && tape == null;
          if (follows == 2 && tape != null) {
            mark = tape;
          }
          asked[follows] += measures || (follows == 2 && tape != null) ? 1 : 0;
          double[] p = athlete.jump(s, 4);
          counted[follows] += counts(p, mark) ? 1 : 0;
          List<Double> last = List.of(Double.NaN, Double.NaN, Double.NaN, Double.NaN, p[5]);
          m =
              m.learn(
                  new Rep(0, 1, day, s, 4, Surface.TRACK, measures ? last : List.of(), null, SimulatedAthlete.outcome(s, p, mark), mark, List.of()));
        }
      }
    }
    double reps = 3 * ATHLETES * 24;
    System.out.printf(
        Locale.ROOT,
        "taps alone: %.1f of 100 counted; with %d footprints measured when asked: %.1f; with %d taps from a moved tape: %.1f; %.0f reps, seed %d%n",
        100 * counted[0] / reps, asked[1], 100 * counted[1] / reps, asked[2], 100 * counted[2] / reps, reps, SEED);
    assertThat(asked[1]).as("footprints asked for, seed %s", SEED).isBetween(3 * ATHLETES / 2, 12 * ATHLETES);
    assertThat(counted[1]).as("seed %s", SEED).isGreaterThan(counted[0] + 0.02 * reps);
    assertThat(counted[2]).as("moved tapes cost next to nothing, seed %s", SEED).isGreaterThan(counted[0] - 0.02 * reps);
  }

  private static boolean counts(double[] p, double mark) {
    int n = p.length - 1;
    return p[n] >= mark + MarkSettings.DEFAULT.sandMargin_m() && p[n - 1] <= mark - MarkSettings.DEFAULT.clearMargin_m();
  }
}
