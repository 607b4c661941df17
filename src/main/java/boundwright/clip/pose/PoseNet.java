package boundwright.clip.pose;

import boundwright.clip.film.Picture;
import boundwright.clip.track.BodyPoint;
import boundwright.clip.track.Spot;
import java.nio.file.Path;
import java.util.List;

/**
 * The landmark network: 33 body points from one region of a picture. Layout of input and outputs: science of the clip,
 * the 33-point body model (read). Not for several threads at once; native memory goes with {@link #close}.
 */
public final class PoseNet implements AutoCloseable {
  /** Above this the network holds that a body is in the region; the usual middle of a probability. */
  static final double PRESENT = 0.5;

  private static final int SIZE = 256;
  private static final int POINTS = 39;
  private static final int EACH = 5;
  private static final int HEAT = 64;
  private static final int REACH = 3;

  private final Net net;
  private final int[] which;
  private final float[] in = new float[SIZE * SIZE * 3];
  private final float[][] out = {new float[POINTS * EACH], new float[1], new float[HEAT * HEAT * POINTS]};

  /**
   * Opens the network.
   *
   * @param weights the landmark file, see {@link Weights}
   * @param threads how many it may use, 1 or more
   * @throws boundwright.quantity.RefusedException if the file is not that network
   */
  public PoseNet(Path weights, int threads) {
    net = new Net(weights, threads, in.length);
    try {
      which = new int[] {net.outputOf(out[0].length), net.outputOf(1), net.outputOf(out[2].length)};
    } catch (RuntimeException e) {
      net.close();
      throw e;
    }
  }

  /** The body points in a region of the picture. */
  public Pose look(Picture picture, Region region) {
    region.sample(picture, SIZE, 0, 1, in);
    net.run(in, which, out);
    Spot[] spots = new Spot[BodyPoint.COUNT];
    double[] sure = new double[BodyPoint.COUNT];
    for (int p = 0; p < BodyPoint.COUNT; p++) {
      spots[p] = spot(region, p);
      sure[p] = sigmoid(out[0][p * EACH + 3]);
    }
    Region next = Region.round(spot(region, BodyPoint.COUNT), spot(region, BodyPoint.COUNT + 1));
    return new Pose(List.of(spots), sure, out[1][0], next);
  }

  /** The point, moved to the middle of its 7 x 7 patch of the heat map where the map is sure. */
  private Spot spot(Region region, int p) {
    double u = out[0][p * EACH] / SIZE;
    double v = out[0][p * EACH + 1] / SIZE;
    int column = (int) Math.floor(u * HEAT);
    int row = (int) Math.floor(v * HEAT);
    if (column >= 0 && row >= 0 && column < HEAT && row < HEAT) {
      double sum = 0;
      double su = 0;
      double sv = 0;
      double top = 0;
      for (int r = Math.max(0, row - REACH); r <= Math.min(HEAT - 1, row + REACH); r++) {
        for (int c = Math.max(0, column - REACH); c <= Math.min(HEAT - 1, column + REACH); c++) {
          double s = sigmoid(out[2][(r * HEAT + c) * POINTS + p]);
          sum += s;
          su += s * c;
          sv += s * r;
          top = Math.max(top, s);
        }
      }
      if (top >= PRESENT) {
        u = su / sum / HEAT;
        v = sv / sum / HEAT;
      }
    }
    return region.inPicture(u, v);
  }

  static double sigmoid(double x) {
    return 1 / (1 + Math.exp(-x));
  }

  @Override
  public void close() {
    net.close();
  }
}
