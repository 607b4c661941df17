package boundwright.clip.propose;

import boundwright.clip.track.BodyPoint;
import boundwright.clip.track.BodySize;
import boundwright.clip.track.Spot;
import boundwright.clip.track.Track;

/** A first guess of the step's period: after which time the spread of the legs repeats. Exchanged legs do not change the spread. */
final class StepPeriod {
  private static final double SHORTEST_S = 0.18;
  private static final double FEWEST_FRAMES = 4;
  /** The first peak this near to the highest is taken, or every second step would do as well. */
  private static final double AS_HIGH = 0.75;

  private StepPeriod() {}

  /** [s]; NaN where nothing repeats. */
  static double of(Track track) {
    double step = track.medianStep();
    int[] range = StepSamples.range(track);
    int n = range[1] - range[0] + 1;
    double unit = BodySize.perMetre(track);
    double[] v = new double[n];
    double mean = 0;
    for (int i = 0; i < n; i++) {
      Spot l = track.spot(BodyPoint.LEFT_ANKLE, range[0] + i);
      Spot r = track.spot(BodyPoint.RIGHT_ANKLE, range[0] + i);
      v[i] = l.known() && r.known() ? l.to(r) / unit : i == 0 ? 0 : v[i - 1];
      mean += v[i] / n;
    }
    double least = Math.max(SHORTEST_S, FEWEST_FRAMES * step);
    int first = Math.max(2, (int) Math.round(least / step));
    double[] alike = new double[Math.max(first, n / 2) + 1];
    double highest = 0;
    for (int lag = first; lag < alike.length - 1; lag++) {
      double with = 0;
      double one = 0;
      double two = 0;
      for (int i = 0; i + lag < n; i++) {
        with += (v[i] - mean) * (v[i + lag] - mean);
        one += (v[i] - mean) * (v[i] - mean);
        two += (v[i + lag] - mean) * (v[i + lag] - mean);
      }
      alike[lag] = with / Math.sqrt(Math.max(1e-9, one * two));
    }
    for (int lag = first + 1; lag < alike.length - 2; lag++) {
      highest = Math.max(highest, peak(alike, lag) ? alike[lag] : 0);
    }
    for (int lag = first + 1; lag < alike.length - 2; lag++) {
      if (highest > 0.2 && peak(alike, lag) && alike[lag] >= AS_HIGH * highest) {
        return lag * step;
      }
    }
    return Double.NaN;
  }

  private static boolean peak(double[] v, int i) {
    return v[i] >= v[i - 1] && v[i] >= v[i + 1] && v[i] > v[Math.max(0, i - 3)] - 1e-9;
  }
}
