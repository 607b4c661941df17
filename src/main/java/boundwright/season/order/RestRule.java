package boundwright.season.order;

import boundwright.quantity.Limits;

/**
 * The least rest after a rep: the larger of a multiple of the seconds it took and a least by approach steps. Work to rest of 1:5 to 1:10
 * was read in the literature (Potach and Chu, second-hand); the minutes by approach steps are judgement. All are settings.
 *
 * @param timesWork rest for each second of work, 1 to 30
 * @param standing_s least rest from standing to 3 steps [s]
 * @param four_s from 4 to 7 steps [s]
 * @param eight_s from 8 to 11 steps [s]
 * @param full_s from 12 steps on, the full run [s]
 */
public record RestRule(double timesWork, int standing_s, int four_s, int eight_s, int full_s) {
  /** 1:5 (read); 1, 2, 3 and 5 minutes (judgement). */
  public static final RestRule DEFAULT = new RestRule(5, 60, 120, 180, 300);
  private static final int MOST_S = 1200;

  /** Refuses what no session rests. */
  public RestRule {
    Limits.within("rest", timesWork, 1, 30, "times the work", "5 is usual.");
    seconds(standing_s);
    seconds(four_s);
    seconds(eight_s);
    seconds(full_s);
  }

  private static void seconds(int s) {
    Limits.within("rest", s, 0, MOST_S, "s", "Enter seconds.");
  }

  /** The least rest [s] after a rep from {@code steps} approach steps that took {@code work_s} seconds. */
  public int after(int steps, int work_s) {
    int least = steps >= 12 ? full_s : steps >= 8 ? eight_s : steps >= 4 ? four_s : standing_s;
    return Math.max(least, (int) Math.ceil(timesWork * work_s));
  }
}
