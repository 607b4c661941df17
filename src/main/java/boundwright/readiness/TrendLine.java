package boundwright.readiness;

import boundwright.quantity.Estimate;

/**
 * One athlete's line in a squad's trend, pooled in part towards the squad's line.
 *
 * @param athlete number of the athlete
 * @param scores how many scores it rests on
 * @param levelDeviation own level at time 0 less the squad's
 * @param slopeDeviation own slope less the squad's
 * @param deviationIfSquadKnown error of the two deviations, the squad's line taken as known (conditional)
 * @param deviation error of the two deviations, that of the squad's line included
 * @param level own level at time 0
 * @param slope own change per unit of time
 * @param own error of own level and slope, that of the squad's line included
 * @param residualVariance variance of a single score about the line
 */
public record TrendLine(
    long athlete,
    int scores,
    double levelDeviation,
    double slopeDeviation,
    Errors deviationIfSquadKnown,
    Errors deviation,
    double level,
    double slope,
    Errors own,
    double residualVariance) {
  /**
   * Errors of a level and a slope.
   *
   * @param level standard error of the level at time 0
   * @param slope standard error of the slope
   * @param covariance of the two errors
   */
  public record Errors(double level, double slope, double covariance) {
    static Errors of(RemlDeviance.Sym v) {
      return new Errors(Math.sqrt(Math.max(0, v.a())), Math.sqrt(Math.max(0, v.c())), v.b());
    }

    double varianceAt(double time) {
      return Math.max(0, level * level + 2 * time * covariance + time * time * slope * slope);
    }
  }

  /** Where the athlete's own line is at this time, with its 90 % interval: the band of a plot. */
  public Estimate at(double time) {
    return Estimate.normal(level + slope * time, Math.sqrt(own.varianceAt(time)));
  }

  /** What a single score at this time would be, the error of the test included. */
  public Estimate nextScore(double time) {
    return Estimate.normal(level + slope * time, Math.sqrt(own.varianceAt(time) + residualVariance));
  }
}
