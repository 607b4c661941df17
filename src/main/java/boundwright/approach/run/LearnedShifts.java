package boundwright.approach.run;

import boundwright.approach.weather.Weather;
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
 * @param usualWind tail wind of the known runs on average [m/s]: what the start mark is for
 */
public record LearnedShifts(Estimate wind_m, Estimate tiredness_m, boolean windTold, boolean tirednessTold, int runs, double usualWind) {
  private static final double WIND_SD = 0.06;
  private static final double TIRED_SD = 0.03;
  private static final double NOISE = 0.12;
  private static final double USUAL_LENGTH_SD = 3;

  /**
   * A run-through in what is known of its wind.
   *
   * @param run what was measured
   * @param weather its own, or the day's
   */
  public record InWind(RunThrough run, Weather weather) {}

  /**
   * Learned from run-throughs of any number of steps; an unknown wind or tiredness counts as the mean of the known, and the less sure of its
   * wind, the less a run tells.
   */
  public static LearnedShifts inWinds(List<InWind> all) {
    List<InWind> runs = all.stream().filter(r -> !Double.isNaN(r.run.gap_m())).toList();
    int[] steps = runs.stream().mapToInt(r -> r.run.steps()).distinct().sorted().toArray();
    int n = steps.length + 2;
    double[] mean = new double[n];
    double[] sd = new double[n];
    for (int g = 0; g < steps.length; g++) {
      int count = steps[g];
      mean[g] = runs.stream().filter(r -> r.run.steps() == count).mapToDouble(r -> run(r.run)).average().orElse(0);
      sd[g] = USUAL_LENGTH_SD;
    }
    sd[n - 2] = WIND_SD;
    sd[n - 1] = TIRED_SD;
    double usualWind = runs.stream().filter(r -> r.weather.knowsWind()).mapToDouble(r -> r.weather.believed().mean()).average().orElse(0);
    double usualTired = usualTiredness(runs);
    LinearBelief b = new LinearBelief(mean, sd, NOISE, 3);
    for (InWind r : runs) {
      double[] x = new double[n];
      for (int g = 0; g < steps.length; g++) {
        x[g] = steps[g] == r.run.steps() ? 1 : 0;
      }
      Double t = r.run.tiredness();
      double unsure = r.weather.knowsWind() ? WIND_SD * r.weather.believed().sd() / NOISE : 0;
      x[n - 2] = r.weather.knowsWind() ? r.weather.believed().mean() - usualWind : 0;
      x[n - 1] = t == null ? 0 : t - usualTired;
      b.tell(x, run(r.run), 1 + unsure * unsure);
    }
    double[] wind = new double[n];
    double[] tired = new double[n];
    wind[n - 2] = 1;
    tired[n - 1] = 1;
    Estimate ew = b.estimate(wind);
    Estimate et = b.estimate(tired);
    return new LearnedShifts(ew, et, ew.told(), et.told(), runs.size(), usualWind);
  }

  private static double run(RunThrough r) {
    return r.startMark_m() - r.gap_m();
  }

  private static double usualTiredness(List<InWind> runs) {
    double sum = 0;
    int n = 0;
    for (InWind r : runs) {
      Double v = r.run.tiredness();
      if (v != null) {
        sum += v;
        n++;
      }
    }
    return n == 0 ? 0 : sum / n;
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

  /**
   * How far to move the start mark for a wind, + is back: nothing while the data cannot tell.
   *
   * @param wind likely tail wind [m/s]
   * @param give the wind lies so near to that nine times in ten [m/s]
   */
  public Estimate moveFor(double wind, double give) {
    if (!windTold) {
      return new Estimate(0, 0, 0);
    }
    double more = wind - usualWind;
    double middle = wind_m.p50() * more;
    double half = Math.hypot(wind_m.halfWidth() * more, wind_m.p50() * give);
    return new Estimate(middle - half, middle, middle + half);
  }
}
