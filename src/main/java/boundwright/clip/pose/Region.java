package boundwright.clip.pose;

import boundwright.clip.film.Picture;
import boundwright.clip.track.Spot;

/**
 * A turned square of the picture that a network looks at.
 *
 * @param x centre [px right]
 * @param y centre [px down]
 * @param side edge length [px], above 0
 * @param turn by how much the square is turned, clockwise as seen [rad]
 */
public record Region(double x, double y, double side, double turn) {
  /** How much wider than the body the region is; the networks were trained with it (science of the clip, read). */
  private static final double ROOM = 1.25;

  /** Refuses a region without a size. */
  public Region {
    if (!(side > 0) || Double.isNaN(x + y + turn) || Double.isInfinite(side)) {
      throw new IllegalArgumentException("region " + x + ", " + y + ", side " + side + ", turn " + turn);
    }
  }

  /** The region round a body: {@code middle} between the hips, {@code rim} on the circle round the whole body, above. */
  static Region round(Spot middle, Spot rim) {
    double turn = Math.PI / 2 - Math.atan2(-(rim.y() - middle.y()), rim.x() - middle.x());
    return new Region(middle.x(), middle.y(), 2 * ROOM * Math.max(1, middle.to(rim)), Math.IEEEremainder(turn, 2 * Math.PI));
  }

  /** A place in the picture [px]; {@code u} right and {@code v} down in the region, 0 to 1. */
  Spot inPicture(double u, double v) {
    double dx = (u - 0.5) * side;
    double dy = (v - 0.5) * side;
    double c = Math.cos(turn);
    double s = Math.sin(turn);
    return new Spot(x + c * dx - s * dy, y + s * dx + c * dy);
  }

  /** Whether both show the same body: the centres are closer than a quarter of the larger side. */
  public boolean same(Region other) {
    return Math.hypot(other.x - x, other.y - y) < 0.25 * Math.max(side, other.side);
  }

  /** Fills {@code to} with n x n pixels, red green blue, each {@code low} to {@code high}, black outside the picture. */
  void sample(Picture picture, int n, float low, float high, float[] to) {
    byte[] rgb = picture.rgb();
    int w = picture.width();
    int h = picture.height();
    float unit = (high - low) / 255f;
    double cos = Math.cos(turn) * side / n;
    double sin = Math.sin(turn) * side / n;
    int at = 0;
    for (int j = 0; j < n; j++) {
      double v = j + 0.5 - n / 2.0;
      for (int i = 0; i < n; i++) {
        double u = i + 0.5 - n / 2.0;
        double px = x + cos * u - sin * v - 0.5;
        double py = y + sin * u + cos * v - 0.5;
        int x0 = (int) Math.floor(px);
        int y0 = (int) Math.floor(py);
        double fx = px - x0;
        double fy = py - y0;
        for (int c = 0; c < 3; c++) {
          double top = (1 - fx) * value(rgb, w, h, x0, y0, c) + fx * value(rgb, w, h, x0 + 1, y0, c);
          double low1 = (1 - fx) * value(rgb, w, h, x0, y0 + 1, c) + fx * value(rgb, w, h, x0 + 1, y0 + 1, c);
          to[at++] = (float) (low + unit * ((1 - fy) * top + fy * low1));
        }
      }
    }
  }

  private static int value(byte[] rgb, int w, int h, int px, int py, int c) {
    return px < 0 || py < 0 || px >= w || py >= h ? 0 : rgb[3 * (py * w + px) + c] & 0xFF;
  }
}
