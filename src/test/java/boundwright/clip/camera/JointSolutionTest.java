package boundwright.clip.camera;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import boundwright.clip.track.Spot;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.LUDecomposition;
import org.hipparchus.linear.RealMatrix;
import org.junit.jupiter.api.Test;

class JointSolutionTest {
  @Test
  void theBlockSystemIsTheDenseOne() {
    long seed = 11;
    Random random = new Random(seed);
    int n = 9;
    int[] place = {7, 0, 1, 2, 8, 3, 4, 5, 6};
    int[][] pairs = {{1, 0}, {2, 1}, {2, 0}, {3, 2}, {3, 0}, {4, 3}, {4, 0}, {5, 4}, {6, 5}, {6, 4}, {7, 6}, {7, 4}, {8, 7}, {8, 4}};
    RealMatrix dense = new Array2DRowRealMatrix(4 * n, 4 * n);
    BlockSystem blocks = new BlockSystem(place);
    for (int[] p : pairs) {
      double[] block = random.doubles(16, -1, 1).toArray();
      blocks.add(p[0], p[1], block);
      for (int r = 0; r < 4; r++) {
        for (int c = 0; c < 4; c++) {
          dense.addToEntry(4 * p[0] + r, 4 * p[1] + c, block[4 * r + c]);
          dense.addToEntry(4 * p[1] + c, 4 * p[0] + r, block[4 * r + c]);
        }
      }
    }
    for (int i = 0; i < n; i++) {
      double[] own = new double[16];
      for (int r = 0; r < 4; r++) {
        own[5 * r] = 20 + r;
        dense.addToEntry(4 * i + r, 4 * i + r, 20 + r);
      }
      blocks.add(i, own);
    }
    double[] right = random.doubles(4L * n, -1, 1).toArray();
    blocks.factor();
    // outside measure: the dense solution and inverse of Hipparchus
    double[] expected = new LUDecomposition(dense).getSolver().solve(new org.hipparchus.linear.ArrayRealVector(right)).toArray();
    assertThat(blocks.solve(right)).as("seed %d", seed).containsExactly(expected, within(1e-10));
    RealMatrix inverse = new LUDecomposition(dense).getSolver().getInverse();
    for (int r = 0; r < 4; r++) {
      for (int c = 0; c < 4; c++) {
        assertThat(blocks.covariance(6)[4 * r + c]).isCloseTo(inverse.getEntry(24 + r, 24 + c), within(1e-12));
        assertThat(blocks.covariance(7, 6)[4 * r + c]).isCloseTo(inverse.getEntry(28 + r, 24 + c), within(1e-12));
      }
    }
  }

  /** Corners of a turning, zooming camera made by the projection itself; 0.1 px of noise. */
  @Test
  void rotationsAndFocalLengthsAreFoundAgain() {
    long seed = 5;
    Random random = new Random(seed);
    int n = 40;
    double[] times = new double[n];
    double[][] turns = new double[n][];
    double[] focal = new double[n];
    for (int i = 0; i < n; i++) {
      times[i] = i / 30.0;
      turns[i] = Turning.of(0.01 * Math.sin(i), 0.025 * i, 0.01 * Math.cos(i));
      focal[i] = 520 * (1 + 0.004 * i);
    }
    boolean[] keys = new boolean[n];
    List<Link> links = new ArrayList<>();
    int key = 0;
    keys[0] = true;
    for (int i = 1; i < n; i++) {
      links.add(link(key, i, turns, focal, random));
      if (key != i - 1) {
        links.add(link(i - 1, i, turns, focal, random));
      }
      if (i % 12 == 0) {
        key = i;
        keys[i] = true;
      }
    }
    JointSolution s = new JointSolution(times, 640, 360, links, keys);
    double[] relative = Turning.vector(Turning.backTimes(s.turn(0), s.turn(n - 1)));
    double[] truth = Turning.vector(Turning.backTimes(turns[0], turns[n - 1]));
    assertThat(relative).as("seed %d", seed).containsExactly(truth, within(0.003));
    assertThat(s.focal(n - 1)).isCloseTo(focal[n - 1], within(4.0));
    assertThat(s.residual()).isBetween(0.05, 0.2);
    assertThat(Math.sqrt(s.variance(n - 1, 0, 90))).as("stated drift [px]").isBetween(0.03, 1.5);
  }

  private static Link link(int p, int q, double[][] turns, double[] focal, Random random) {
    List<float[]> a = new ArrayList<>();
    List<float[]> b = new ArrayList<>();
    while (a.size() < 60) {
      double x = (random.nextDouble() - 0.5) * 600;
      double y = (random.nextDouble() - 0.5) * 340;
      double[] w = Turning.apply(turns[p], x / focal[p], y / focal[p], 1);
      double[] r = Turning.back(turns[q], w);
      double u = focal[q] * r[0] / r[2];
      double v = focal[q] * r[1] / r[2];
      if (Math.abs(u) < 315 && Math.abs(v) < 175) {
        a.add(new float[] {(float) (x + 319.5), (float) (y + 179.5)});
        b.add(new float[] {(float) (u + 319.5 + 0.1 * random.nextGaussian()), (float) (v + 179.5 + 0.1 * random.nextGaussian())});
      }
    }
    float[] fa = new float[2 * a.size()];
    float[] fb = new float[2 * a.size()];
    for (int i = 0; i < a.size(); i++) {
      System.arraycopy(a.get(i), 0, fa, 2 * i, 2);
      System.arraycopy(b.get(i), 0, fb, 2 * i, 2);
    }
    return new Link(p, q, fa, fb);
  }

  @Test
  void aPointGoesThereAndBack() {
    double[] times = {0, 0.1, 0.2};
    CameraPath.Look[] looks = {
      new CameraPath.Look(0.01, -0.3, 0.02, 1000, 0, 0), new CameraPath.Look(0, 0, 0, 1050, 0, 0), new CameraPath.Look(-0.01, 0.4, 0, 1100, 0, 0)
    };
    CameraPath path = CameraPath.followed(CameraPath.Kind.TURNED, 1280, 720, 1050, 0.02, true, 0, times, looks);
    for (int i = 0; i < 3; i++) {
      for (Spot p : List.of(new Spot(100, 650), new Spot(640, 360), new Spot(1200, 50))) {
        Spot again = path.back(i, path.carry(i, p));
        assertThat(again.to(p)).as("frame %d, %s", i, p).isLessThan(0.05);
      }
    }
    // worked: a camera turned by 0.3 rad sees its middle at tan 0.3 of the focal length
    CameraPath plain = CameraPath.followed(CameraPath.Kind.TURNED, 1280, 720, 1000, 0, true, 0, new double[] {0}, new CameraPath.Look[] {new CameraPath.Look(0, 0.3, 0, 900, 0, 0)});
    assertThat(plain.carry(0, new Spot(640, 360)).x()).isCloseTo(640 + 1000 * Math.tan(0.3), within(1e-6));
    assertThat(plain.carry(0, new Spot(640, 360)).y()).isCloseTo(360, within(1e-6));
  }
}
