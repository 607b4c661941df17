package boundwright.load.account;

import boundwright.athlete.Athlete;
import boundwright.footfall.FlightKind;
import boundwright.quantity.RefusedException;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.hipparchus.util.FastMath;

/**
 * How long a foot stays on the ground, by the approach steps: {@code full + (standing - full) exp(-steps / 5)}, the fall of speed
 * towards a full run-up.
 *
 * <p>Standing of the defaults: judgement. Elite full jumps stay .139, .157 and .177 s for hop, step and jump (Perttunen et al. 2000,
 * read); standing bounds stay longer, and so do athletes who are not elite, so the defaults lie above. The share of hop, step and
 * jump among one another is taken from those three times, for jumps at the board only. The log's own clips replace the defaults:
 * {@link #learn}.
 *
 * @param standing_s from standing [s], 0.10 to 0.60
 * @param full_s from a full run-up [s], 0.08 to {@code standing_s}
 * @param factor of each number of steps, 0 to 26, learned from clips; 1 where none was measured
 */
public record ContactTimes(double standing_s, double full_s, List<Double> factor) {
  /** From standing .24 s, from a full run-up .17 s (judgement). */
  public static final ContactTimes DEFAULT = new ContactTimes(0.24, 0.17);

  private static final double STEPS_CONSTANT = 5;
  private static final double ELITE_HOP = 0.139;
  private static final double ELITE_STEP = 0.157;
  private static final double ELITE_JUMP = 0.177;
  /** Contacts that the setting outweighs, for all steps together and for one number of steps beyond that (judgement). */
  private static final double PRIOR_ALL = 6;

  private static final double PRIOR_ONE = 12;

  /** Refuses times that no foot stays. */
  public ContactTimes {
    factor = List.copyOf(factor);
    if (!(standing_s >= 0.10 && standing_s <= 0.60)) {
      throw new RefusedException("A contact time of " + standing_s + " s from standing is out of range: 0.10 to 0.60 s.");
    }
    if (!(full_s >= 0.08 && full_s <= standing_s)) {
      throw new RefusedException(
          "A contact time of " + full_s + " s from a full run-up is out of range: 0.08 s to that from standing, " + standing_s
              + " s. A faster foot leaves sooner.");
    }
    if (factor.size() != Athlete.MAX_STEPS + 1) {
      throw new IllegalArgumentException("a factor for each of 0 to " + Athlete.MAX_STEPS + " steps");
    }
  }

  /** Nothing learned yet. */
  public ContactTimes(double standing_s, double full_s) {
    this(standing_s, full_s, Collections.nCopies(Athlete.MAX_STEPS + 1, 1.0));
  }

  /**
   * A contact that was timed.
   *
   * @param steps of the approach, 0 to 26
   * @param seconds on the ground [s]
   */
  public record Timed(int steps, double seconds) {}

  /**
   * The times of an athlete whose contacts were timed in clips. Shares multiply, so means are taken of logarithms; few contacts move
   * them little, many make the setting unimportant. Times outside .05 to 1 s are passed over.
   */
  public ContactTimes learn(List<Timed> timed) {
    double sum = 0;
    int n = 0;
    Map<Integer, double[]> bySteps = new TreeMap<>();
    for (Timed t : timed) {
      if (t.seconds() >= 0.05 && t.seconds() <= 1) {
        double log = FastMath.log(t.seconds() / usual(t.steps()));
        sum += log;
        n++;
        double[] s = bySteps.computeIfAbsent(t.steps(), k -> new double[2]);
        s[0] += log;
        s[1]++;
      }
    }
    double all = sum / (n + PRIOR_ALL);
    List<Double> out = new ArrayList<>(Collections.nCopies(Athlete.MAX_STEPS + 1, FastMath.exp(all)));
    bySteps.forEach((steps, s) -> out.set(steps, FastMath.exp(all + (s[0] - s[1] * all) / (s[1] + PRIOR_ONE))));
    return new ContactTimes(standing_s, full_s, out);
  }

  private double usual(int steps) {
    return full_s + (standing_s - full_s) * FastMath.exp(-steps / STEPS_CONSTANT);
  }

  /** A contact of a bounding drill [s]. */
  public double bounding(int steps) {
    return usual(steps) * factor.get(steps);
  }

  /** A contact of a jump at the board [s], by the flight that it takes off for. */
  public double jump(int steps, FlightKind takesOffFor) {
    double share =
        switch (takesOffFor) {
          case HOP -> ELITE_HOP;
          case BOUND -> ELITE_STEP;
          case JUMP -> ELITE_JUMP;
        };
    return bounding(steps) * share / ELITE_STEP;
  }
}
