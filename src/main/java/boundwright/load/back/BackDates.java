package boundwright.load.back;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.random.RandomGenerator;
import org.hipparchus.distribution.continuous.BetaDistribution;

/**
 * When a way back may reach the former week: a range, because nobody knows the days in between. In eight simulated ways of ten the day
 * lies in it. Each run draws the chances from what is known of them, then walks {@link ShortestWay} day by day: a planned day is missed,
 * clean, felt or too much by them. It says when, never that anybody may.
 *
 * @param earliest if no day is missed and nothing is felt
 * @param from tenth percentile of the runs
 * @param middle median
 * @param to ninetieth percentile; a run that is not over after {@value #MOST_DAYS} days counts as that long
 * @param unfinished share of runs not over by then, 0 to 1
 */
public record BackDates(LocalDate earliest, LocalDate from, LocalDate middle, LocalDate to, double unfinished) {
  /** Share of runs in the range. */
  public static final double SHARE = 0.8;
  /** No run is walked longer. */
  public static final int MOST_DAYS = 730;
  /** Runs (judgement: the ends of the range then move by a few days from seed to seed). */
  public static final int RUNS = 1000;

  /**
   * By simulation.
   *
   * @param at where it stands on the morning of {@code today}
   * @param random seeded by the caller
   */
  public static BackDates of(Stages stages, ShortestWay shortest, BackState at, LocalDate today, BackChances chances, RandomGenerator random) {
    int[] days = new int[RUNS];
    int over = 0;
    for (int i = 0; i < RUNS; i++) {
      days[i] = walk(stages, shortest, at.steppedOn(), today.getDayOfWeek(), drawn(chances, random), random);
      over += days[i] >= MOST_DAYS ? 1 : 0;
    }
    Arrays.sort(days);
    return new BackDates(
        today.plusDays(Math.min(MOST_DAYS, shortest.days(at, today.getDayOfWeek()))), today.plusDays(quantile(days, (1 - SHARE) / 2)),
        today.plusDays(quantile(days, 0.5)), today.plusDays(quantile(days, (1 + SHARE) / 2)), (double) over / RUNS);
  }

  private static int quantile(int[] sorted, double share) {
    return sorted[(int) Math.min(sorted.length - 1, Math.floor(share * sorted.length))];
  }

  /** Chances of one run. */
  private record Drawn(double clean, double tooMuch, double missed) {}

  private static Drawn drawn(BackChances c, RandomGenerator random) {
    return new Drawn(beta(c.ofClean(), random), beta(c.ofTooMuch(), random), beta(c.ofMissed(), random));
  }

  private static double beta(double[] ab, RandomGenerator random) {
    return new BetaDistribution(ab[0], ab[1]).inverseCumulativeProbability(random.nextDouble());
  }

  /** Days of one run. */
  private static int walk(Stages stages, ShortestWay shortest, BackState at, DayOfWeek today, Drawn chances, RandomGenerator random) {
    BackState s = at;
    DayOfWeek weekday = today;
    int days = 0;
    while (s.stage() < stages.count() && days < MOST_DAYS) {
      boolean loaded = shortest.loads(s, weekday) && random.nextDouble() >= chances.missed();
      Grade grade = Grade.CLEAN;
      if (loaded && random.nextDouble() >= chances.clean()) {
        grade = random.nextDouble() < chances.tooMuch() ? Grade.TOO_MUCH : Grade.FELT;
      }
      s = s.next(loaded, grade);
      weekday = weekday.plus(1);
      days++;
    }
    return days;
  }
}
