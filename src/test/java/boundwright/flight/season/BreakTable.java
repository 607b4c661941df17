package boundwright.flight.season;

import boundwright.flight.FlightModel;
import boundwright.flight.SquadPrior;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/**
 * The first five sessions after four weeks off with the flights of one leg 14 % shorter: cover of the 90 % intervals, before anything was
 * learned of breaks and with a squad of twelve whose members had a break of their own before. Own output on invented athletes.
 *
 * <p>{@code java -cp target/test-classes:target/classes:... boundwright.flight.season.BreakTable 24 810000}
 */
final class BreakTable {
  static final int MEMBERS = 12;

  private final LearningTable table;
  private final int athletes;

  BreakTable(int athletes, long seed, double spread) {
    this.table = new LearningTable(athletes + MEMBERS, seed, spread);
    this.athletes = athletes;
  }

  /** The squad after a break of this kind; the athletes of {@link #firstFive} are not in it. */
  SquadPrior squad(Scenario theirs, Logging logging) {
    Map<Long, FlightModel> members = new HashMap<>();
    for (int i = 0; i < MEMBERS; i++) {
      members.put(i + 2L, table.one(athletes + i, theirs, logging, Double.NaN, 0, Drill.FEW).run(1000).model());
    }
    return SquadPrior.of(1, members);
  }

  /** Scores of the first five sessions back. */
  Score firstFive(Logging logging, SquadPrior squad) {
    List<Season> out = new ArrayList<>();
    for (int i = 0; i < athletes; i++) {
      out.add(table.one(i, Scenario.ONE_LEG_FOUR_WEEKS, logging, Double.NaN, 0, Drill.FEW, squad).run(1000));
    }
    return LearningTable.sum(out, s -> s.firstFive);
  }

  /** Arguments: athletes, seed. */
  public static void main(String... arguments) {
    int athletes = Integer.parseInt(arguments[0]);
    long seed = Long.parseLong(arguments[1]);
    for (Logging logging : List.of(Logging.PRINTS, Logging.LANDING, Logging.MIXED)) {
      Score before = new Score();
      Score same = new Score();
      Score other = new Score();
      for (double spread : new double[] {LearningTable.STEADY, LearningTable.USUAL}) {
        BreakTable t = new BreakTable(athletes, seed, spread);
        Score b = t.firstFive(logging, SquadPrior.NONE);
        Score s = t.firstFive(logging, t.squad(Scenario.ONE_LEG_FOUR_WEEKS, logging));
        Score o = t.firstFive(logging, t.squad(Scenario.FOUR_WEEKS_OFF, logging));
        System.out.printf(Locale.ROOT, "%s spread %.1f%n  alone          %s%n  squad, one leg %s%n  squad, both    %s%n", logging, spread, b.line(), s.line(), o.line());
        before.add(b);
        same.add(s);
        other.add(o);
      }
      System.out.printf(
          Locale.ROOT, "%s seed %d: alone %.3f / %.3f; squad, one leg %.3f / %.3f; squad, both %.3f / %.3f%n", logging, seed, before.landing(), before.last(), same.landing(),
          same.last(), other.landing(), other.last());
    }
  }
}
