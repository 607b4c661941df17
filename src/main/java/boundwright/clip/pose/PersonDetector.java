package boundwright.clip.pose;

import boundwright.clip.film.Picture;
import boundwright.clip.track.Spot;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * The detector network: regions round people in a square of a picture. It misses people smaller than about a third of
 * the square (science of the clip: known weakness, measured). Layout: science of the clip (read).
 */
public final class PersonDetector implements AutoCloseable {
  private static final int SIZE = 224;
  private static final int EACH = 12;
  /** Anchors lie on square grids: cells on a side, anchors in a cell. */
  private static final int[][] GRIDS = {{28, 2}, {14, 2}, {7, 6}};

  private static final int ANCHORS = 2254;
  private static final int MIDDLE = 4;
  private static final double LEAST = 0.5;
  /**
   * A body that is larger than the square cannot be seen in it: regions of more than so many sides of the square are
   * drawn from a part of a body or from nothing. On the painted athlete true ones reach 1.3, false ones begin at 2 (own
   * output).
   */
  private static final double LARGEST = 1.5;

  private final Net net;
  private final int[] which;
  private final Spot[] anchors = anchors();
  private final float[] in = new float[SIZE * SIZE * 3];
  private final float[][] out = {new float[ANCHORS * EACH], new float[ANCHORS]};

  /** A region with a body in it and how sure the detector is, 0 to 1. */
  record Found(Region region, double score) {}

  /**
   * Opens the network.
   *
   * @param weights the detector's file, see {@link Weights}
   * @param threads how many it may use, 1 or more
   * @throws boundwright.quantity.RefusedException if the file is not that network
   */
  public PersonDetector(Path weights, int threads) {
    net = new Net(weights, threads, in.length);
    try {
      which = new int[] {net.outputOf(out[0].length), net.outputOf(out[1].length)};
    } catch (RuntimeException e) {
      net.close();
      throw e;
    }
  }

  private static Spot[] anchors() {
    List<Spot> all = new ArrayList<>();
    for (int[] grid : GRIDS) {
      for (int cell = 0; cell < grid[0] * grid[0]; cell++) {
        Spot middle = new Spot((cell % grid[0] + 0.5) / grid[0], (Math.floorDiv(cell, grid[0]) + 0.5) / grid[0]);
        for (int k = 0; k < grid[1]; k++) {
          all.add(middle);
        }
      }
    }
    return all.toArray(Spot[]::new);
  }

  /** The people in a square of the picture, the surest first, each once. */
  List<Found> look(Picture picture, Region square) {
    square.sample(picture, SIZE, -1, 1, in);
    net.run(in, which, out);
    List<Found> all = new ArrayList<>();
    for (int a = 0; a < ANCHORS; a++) {
      double score = PoseNet.sigmoid(out[1][a]);
      if (score >= LEAST) {
        Region region = Region.round(point(square, a, 0), point(square, a, 1));
        if (region.side() <= LARGEST * square.side()) {
          all.add(new Found(region, score));
        }
      }
    }
    return each(all);
  }

  /** Leaves one region for each body: the surest of those that show the same one. */
  static List<Found> each(List<Found> all) {
    List<Found> left = new ArrayList<>();
    for (Found f : all.stream().sorted(Comparator.comparingDouble(Found::score).reversed()).toList()) {
      if (left.stream().noneMatch(k -> k.region().same(f.region()))) {
        left.add(f);
      }
    }
    return left;
  }

  private Spot point(Region square, int a, int k) {
    int at = a * EACH + MIDDLE + 2 * k;
    return square.inPicture(anchors[a].x() + out[0][at] / SIZE, anchors[a].y() + out[0][at + 1] / SIZE);
  }

  @Override
  public void close() {
    net.close();
  }
}
