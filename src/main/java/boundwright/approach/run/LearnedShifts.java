package boundwright.approach.run;

import boundwright.inference.LinearBelief;
import boundwright.quantity.Estimate;
import java.util.List;

/**
 * How this athlete's run-up changes with wind and tiredness: a regression of start-to-toe distance on both, drawn
 * towards no change (shrinkage; prior +-6 cm per m/s and +-3 cm per point of tiredness, judgement). Nothing printed
 * anywhere is used: it is silent until this athlete's runs tell.
 *
 * @param wind_m start-to-toe distance won per m/s of tail wind [m]
 * @param tiredness_m per point of tiredness [m]
 * @param windTold whether the 90 % interval leaves 0 out
 * @param tirednessTold the same
 * @param runs with a board gap that were used
 */
public record LearnedShifts(Estimate wind_m, Estimate tiredness_m, boolean windTold, boolean tirednessTold, int runs) {
  private static final double WIND_SD = 0.06;
  private static final double TIRED_SD = 0.03;
  private static final double NOISE = 0.12;
  private static final double USUAL_LENGTH_SD = 3;

  /** Learned from run-throughs of any number of steps; an unknown wind or tiredness counts as the mean of the known. */
  public static LearnedShifts of(List<RunThrough> all) {
    List<RunThrough> runs = all.stream().filter(r -> !Double.isNaN(r.gap_m())).toList();
    int[] steps = runs.stream().mapToInt(RunThrough::steps).distinct().sorted().toArray();
    int n = steps.length + 2;
    double[] mean = new double[n];
    double[] sd = new double[n];
    for (int g = 0; g < steps.length; g++) {
      int count = steps[g];
      mean[g] = runs.stream().filter(r -> r.steps() == count).mapToDouble(LearnedShifts::run).average().orElse(0);
      sd[g] = USUAL_LENGTH_SD;
    }
    sd[n - 2] = WIND_SD;
    sd[n - 1] = TIRED_SD;
    double usualWind = usual(runs, true);
    double usualTired = usual(runs, false);
    LinearBelief b = new LinearBelief(mean, sd, NOISE, 3);
    for (RunThrough r : runs) {
      double[] x = new double[n];
      for (int g = 0; g < steps.length; g++) {
        x[g] = steps[g] == r.steps() ? 1 : 0;
      }
      Double w = r.wind();
      Double t = r.tiredness();
      x[n - 2] = w == null ? 0 : w - usualWind;
      x[n - 1] = t == null ? 0 : t - usualTired;
      b.tell(x, run(r), 1);
    }
    double[] wind = new double[n];
    double[] tired = new double[n];
    wind[n - 2] = 1;
    tired[n - 1] = 1;
    Estimate ew = b.estimate(wind);
    Estimate et = b.estimate(tired);
    return new LearnedShifts(ew, et, told(ew), told(et), runs.size());
  }

  private static double run(RunThrough r) {
    return r.startMark_m() - r.gap_m();
  }

  private static double usual(List<RunThrough> runs, boolean wind) {
    double sum = 0;
    int n = 0;
    for (RunThrough r : runs) {
      Double v = wind ? r.wind() : r.tiredness();
      if (v != null) {
        sum += v;
        n++;
      }
    }
    return n == 0 ? 0 : sum / n;
  }

  private static boolean told(Estimate e) {
    return e.p05() > 0 || e.p95() < 0;
  }

  /**
   * How far to move the start mark for a change from the usual [m], + is back; only what is told counts.
   *
   * @param moreWind tail wind above the usual [m/s]
   * @param moreTired tiredness above the usual
   */
  public double moveStart_m(double moreWind, double moreTired) {
    return (windTold ? wind_m.p50() * moreWind : 0) + (tirednessTold ? tiredness_m.p50() * moreTired : 0);
  }
}
