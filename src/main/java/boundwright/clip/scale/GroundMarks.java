package boundwright.clip.scale;

import boundwright.clip.track.Spot;
import boundwright.quantity.RefusedException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.QRDecomposition;

/**
 * Two or more marks on the runway, along the line on which the athlete runs. They calibrate the ground: foot placement.
 * Along the image of that line the map is u = (a X + b) / (c X + 1); two marks fix a and b (camera square to the
 * runway), more marks also show c. c is held towards 0 with a standard deviation of {@value #TILT_SD} per metre, about
 * a camera seven degrees off square at 12 m, so that three marks clicked a pixel off do not bend the scale (judgement).
 */
public final class GroundMarks {
  private static final double TILT_SD = 0.01;
  /** Standard deviation of a click [px] (judgement). */
  private static final double CLICK_SD = 1.0;
  /** Marks closer than this in the picture are refused [px]. */
  private static final double CLOSEST_PX = 60;
  /** A click off the line of the others by more than this share of their span is refused. */
  private static final double OFF_LINE = 0.06;

  /**
   * Four or more marks whose clicks miss the fit by more than this share of their span, root mean square, have a wrong
   * number among them (judgement: 6 px over 1000 px; careful clicks miss by 1 to 3). Three always fit nearly.
   */
  private static final double DISAGREE = 0.006;
  private static final double DISAGREE_PX = 4;

  private final Spot origin;
  private final double dx;
  private final double dy;
  private final double a;
  private final double b;
  private final double c;
  private final double residual;
  private final double middle;
  /** A root of the covariance of a, b and c, three rows: times itself turned it is the covariance. */
  private final double[][] root;

  private GroundMarks(Spot origin, double dx, double dy, double[] abc, double residual, double middle, double[][] root) {
    this.root = root;
    this.origin = origin;
    this.dx = dx;
    this.dy = dy;
    this.a = abc[0];
    this.b = abc[1];
    this.c = abc[2];
    this.residual = residual;
    this.middle = middle;
  }

  /**
   * A mark.
   *
   * @param picture where it was clicked [px]
   * @param at_m where it lies along the runway, forward [m]
   * @param frame number of the film's frame in which it was clicked, from 0
   */
  public record Mark(Spot picture, double at_m, int frame) {
    /** A mark of the first frame, as where the camera stood. */
    public Mark(Spot picture, double at_m) {
      this(picture, at_m, 0);
    }
  }

  /**
   * Fits the line and the scale along it.
   *
   * @throws RefusedException with fewer than two marks, marks too close, out of order, off one line, or four and more that
   *     do not agree
   */
  public static GroundMarks of(List<Mark> marks) {
    return of(marks, TILT_SD);
  }

  /**
   * The same where the camera may look at the runway from farther off square, as after a turn.
   *
   * @param tiltSd standard deviation of c towards 0 [1/m]
   */
  public static GroundMarks of(List<Mark> marks, double tiltSd) {
    if (marks.size() < 2) {
      throw new RefusedException(
          "The ground needs at least 2 marks; " + marks.size() + " was set. Click two marks on the runway whose distance you know.");
    }
    List<Mark> sorted = new ArrayList<>(marks);
    sorted.sort(Comparator.comparingDouble(Mark::at_m));
    Mark first = sorted.get(0);
    Mark last = sorted.get(sorted.size() - 1);
    double span = first.picture.to(last.picture);
    if (!(last.at_m - first.at_m >= 0.5)) {
      throw new RefusedException(
          String.format(
              Locale.ROOT, "The marks span %.2f m of runway; at least 0.50 m are needed, better 5 m or more.", last.at_m - first.at_m));
    }
    if (!(span >= CLOSEST_PX)) {
      throw new RefusedException(
          String.format(
              Locale.ROOT,
              "The marks at %.2f m and %.2f m are %.0f pixels apart in the picture; at least %.0f are needed. Click marks further apart.",
              first.at_m, last.at_m, span, CLOSEST_PX));
    }
    double dx = (last.picture.x() - first.picture.x()) / span;
    double dy = (last.picture.y() - first.picture.y()) / span;
    double mx = marks.stream().mapToDouble(m -> m.picture.x()).average().orElseThrow();
    double my = marks.stream().mapToDouble(m -> m.picture.y()).average().orElseThrow();
    Spot origin = new Spot(mx, my);
    double before = Double.NEGATIVE_INFINITY;
    for (Mark m : sorted) {
      double along = (m.picture.x() - mx) * dx + (m.picture.y() - my) * dy;
      double off = Math.abs((m.picture.y() - my) * dx - (m.picture.x() - mx) * dy);
      if (along <= before) {
        throw new RefusedException(
            String.format(
                Locale.ROOT,
                "The mark at %.2f m does not lie beyond the one before it in the picture. The marks are the wrong way round or two are exchanged: give their places in the order of the picture.",
                m.at_m));
      }
      if (off > OFF_LINE * span) {
        throw new RefusedException(
            String.format(
                Locale.ROOT,
                "The mark at %.2f m lies %.0f pixels off the line of the others. All ground marks must lie along the line on which the athlete runs.",
                m.at_m, off));
      }
      before = along;
    }
    GroundMarks out = fit(sorted, origin, dx, dy, tiltSd);
    if (sorted.size() >= 4 && out.residual > Math.max(DISAGREE_PX, DISAGREE * span)) {
      throw disagree(sorted, out, tiltSd);
    }
    return out;
  }

  /** Names the mark without which the others agree best. */
  private static RefusedException disagree(List<Mark> sorted, GroundMarks all, double tiltSd) {
    Mark worst = sorted.get(0);
    GroundMarks best = all;
    for (Mark m : sorted) {
      List<Mark> others = new ArrayList<>(sorted);
      others.remove(m);
      GroundMarks fit = fit(others, all.origin, all.dx, all.dy, tiltSd);
      if (fit.residual < best.residual) {
        best = fit;
        worst = m;
      }
    }
    return new RefusedException(
        String.format(
            Locale.ROOT,
            "The marks do not agree: they miss a common scale by %.0f pixels. Without the one at %.2f m the others agree to %.0f pixels, and it would lie at %.2f m. Write its distance anew, click it again, or take it away.",
            all.residual, worst.at_m, best.residual, best.along(worst.picture)));
  }

  private static GroundMarks fit(List<Mark> marks, Spot origin, double dx, double dy, double tiltSd) {
    int n = marks.size();
    double mid = marks.stream().mapToDouble(Mark::at_m).average().orElseThrow();
    double[] u = new double[n];
    double[] abc = {0, 0, 0};
    QRDecomposition fit = new QRDecomposition(new Array2DRowRealMatrix(3, 3));
    for (int i = 0; i < n; i++) {
      Spot p = marks.get(i).picture;
      u[i] = (p.x() - origin.x()) * dx + (p.y() - origin.y()) * dy;
    }
    // u (c X + 1) = a X + b is linear in a, b, c; one more row holds c towards 0
    for (int round = 0; round < 4; round++) {
      double[][] rows = new double[n + 1][3];
      double[] right = new double[n + 1];
      for (int i = 0; i < n; i++) {
        double x = marks.get(i).at_m - mid;
        double w = 1 / (CLICK_SD * Math.max(0.1, abc[2] * x + 1));
        rows[i] = new double[] {w * x, w, -w * u[i] * x};
        right[i] = w * u[i];
      }
      rows[n] = new double[] {0, 0, 1 / tiltSd};
      fit = new QRDecomposition(new Array2DRowRealMatrix(rows));
      abc = fit.getSolver().solve(new ArrayRealVector(right)).toArray();
    }
    double sum = 0;
    for (int i = 0; i < n; i++) {
      double x = marks.get(i).at_m - mid;
      double e = u[i] - (abc[0] * x + abc[1]) / (abc[2] * x + 1);
      sum += e * e;
    }
    double[][] half = fit.getSolver().getInverse().getData();
    return new GroundMarks(origin, dx, dy, abc, Math.sqrt(sum / n), mid, half);
  }

  /** Where along the runway a point on the ground lies [m]; the point is dropped square onto the line. */
  public double along(Spot picture) {
    double u = (picture.x() - origin.x()) * dx + (picture.y() - origin.y()) * dy;
    return middle + (u - b) / (a - c * u);
  }

  /** Standard deviation of the length from one place to another, by the clicks' own error [m]. */
  public double lengthSd(double from_m, double to_m) {
    double[] s = slope(from_m);
    double[] t = slope(to_m);
    double sum = 0;
    for (int k = 0; k < root[0].length; k++) {
      double v = 0;
      for (int r = 0; r < 3; r++) {
        v += (t[r] - s[r]) * root[r][k];
      }
      sum += v * v;
    }
    return Math.sqrt(sum);
  }

  /** How a place changes with a, b and c. */
  private double[] slope(double at_m) {
    double x = at_m - middle;
    double u = (a * x + b) / (c * x + 1);
    double down = a - c * u;
    return new double[] {-(u - b) / (down * down), -1 / down, u * (u - b) / (down * down)};
  }

  /** The picture point of a place along the runway [px]. */
  public Spot picture(double at_m) {
    double x = at_m - middle;
    double u = (a * x + b) / (c * x + 1);
    return new Spot(origin.x() + u * dx, origin.y() + u * dy);
  }

  /** Root mean square distance of the clicks from the fit [px]; 0 with two marks. */
  public double residualPixels() {
    return residual;
  }

  /**
   * The upright plane above the line, its scale upwards taken from the ground's own scale at the middle of the marks:
   * right for a level camera that looks square at the runway.
   */
  public PlaneMap upright() {
    return upright(-dy * signUp(), dx * signUp(), Math.abs(a), 0);
  }

  /**
   * The upright plane above the line, its scale upwards taken from something of known height standing on the line.
   *
   * @param foot picture point of its foot [px]
   * @param top picture point of its top [px]
   * @param height_m [m]
   * @throws RefusedException if the height is not 0.2 to 6 m, or spans fewer than 30 pixels, or leans far over
   */
  public PlaneMap upright(Spot foot, Spot top, double height_m) {
    double span = foot.to(top);
    if (!(height_m >= 0.2 && height_m <= 6) || !(span >= 30)) {
      throw new RefusedException(
          String.format(
              Locale.ROOT,
              "A known height of %.2f m over %.0f pixels cannot set the scale: 0.20 to 6.00 m over at least 30 pixels. Mark the foot and the top of something upright on the runway.",
              height_m, span));
    }
    double ux = (top.x() - foot.x()) / span;
    double uy = (top.y() - foot.y()) / span;
    if (uy > 0 || Math.abs(ux * dx + uy * dy) > 0.35) {
      throw new RefusedException(
          "The known height does not stand upright on the runway in the picture. Click its foot first, then its top.");
    }
    double x = along(foot) - middle;
    return upright(ux, uy, span / height_m, x);
  }

  /** Up in the picture is against y. */
  private double signUp() {
    return dx > 0 ? -1 : 1;
  }

  /** Verticals meet at infinity (level camera); {@code scale} pixels per metre upwards at the place {@code x}. */
  private PlaneMap upright(double ux, double uy, double scale, double x) {
    double k = scale * (c * x + 1);
    // in homogeneous form: (a X + b) d + (c X + 1) o + k Y u, over c X + 1; X from the middle of the marks
    double[][] h = {
      {a * dx + c * origin.x(), k * ux, b * dx + origin.x()},
      {a * dy + c * origin.y(), k * uy, b * dy + origin.y()},
      {c, 0, 1}
    };
    for (double[] row : h) {
      row[2] -= row[0] * middle;
    }
    return new PlaneMap(h);
  }

  /**
   * Marks along the athlete's line made from a map of the ground, for when only the edges of the runway are marked. Marks
   * on the edge used as if they lay under the athlete would make every length wrong by the edge's distance over the
   * camera's, about 5 % on a runway.
   *
   * @param ground map of the ground: first direction along the runway, second across, away from the camera [m]
   * @param across where the athlete runs, in the second direction [m]
   * @param from first place along the runway [m]
   * @param to last place along the runway [m]
   */
  public static GroundMarks under(PlaneMap ground, double across, double from, double to) {
    List<Mark> marks = new ArrayList<>();
    for (int i = 0; i <= 4; i++) {
      double at = from + (to - from) * i / 4;
      marks.add(new Mark(ground.toPicture(new Spot(at, across)), at));
    }
    return of(marks);
  }

  /**
   * Refuses marks that count against the run.
   *
   * @param travel_m how far the athlete went by these marks [m]
   */
  public static void refuseBackwards(double travel_m) {
    if (travel_m < 0) {
      throw new RefusedException(
          String.format(
              Locale.ROOT,
              "By these marks the athlete runs backwards, %.2f m. The marks are the wrong way round: places must grow in the direction of the run.",
              travel_m));
    }
  }
}
