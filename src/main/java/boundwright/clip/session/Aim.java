package boundwright.clip.session;

import boundwright.clip.camera.Turning;

/**
 * Where the camera looks: a turning pinhole.
 *
 * @param turn from the camera's directions to those of the first look, a rotation row by row
 * @param zoom logarithm of the focal length over the first look's
 * @param lens focal length of the first look over the longer side, as far as known
 */
@SuppressWarnings("ArrayRecordComponent") // compared by nobody
record Aim(double[] turn, double zoom, double lens) {
  /** Before anything is known (phones: 0.7 to 1.1; judgement). */
  private static final double LENS = 0.9;

  static Aim first() {
    return new Aim(Turning.none(), 0, LENS);
  }

  /** The same seen through another lens: what turned a picture by so much turned it by less. */
  Aim through(double other) {
    double[] v = Turning.vector(turn);
    double k = lens / other;
    return new Aim(Turning.of(k * v[0], k * v[1], k * v[2]), zoom, other);
  }

  /** Turned further by a small rotation [rad] and zoomed. */
  Aim further(double x, double y, double z, double zoomed) {
    return new Aim(Turning.times(turn, Turning.of(x, y, z)), zoom + zoomed, lens);
  }

  /** The step that led here from another aim, taken once more, so many times as long. */
  Aim again(Aim before, double times) {
    double[] v = Turning.vector(Turning.backTimes(before.turn, turn));
    return further(times * v[0], times * v[1], times * v[2], 0);
  }

  double focal(int width, int height) {
    return lens * Math.max(width, height) * Math.exp(zoom);
  }

  /** The map of ground points from a picture of this aim to one of another: nine numbers, row by row [small px]. */
  double[] to(Aim other, int width, int height) {
    double f = focal(width, height);
    double g = other.focal(width, height);
    double cx = (width - 1) / 2.0;
    double cy = (height - 1) / 2.0;
    double[] in = {1 / f, 0, -cx / f, 0, 1 / f, -cy / f, 0, 0, 1};
    double[] out = {g, 0, cx, 0, g, cy, 0, 0, 1};
    return Turning.times(out, Turning.times(Turning.backTimes(other.turn, turn), in));
  }

  /** How far the middle of the picture lies from where another aim has it [small px]; infinite where it looks away, or far nearer or wider. */
  double apart(Aim other, int width, int height, double mostZoom) {
    double[] v = Turning.vector(Turning.backTimes(turn, other.turn));
    double far = Math.sqrt(v[0] * v[0] + v[1] * v[1] + v[2] * v[2]) * focal(width, height);
    return Math.abs(zoom - other.zoom) > mostZoom ? Double.POSITIVE_INFINITY : far;
  }
}
