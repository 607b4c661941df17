package boundwright.clip.session;

import boundwright.clip.film.Picture;
import boundwright.clip.film.StillCoder;
import boundwright.clip.pose.Region;

/** Cuts a square round the athlete out of a picture, as JPEG. */
final class Cropper implements AutoCloseable {
  /** Side of the pictures [px]. */
  static final int SIDE = 240;

  private final StillCoder coder = new StillCoder(SIDE, SIDE, SIDE);
  private final byte[] rgb = new byte[3 * SIDE * SIDE];

  byte[] crop(Picture p, Region square) {
    double each = square.side() / SIDE;
    byte[] from = p.rgb();
    int at = 0;
    for (int y = 0; y < SIDE; y++) {
      int py = clip((int) (square.y() + (y + 0.5 - SIDE / 2.0) * each), p.height());
      for (int x = 0; x < SIDE; x++) {
        int px = clip((int) (square.x() + (x + 0.5 - SIDE / 2.0) * each), p.width());
        int q = 3 * (py * p.width() + px);
        rgb[at++] = from[q];
        rgb[at++] = from[q + 1];
        rgb[at++] = from[q + 2];
      }
    }
    coder.take(new Picture(SIDE, SIDE, rgb));
    return coder.jpeg();
  }

  private static int clip(int v, int below) {
    return Math.max(0, Math.min(below - 1, v));
  }

  @Override
  public void close() {
    coder.close();
  }
}
