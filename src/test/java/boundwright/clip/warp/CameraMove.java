package boundwright.clip.warp;

import java.util.Random;

/**
 * How the camera turns: it follows somebody as far as the still picture reaches, nods, zooms evenly and shakes.
 *
 * <p>Shake is a sum of sines between 2 and 9 Hz, as a hand shakes (judgement), with the given size as its standard deviation in either
 * direction, and a tenth of a degree in roll for each 2 px.
 */
final class CameraMove {
  /** Where the camera looks: angles [rad] to the right, down, clockwise; focal length [px]. */
  record Look(double pan, double tilt, double roll, double focal) {}

  private static final int SINES = 5;
  private final StillSource source;
  private final WarpOptions o;
  private final double[][] shake = new double[3 * SINES][];

  CameraMove(StillSource source, WarpOptions options) {
    this.source = source;
    this.o = options;
    Random random = new Random(options.seed());
    for (int k = 0; k < shake.length; k++) {
      shake[k] = new double[] {2 * Math.PI * (2 + 7 * random.nextDouble()), 2 * Math.PI * random.nextDouble()};
    }
  }

  /** @param share of the film gone, 0 to 1 */
  Look at(double t, double share) {
    double f0 = source.focal() * o.scale();
    double f = f0 * (1 + (o.zoom() - 1) * Math.max(0, Math.min(1, share)));
    double px = o.shake_px() / f0;
    double pan = wobble(0, t) * px;
    double tilt = wobble(1, t) * px + Math.toRadians(o.tiltDeg()) * Math.sin(2 * Math.PI * share);
    double roll = wobble(2, t) * Math.toRadians(0.05) * o.shake_px();
    double[] at = source.follow(t);
    double reachX = Math.atan(source.width() / 2.0 / source.focal()) - Math.atan(o.width() / 2.0 / f0) - 6 * px;
    double reachY = Math.atan(source.height() / 2.0 / source.focal()) - Math.atan(o.height() / 2.0 / f0) - 6 * px;
    double middle = o.follow() ? Math.atan((at[0] - source.width() / 2.0) / source.focal()) : 0;
    double level = Math.atan((source.follow(0)[1] - source.height() / 2.0) / source.focal());
    return new Look(clamp(middle + pan, reachX), clamp(level + tilt, reachY), roll, f);
  }

  private static double clamp(double v, double reach) {
    double r = Math.max(0, reach);
    return Math.max(-r, Math.min(r, v));
  }

  private double wobble(int which, double t) {
    double sum = 0;
    for (int k = 0; k < SINES; k++) {
      double[] s = shake[which * SINES + k];
      sum += Math.sin(s[0] * t + s[1]);
    }
    return sum / Math.sqrt(SINES / 2.0);
  }

  /** From a ray of the turned camera (right, down, ahead) to one of the still camera, row by row. */
  static double[] rotation(Look l) {
    double cr = Math.cos(l.roll);
    double sr = Math.sin(l.roll);
    double ct = Math.cos(l.tilt);
    double st = Math.sin(l.tilt);
    double cp = Math.cos(l.pan);
    double sp = Math.sin(l.pan);
    // pan (about the vertical) after tilt (about the horizontal) after roll (about the axis)
    double[] roll = {cr, -sr, 0, sr, cr, 0, 0, 0, 1};
    double[] tilt = {1, 0, 0, 0, ct, st, 0, -st, ct};
    double[] pan = {cp, 0, sp, 0, 1, 0, -sp, 0, cp};
    return times(pan, times(tilt, roll));
  }

  static double[] times(double[] a, double[] b) {
    double[] out = new double[9];
    for (int i = 0; i < 3; i++) {
      for (int j = 0; j < 3; j++) {
        out[3 * i + j] = a[3 * i] * b[j] + a[3 * i + 1] * b[3 + j] + a[3 * i + 2] * b[6 + j];
      }
    }
    return out;
  }

  /** The map from a picture point of the turned camera to one of the still picture, 9 numbers row by row. */
  double[] map(Look l) {
    double[] r = rotation(l);
    double[] in = {1 / l.focal, 0, -o.width() / 2.0 / l.focal, 0, 1 / l.focal, -o.height() / 2.0 / l.focal, 0, 0, 1};
    double f = source.focal();
    double[] out = {f, 0, source.width() / 2.0, 0, f, source.height() / 2.0, 0, 0, 1};
    return times(out, times(r, in));
  }
}
