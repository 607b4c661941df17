package boundwright.season.mend;

import boundwright.season.Climb;
import boundwright.season.MadeUpSeason;
import boundwright.season.SeasonInput;
import boundwright.season.SeasonPlan;
import boundwright.season.solve.SeasonPlanner;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Random;

/** Sessions that are missed at random from a published plan: how many days the mend changes, and how long it takes. */
public final class MendTrial {
  private MendTrial() {}

  /** Athletes, weeks, seconds of planning, missed sessions, seed. */
  public static void main(String[] args) {
    int athletes = Integer.parseInt(args[0]);
    int weeks = Integer.parseInt(args[1]);
    int cases = Integer.parseInt(args[3]);
    long seed = Long.parseLong(args[4]);
    SeasonInput input = MadeUpSeason.of(athletes, weeks, seed);
    List<List<Climb>> climbs = MadeUpSeason.climbs(input, 8);
    SeasonPlan plan = new SeasonPlanner(input, climbs, null, seed).plan(Duration.ofSeconds(Integer.parseInt(args[2])), t -> {}).plan();
    Random random = new Random(seed);
    List<Double> ms = new ArrayList<>();
    int[] changed = new int[200];
    int refused = 0;
    for (int i = 0; i < cases; i++) {
      MissedSession missed = MissedSession.of(plan, random);
      long[] most = new long[1];
      Mender mender = new Mender(input, climbs, plan, missed.done(), () -> System.nanoTime() > most[0]);
      long start = System.nanoTime();
      most[0] = start + 1_200_000_000L;
      Mender.Mended m = mender.mend();
      ms.add((System.nanoTime() - start) / 1e6);
      changed[Math.min(199, m.differences().size())]++;
      refused += m.refused().size() + (int) m.left();
      if (m.differences().size() > 3 || m.left() > 0) {
        System.out.printf(Locale.ROOT, "  %s %s: %d days, left %d, %.0f ms%n", missed.year().athlete(), missed.day().date(), m.differences().size(), m.left(), ms.get(ms.size() - 1));
      }
    }
    Collections.sort(ms);
    System.out.printf(
        Locale.ROOT, "%d missed: median %.1f ms, 90 %% %.1f, most %.1f; refused %d; changed days", cases, ms.get(cases / 2), ms.get(cases * 9 / 10),
        ms.get(cases - 1), refused);
    for (int k = 0; k < 200; k++) {
      if (changed[k] > 0) {
        System.out.printf(" %d:%d", k, changed[k]);
      }
    }
    System.out.println();
  }
}
