package boundwright.clip.camera;

import boundwright.clip.Box;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/** The pictures that were followed, their links, and the signs of how well it went. */
final class Followed {
  /** Too little to hold on to is said when two of three are below: corners that fit, cells that they cover, breadth [small px]. */
  private static final int WEAK_CORNERS = 45;
  private static final int WEAK_CELLS = 10;
  private static final double WEAK_BREADTH = 12;
  private static final int CELL = 80;
  private static final int FEWEST_LOW = 20;
  /** More pictures than this share weak, or lost: the camera could not be followed (judgement, docs/camera.md). */
  private static final double WEAK_SHARE = 0.25;
  private static final double LOST_SHARE = 0.05;
  /** Ground against background, added up over the keys, as a share of the small picture's width (worked in docs/camera.md). */
  private static final double ARM = 0.007;
  private static final double TRAVEL = 0.10;
  /** A turning camera leaves less than this between its corners and the solution, as a share of the width (judgement). */
  private static final double UNFIT = 0.0025;

  private final List<Double> times = new ArrayList<>();
  private final List<Link> links = new ArrayList<>();
  /** The same links by the corners on the ground alone, where there are enough. */
  private final List<Link> onGround = new ArrayList<>();
  /** Every corner found again from key to key, whether it fits or not. */
  private final List<Link> toKeys = new ArrayList<>();
  /** Every corner found again from picture to picture, whether it fits or not. */
  private final List<Link> steps = new ArrayList<>();
  private @Nullable Link latest;
  private final List<Boolean> keys = new ArrayList<>();
  private final List<double @Nullable []> feet = new ArrayList<>();
  private final List<String> signs = new ArrayList<>();
  private int weak;
  private int lost;
  private int judged;

  void start(double time) {
    add(time);
    keys.set(0, true);
  }

  /** The camera stood until now: the first picture is as good as this one. */
  void stoodUntil(double time) {
    times.set(0, time);
  }

  /** Adds a picture and gives its number. */
  int add(double time) {
    times.add(time);
    keys.add(false);
    feet.add(null);
    return times.size() - 1;
  }

  void link(int from, int to, Corners.Found found, @Nullable Box hidden) {
    int n = found.fitting();
    float[] a = new float[2 * n];
    float[] b = new float[2 * n];
    int k = 0;
    for (int i = 0; i < found.fits().length; i++) {
      if (found.fits()[i]) {
        a[k] = found.a()[2 * i];
        b[k++] = found.b()[2 * i];
        a[k] = found.a()[2 * i + 1];
        b[k++] = found.b()[2 * i + 1];
      }
    }
    Link whole = new Link(from, to, a, b);
    links.add(whole);
    onGround.add(hidden == null ? whole : nearFeet(whole, hidden));
  }

  /** The corners whose rows are nearest to the feet: they stand about as far away as the athlete does. */
  private static Link nearFeet(Link all, Box hidden) {
    double row = hidden.y() + 0.9 * hidden.height();
    Integer[] order = new Integer[all.size()];
    Arrays.setAll(order, i -> i);
    Arrays.sort(order, Comparator.comparingDouble(i -> Math.abs(all.b()[2 * i + 1] - row)));
    int n = Math.min(order.length, FEWEST_LOW);
    while (n < order.length && Math.abs(all.b()[2 * order[n] + 1] - row) < 0.25 * hidden.height()) {
      n++;
    }
    float[] a = new float[2 * n];
    float[] b = new float[2 * n];
    for (int i = 0; i < n; i++) {
      for (int c = 0; c < 2; c++) {
        a[2 * i + c] = all.a()[2 * order[i] + c];
        b[2 * i + c] = all.b()[2 * order[i] + c];
      }
    }
    return new Link(all.from(), all.to(), a, b);
  }

  /** Above this row the background is far behind the athlete [small px]. */
  private static double rim(Box hidden) {
    return hidden.y() + 0.7 * hidden.height();
  }

  /** How many corners were found again on the ground about the athlete and before it. */
  static int low(Corners.Found found, @Nullable Box hidden) {
    int n = 0;
    for (int i = 0; i < found.fits().length; i++) {
      n += hidden != null && found.b()[2 * i + 1] > rim(hidden) ? 1 : 0;
    }
    return n;
  }

  /** Nothing was found again: the picture is taken to have turned on as before. */
  void lost(int at, double[] step, Gray g) {
    lost++;
    float[] a = new float[24];
    float[] b = new float[24];
    for (int i = 0; i < 12; i++) {
      a[2 * i] = (float) ((i % 4 + 0.5) * g.width() / 4);
      a[2 * i + 1] = (float) ((Math.floorDiv(i, 4) + 0.5) * g.height() / 3);
      double[] o = Maps.apply(step, a[2 * i], a[2 * i + 1]);
      b[2 * i] = (float) o[0];
      b[2 * i + 1] = (float) o[1];
    }
    links.add(new Link(at - 1, at, a, b));
    onGround.add(new Link(at - 1, at, a, b));
  }

  /** Looks at the corners that were found again in a picture. */
  void judge(int at, Corners.Found found, Gray g, @Nullable Box hidden) {
    judged++;
    if (hidden != null) {
      feet.set(
          at,
          new double[] {
            hidden.x() + hidden.width() / 2 - g.width() / 2.0, hidden.y() + 0.9 * hidden.height() - g.height() / 2.0, hidden.height()
          });
    }
    int n = found.fitting();
    boolean[] covered = new boolean[(g.width() / CELL + 1) * (g.height() / CELL + 1)];
    double mx = 0;
    double my = 0;
    double xx = 0;
    double xy = 0;
    double yy = 0;
    int cells = 0;
    for (int i = 0; i < found.fits().length; i++) {
      if (found.fits()[i]) {
        double x = found.b()[2 * i];
        double y = found.b()[2 * i + 1];
        mx += x / n;
        my += y / n;
        xx += x * x / n;
        xy += x * y / n;
        yy += y * y / n;
        int row = (int) (y / CELL);
        int c = row * (g.width() / CELL + 1) + (int) (x / CELL);
        cells += covered[c] ? 0 : 1;
        covered[c] = true;
      }
    }
    xx -= mx * mx;
    xy -= mx * my;
    yy -= my * my;
    double breadth = n == 0 ? 0 : Math.sqrt(Math.max(0, (xx + yy) / 2 - Math.sqrt((xx - yy) * (xx - yy) / 4 + xy * xy)));
    int bad = (n < WEAK_CORNERS ? 1 : 0) + (cells < WEAK_CELLS ? 1 : 0) + (breadth < WEAK_BREADTH ? 1 : 0);
    weak += bad >= 2 ? 1 : 0;
    if (judged % 20 == 1) {
      signs.add(String.format(Locale.ROOT, "%d:%d/%d fit, %d cells, breadth %.0f", at, n, found.fits().length, cells, breadth));
    }
  }

  /** A picture becomes a key. */
  void key(int at) {
    keys.set(at, true);
    if (latest != null) {
      toKeys.add(latest);
      latest = null;
    }
  }

  /** All that was found again of the picture before. */
  void step(int at, Corners.Found near) {
    steps.add(new Link(at - 1, at, near.a(), near.b()));
  }

  /** All that was found again of the key in a picture. */
  void latest(int from, int at, Corners.Found far) {
    latest = new Link(from, at, far.a(), far.b());
  }

  List<String> signs() {
    return signs;
  }

  CameraPath path(Gray small, int width, int height, double[] all) {
    int n = times.size();
    if (n < 3 || lost > LOST_SHARE * n || weak > WEAK_SHARE * judged) {
      signs.add(String.format(Locale.ROOT, "lost %d weak %d of %d", lost, weak, judged));
      return CameraPath.of(2 * lost > n ? CameraPath.Kind.PLAIN : CameraPath.Kind.LOST);
    }
    double[] t = times.stream().mapToDouble(d -> d).toArray();
    boolean[] key = new boolean[n];
    for (int i = 0; i < n; i++) {
      key[i] = keys.get(i);
    }
    JointSolution s = new JointSolution(t, small.width(), small.height(), links, key);
    List<Link> fromKeys = new ArrayList<>(toKeys);
    if (latest != null) {
      fromKeys.add(latest);
    }
    double bySteps = swing(s, small, steps);
    double shift = swing(s, small, fromKeys);
    // over a whole key a camera that travels loses the ground or the background; from picture to picture both are seen
    if (Double.isNaN(shift) || bySteps > TRAVEL) {
      shift = bySteps;
    }
    boolean arm = shift > ARM && shift <= TRAVEL;
    signs.add(
        String.format(
            Locale.ROOT, "lost %d weak %d of %d, keys %d, residual %.3f, shutter %.4f %s, swing %.4f, by steps %.4f, keys %d", lost, weak, judged,
            keys.stream().filter(k -> k).count(), s.residual(), s.shutter_s(), s.shutterFound(), shift, bySteps,
            toKeys.size()));
    if (shift > TRAVEL) {
      return CameraPath.of(CameraPath.Kind.TRAVELLED);
    }
    if (s.residual() > UNFIT * small.width()) {
      return CameraPath.of(CameraPath.Kind.LOST);
    }
    if (arm) {
      // what stands at the athlete's own distance does not move against the athlete
      s = new JointSolution(t, small.width(), small.height(), onGround, key);
      signs.add(String.format(Locale.ROOT, "by the ground at the feet: residual %.3f", s.residual()));
    }
    int middle = middle(s, n);
    double k = small.smaller();
    CameraPath.Look[] looks = new CameraPath.Look[n];
    double drift = 0;
    for (int i = 0; i < n; i++) {
      double[] at = feet.get(i);
      double x = at == null ? 0 : at[0];
      double y = at == null ? small.height() / 4.0 : at[1];
      drift = Math.max(drift, s.variance(i, x, y));
      double[] v = Turning.vector(Turning.backTimes(s.turn(middle), s.turn(i)));
      looks[i] = new CameraPath.Look(v[0], v[1], v[2], k * s.focal(i), k * Math.sqrt(drift), k * Math.sqrt(s.varianceOfStep(i, x, y) / 2));
    }
    return CameraPath.followed(
        arm ? CameraPath.Kind.ARM : CameraPath.Kind.TURNED, width, height, k * s.focal(middle), s.shutter_s(), s.shutterFound(), shift, all,
        everyFrame(looks, all));
  }

  /** How far the ground moved against what stands behind it, as a share of the picture's width; NaN where nothing tells. */
  private double swing(JointSolution s, Gray small, List<Link> all) {
    double sum = 0;
    int told = 0;
    for (Link l : all) {
      double[] at = feet.get(l.to());
      if (at != null) {
        double row = at[1] + small.height() / 2.0;
        double moved = s.parallax(l, row - 0.2 * at[2], row - 0.5 * at[2]);
        if (!Double.isNaN(moved)) {
          sum += moved / small.width();
          told++;
        }
      }
    }
    return 2 * told < all.size() ? Double.NaN : Math.abs(sum);
  }

  /** The picture that looks nearest to the middle of the way from left to right. */
  private static int middle(JointSolution s, int n) {
    double[] yaw = new double[n];
    double least = Double.POSITIVE_INFINITY;
    double most = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < n; i++) {
      yaw[i] = Turning.vector(s.turn(i))[1];
      least = Math.min(least, yaw[i]);
      most = Math.max(most, yaw[i]);
    }
    int best = 0;
    for (int i = 1; i < n; i++) {
      if (Math.abs(yaw[i] - (least + most) / 2) < Math.abs(yaw[best] - (least + most) / 2)) {
        best = i;
      }
    }
    return best;
  }

  /** Frames that were not followed lie on the way between their neighbours, by time. */
  private CameraPath.Look[] everyFrame(CameraPath.Look[] looks, double[] all) {
    CameraPath.Look[] out = new CameraPath.Look[all.length];
    int k = 0;
    for (int i = 0; i < all.length; i++) {
      while (k + 1 < looks.length && times.get(k + 1) <= all[i]) {
        k++;
      }
      if (all[i] <= times.get(k) || k + 1 == looks.length) {
        out[i] = looks[k];
        continue;
      }
      CameraPath.Look a = looks[k];
      CameraPath.Look b = looks[k + 1];
      double share = (all[i] - times.get(k)) / (times.get(k + 1) - times.get(k));
      double[] v = Turning.vector(Turning.between(Turning.of(a.x(), a.y(), a.z()), Turning.of(b.x(), b.y(), b.z()), share));
      out[i] =
          new CameraPath.Look(
              v[0], v[1], v[2], a.focal() + share * (b.focal() - a.focal()), a.drift() + share * (b.drift() - a.drift()),
              Math.max(a.jitter(), b.jitter()));
    }
    return out;
  }
}
