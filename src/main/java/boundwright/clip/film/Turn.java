package boundwright.clip.film;

import boundwright.quantity.RefusedException;
import java.util.Locale;

/**
 * How a stored picture is turned or mirrored to be shown: a stored step to the right is shown as (rightX, rightY), a
 * stored step down as (downX, downY), with y downwards. Every part is -1, 0 or 1.
 */
record Turn(int rightX, int rightY, int downX, int downY) {
  static final Turn NONE = new Turn(1, 0, 0, 1);

  private static final double TOLERANCE_DEG = 1;

  /**
   * From a display matrix, ISO/IEC 14496-12 (track header box): a, b, u, c, d, v, x, y, w with a step to the right shown
   * as (a, b) and a step down as (c, d).
   *
   * @throws RefusedException if it is no turn by a whole number of quarter turns
   */
  static Turn of(int[] matrix) {
    double deg = Math.toDegrees(Math.atan2(matrix[1], matrix[0]));
    long quarters = Math.round(deg / 90);
    if (Math.abs(deg - 90 * quarters) > TOLERANCE_DEG) {
      throw new RefusedException(String.format(Locale.ROOT,
          "The film says it is to be shown turned by %.0f degrees; only 0, 90, 180 and 270 can be read. "
              + "Save it upright in the phone's own gallery and take it again.", deg));
    }
    boolean mirrored = (double) matrix[0] * matrix[4] - (double) matrix[1] * matrix[3] < 0;
    int side = mirrored ? -1 : 1;
    return switch ((int) Math.floorMod(quarters, 4L)) {
      case 0 -> new Turn(1, 0, 0, side);
      case 1 -> new Turn(0, 1, -side, 0);
      case 2 -> new Turn(-1, 0, 0, -side);
      default -> new Turn(0, -1, side, 0);
    };
  }

  /** Whether width and height change places. */
  boolean swaps() {
    return rightX == 0;
  }

  /** Clockwise, of the stored picture's top edge: 0, 90, 180 or 270 [deg]. */
  int deg() {
    return rightX == 1 ? 0 : rightY == 1 ? 90 : rightX == -1 ? 180 : 270;
  }

  /**
   * Writes the picture as shown.
   *
   * @param stored three bytes a pixel, rows of {@code width} pixels without gaps
   * @param shown as many bytes
   */
  void apply(byte[] stored, int width, int height, byte[] shown) {
    int shownWidth = swaps() ? height : width;
    int perRight = 3 * (rightX + rightY * shownWidth);
    int perDown = 3 * (downX + downY * shownWidth);
    int start = (rightX < 0 || rightY < 0 ? -perRight * (width - 1) : 0) + (downX < 0 || downY < 0 ? -perDown * (height - 1) : 0);
    int from = 0;
    for (int y = 0; y < height; y++) {
      int to = start + y * perDown;
      for (int x = 0; x < width; x++, to += perRight) {
        shown[to] = stored[from++];
        shown[to + 1] = stored[from++];
        shown[to + 2] = stored[from++];
      }
    }
  }
}
