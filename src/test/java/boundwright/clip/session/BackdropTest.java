package boundwright.clip.session;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import boundwright.clip.film.Picture;
import boundwright.clip.track.Spot;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/**
 * A made-up panorama looked at by a pinhole camera whose focal length is not the one assumed; a dark figure runs, walks or stands before it. Where a
 * ground point lies in the picture is worked out from the camera's angles.
 */
class BackdropTest {
  private static final int W = 192;
  private static final int H = 108;
  /** A phone's, while 0.9 of the width is assumed [small px]. */
  private static final double FOCAL = 0.78 * W;
  private static final double EVERY_S = 0.2;

  private final float[] wall = new float[720 * 300];

  BackdropTest() {
    Random random = new Random(5);
    for (int k = 0; k < 4000; k++) {
      int x = random.nextInt(720);
      int y = random.nextInt(300);
      int r = 1 + random.nextInt(7);
      float grey = 40 + random.nextInt(180);
      for (int v = Math.max(0, y - r); v < Math.min(300, y + r); v++) {
        for (int u = Math.max(0, x - r); u < Math.min(720, x + r); u++) {
          wall[v * 720 + u] = grey;
        }
      }
    }
    // a picture made small has no edge sharper than this
    for (int i = 720 + 1; i < wall.length - 720 - 1; i++) {
      wall[i] = (wall[i] + wall[i + 1] + wall[i + 720] + wall[i + 721]) / 4;
    }
  }

  /** The picture at an angle [rad], with a figure so far to the right of where the camera first looked [rad] and a tilt. */
  private Picture at(double pan, double tilt, double figure) {
    byte[] rgb = new byte[3 * W * H];
    Spot body = Double.isNaN(figure) ? null : seen(figure, 0, pan, tilt);
    for (int y = 0; y < H; y++) {
      for (int x = 0; x < W; x++) {
        double u = (x - (W - 1) / 2.0) / FOCAL;
        double v = (y - (H - 1) / 2.0) / FOCAL;
        double vy = v * Math.cos(tilt) + Math.sin(tilt);
        double vz = Math.cos(tilt) - v * Math.sin(tilt);
        double yaw = pan + Math.atan2(u, vz);
        double up = vy / Math.hypot(u, vz);
        float grey = grey(360 + yaw * FOCAL, 150 + up * FOCAL);
        boolean dark = body != null && Math.abs(x - body.x()) < 4 && Math.abs(y - body.y()) < 14;
        for (int c = 0; c < 3; c++) {
          rgb[3 * (y * W + x) + c] = (byte) (dark ? 12 : grey);
        }
      }
    }
    return new Picture(W, H, rgb);
  }

  private float grey(double x, double y) {
    int ix = (int) Math.max(0, Math.min(718, x));
    int iy = (int) Math.max(0, Math.min(298, y));
    double fx = Math.max(0, Math.min(1, x - ix));
    double fy = Math.max(0, Math.min(1, y - iy));
    int i = iy * 720 + ix;
    return (float) ((1 - fy) * ((1 - fx) * wall[i] + fx * wall[i + 1]) + fy * ((1 - fx) * wall[i + 720] + fx * wall[i + 721]));
  }

  /** Where a direction is in the picture [small px]. */
  private static Spot seen(double yaw, double up, double pan, double tilt) {
    double x = Math.sin(yaw - pan);
    double z = Math.cos(yaw - pan);
    double y = up * Math.cos(tilt) - z * Math.sin(tilt);
    double ahead = up * Math.sin(tilt) + z * Math.cos(tilt);
    return new Spot((W - 1) / 2.0 + FOCAL * x / ahead, (H - 1) / 2.0 + FOCAL * y / ahead);
  }

  /** Pans after a figure at 35 degrees a second, as after a runner 12 m away, and swings back to where it began. */
  private static double pan(int look) {
    double forth = Math.toRadians(7) * Math.min(look, 10);
    return look <= 20 ? forth : Math.max(0, forth - Math.toRadians(8) * (look - 20));
  }

  private static double tilt(int look) {
    return Math.toRadians(0.6) * Math.sin(2.1 * look);
  }

  @Test
  void theGroundIsFoundAgainToAFractionOfAPixelAndOnlyTheFigureMoves() {
    Backdrop b = new Backdrop(W, H);
    for (int k = 0; k <= 30; k++) {
      double figure = Math.toRadians(7 * Math.min(k, 14)) + Math.toRadians(3);
      b.look(at(pan(k), tilt(k), figure), k == 0 ? 0 : EVERY_S);
      if (k == 0) {
        continue;
      }
      assertThat(b.lost()).as("look %d", k).isFalse();
      Spot known = new Spot(96, 60);
      double yaw = pan(k - 1) + Math.atan2((known.x() - (W - 1) / 2.0) / FOCAL, 1);
      // near the middle row a small tilt hardly changes the direction to the side
      double up = (known.y() - (H - 1) / 2.0) / FOCAL + Math.tan(tilt(k - 1));
      Spot truth = seen(yaw, up, pan(k), tilt(k));
      Spot found = b.carried(known.x(), known.y());
      assertThat(found.x()).as("look %d: ground to the side [small px]", k).isCloseTo(truth.x(), within(0.6));
      assertThat(found.y()).as("look %d: ground up and down [small px]", k).isCloseTo(truth.y(), within(0.4));
      List<Blob> blobs = Blob.of(b.moving(), W, H);
      Spot body = seen(figure, 0, pan(k), tilt(k));
      boolean inside = body.x() > 14 && body.x() < W - 14;
      if (k >= 3 && k < 14 && inside) {
        assertThat(blobs).as("look %d: the figure moves", k).anySatisfy(o -> assertThat(o.x()).isCloseTo(body.x(), within(6.0)));
      }
      // beside the figure, and where it stood at first, hardly anything does
      Spot ghost = seen(Math.toRadians(3), 0, pan(k), tilt(k));
      int others = 0;
      for (int p = 0; p < W * H; p++) {
        boolean near = Math.abs(p % W - body.x()) < 14 || Math.abs(p % W - ghost.x()) < 14;
        others += b.moving()[p] && !near ? 1 : 0;
      }
      assertThat(others).as("look %d: pixels of the ground that seem to move", k).isLessThan(W * H / 25);
    }
  }

  @Test
  void aCameraThatStandsIsToldExactly() {
    Backdrop b = new Backdrop(W, H);
    Random random = new Random(9);
    for (int k = 0; k < 10; k++) {
      byte[] rgb = at(0, 0, Math.toRadians(k)).rgb().clone();
      for (int i = 0; i < rgb.length; i++) {
        rgb[i] = (byte) Math.max(0, Math.min(255, (rgb[i] & 0xff) + 3 * random.nextGaussian()));
      }
      b.look(new Picture(W, H, rgb), k == 0 ? 0 : EVERY_S);
      assertThat(b.turning()).as("look %d", k).isFalse();
      assertThat(b.carried(40, 70).x()).isCloseTo(40, within(1e-9));
    }
  }
}
