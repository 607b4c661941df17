package boundwright.readiness;

import boundwright.athlete.Level;
import boundwright.load.Guard;
import boundwright.load.GuardLimits;
import boundwright.load.LegCare;
import boundwright.load.Season;
import boundwright.load.Verdict;
import boundwright.load.account.DayLoad;
import boundwright.readiness.GateAnswer.Decision;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/**
 * Prints the gate's operating characteristic: of athletes with a true clean share, how many are passed within 30 reps.
 *
 * <p>Run: {@code mvn -q test-compile dependency:build-classpath -Dmdep.outputFile=target/cp && java -cp
 * target/test-classes:target/classes:$(cat target/cp) boundwright.readiness.GateTable}
 */
public final class GateTable {
  private static final LocalDate FIRST = LocalDate.of(2026, 5, 1);
  private static final Verdict CLEAR =
      new Guard(GuardLimits.DEFAULT, Season.IN_SEASON)
          .judge(Level.ADVANCED, LegCare.NONE, List.of(), new DayLoad(FIRST, List.of()));

  private GateTable() {}

  /** Share of {@code athletes} passed within 30 reps, six a day every third day, asked after every rep. */
  static double passed(double cleanShare, int athletes, long seed) {
    Gate gate = new Gate(GateRules.DEFAULT, SequentialTest.USUAL);
    SpeedUse used = new SpeedUse(0.2, 0.99, 12);
    Random r = new Random(seed);
    int passed = 0;
    for (int a = 0; a < athletes; a++) {
      List<GateRep> reps = new ArrayList<>();
      for (int i = 0; i < 30; i++) {
        LocalDate day = FIRST.plusDays(3L * (i / 6));
        reps.add(new GateRep(day, r.nextDouble() < cleanShare, Double.NaN));
        if (i >= 11 && gate.answer(DrillFamily.ALTERNATE, 4, reps, used, CLEAR, day).decision() == Decision.ADD_TWO_STEPS) {
          passed++;
          break;
        }
      }
    }
    return passed / (double) athletes;
  }

  /** Prints the table. */
  public static void main(String[] args) {
    System.out.println("true clean share   passed within 30 reps (10000 athletes, seed 1; own output)");
    for (int p = 50; p <= 100; p += 5) {
      System.out.printf("%.2f               %.3f%n", p / 100.0, passed(p / 100.0, 10_000, 1));
    }
  }
}
