package boundwright.meet.chance;

import boundwright.inference.Normal;
import boundwright.quantity.Limits;
import java.util.random.RandomGenerator;

/** What may come of one attempt of an athlete whose usual distance in a meet is known: a foul, or an official distance about that. */
public sealed interface AttemptLaw {
  /** Fouls in Olympic long-jump finals 2004-2020 (29.6 %; memory): what is taken while the athlete's own are not known. */
  double USUAL_FOULS = 0.30;

  /**
   * One attempt.
   *
   * @param usual_m the mean of the athlete's legal attempts that day and in that wind [m]
   * @return official distance [m], or {@link Double#NaN} for a foul
   */
  double attempt(double usual_m, RandomGenerator random);

  /** Chance of a foul. */
  double fouls();

  /**
   * As the aim sees an attempt: the board gap is normal, a foul below 0, and the effective distance normal and independent of it; official is
   * effective less gap.
   *
   * @param gapMean_m mean board gap [m], + behind the line
   * @param gapSd_m its spread [m]
   * @param effectiveSd_m spread of the effective distance [m]
   */
  record AsInAim(double gapMean_m, double gapSd_m, double effectiveSd_m) implements AttemptLaw {
    @Override
    public double attempt(double usual_m, RandomGenerator random) {
      double gap = gapMean_m + gapSd_m * random.nextGaussian();
      double effective = usual_m + legalGap() + effectiveSd_m * random.nextGaussian();
      return gap < 0 ? Double.NaN : effective - gap;
    }

    @Override
    public double fouls() {
      return Normal.below(-gapMean_m / gapSd_m);
    }

    /** Mean of the gap of a legal attempt [m]. */
    private double legalGap() {
      return Normal.meanAbove0(gapMean_m, gapSd_m);
    }
  }

  /**
   * A foul so often, else a normal distance: where the board has not told enough for the aim.
   *
   * @param fouls chance of a foul, 0 to 1
   * @param sd_m spread of a legal attempt [m]
   */
  record Plain(double fouls, double sd_m) implements AttemptLaw {
    /** Refuses what is no chance. */
    public Plain {
      Limits.within("foul chance", fouls, 0, 1, "", "0.3 is usual.");
    }

    @Override
    public double attempt(double usual_m, RandomGenerator random) {
      boolean foul = random.nextDouble() < fouls;
      double distance = usual_m + sd_m * random.nextGaussian();
      return foul ? Double.NaN : distance;
    }
  }
}
