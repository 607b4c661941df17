package boundwright.clip.contact;

import boundwright.clip.signal.Smoother;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Heel and toe of a foot taken as one stiff piece with the ankle, so that the errors of the three points average out. The
 * shape is the median over the clip, the turn in each frame is the best fit of the three points (Procrustes), smoothed.
 * Good for a landing; not for a toe-off, where the foot bends at the ball.
 */
@SuppressWarnings("ArrayRecordComponent") // numbers on their way between neighbours, never compared
final class RigidFoot {
  /** Equivalent cut-off of the foot's turning [Hz] (judgement: a foot slaps flat within some 30 ms). */
  private static final double CUT_OFF = 20;
  /** Standard deviation of a turn before it is measured [rad] (judgement). */
  private static final double TURN_SD = 0.1;
  /**
   * A smoothed turn errs so many times what its smoothing says, because it follows the errors that last (own output: landings
   * of made-up clips came out best with 2 to 2.5).
   */
  private static final double TURN_ERRS = 2.5;

  private RigidFoot() {}

  /**
   * The stiff foot's paths.
   *
   * @param heel the heel, from all three points
   * @param toe the toe, from all three points
   * @param pitch turn of the foot in each frame, smoothed, toe up positive [rad]; 0 is heel and toe level
   * @param length from heel to toe [m]
   */
  record Paths(FootPath heel, FootPath toe, double[] pitch, double length) {}

  /** The paths of a foot by its points, or null where one of them is missing or they were hardly ever seen together. */
  static @Nullable Paths of(@Nullable FootPath heel, @Nullable FootPath ankle, @Nullable FootPath toe) {
    if (heel == null || ankle == null || toe == null) {
      return null;
    }
    FootPath[] part = {heel, ankle, toe};
    int n = heel.times().length;
    double[] raw = new double[n];
    Arrays.setAll(raw, i -> Math.atan2(part[2].y()[i] - part[0].y()[i], part[2].x()[i] - part[0].x()[i]));
    double[][] shape = shape(part, raw);
    if (shape == null) {
      return null;
    }
    double[] turn = unwrapped(part, shape);
    double[] none = new double[n];
    for (int i = 0; i < n; i++) {
      none[i] = Double.isNaN(turn[i]) ? Double.NaN : 0;
    }
    Smoother.Path smooth = Smoother.run(heel.times(), turn, none, TURN_SD, CUT_OFF);
    return new Paths(part(part, shape, smooth, 0), part(part, shape, smooth, 2), smooth.x(), shape[2][0] - shape[0][0]);
  }

  /** Places of the three points in the foot's own frame, heel to toe level, from their middle; null with too few frames. */
  private static double @Nullable [][] shape(FootPath[] part, double[] angle) {
    List<double[]> along = new ArrayList<>();
    for (int i = 0; i < angle.length; i++) {
      if (Double.isNaN(angle[i]) || Double.isNaN(part[1].x()[i])) {
        continue;
      }
      double c = Math.cos(angle[i]);
      double s = Math.sin(angle[i]);
      double[] row = new double[4];
      for (int k = 1; k <= 2; k++) {
        double dx = part[k].x()[i] - part[0].x()[i];
        double dy = part[k].y()[i] - part[0].y()[i];
        row[2 * k - 2] = c * dx + s * dy;
        row[2 * k - 1] = -s * dx + c * dy;
      }
      along.add(row);
    }
    if (along.size() < 10) {
      return null;
    }
    double[] mid = new double[4];
    for (int c = 0; c < 4; c++) {
      int col = c;
      mid[c] = along.stream().mapToDouble(r -> r[col]).sorted().toArray()[along.size() / 2];
    }
    double[][] out = {{0, 0}, {mid[0], mid[1]}, {mid[2], mid[3]}};
    double mx = (mid[0] + mid[2]) / 3;
    double my = (mid[1] + mid[3]) / 3;
    for (double[] p : out) {
      p[0] -= mx;
      p[1] -= my;
    }
    return out;
  }

  /** Best turn in each frame with all three points, without jumps of a full circle; NaN where one is missing. */
  private static double[] unwrapped(FootPath[] part, double[][] shape) {
    int n = part[0].x().length;
    double[] out = new double[n];
    double last = 0;
    for (int i = 0; i < n; i++) {
      double mx = (part[0].x()[i] + part[1].x()[i] + part[2].x()[i]) / 3;
      double my = (part[0].y()[i] + part[1].y()[i] + part[2].y()[i]) / 3;
      double cos = 0;
      double sin = 0;
      for (int k = 0; k < 3; k++) {
        double px = part[k].x()[i] - mx;
        double py = part[k].y()[i] - my;
        cos += shape[k][0] * px + shape[k][1] * py;
        sin += shape[k][0] * py - shape[k][1] * px;
      }
      out[i] = Math.atan2(sin, cos);
      if (!Double.isNaN(out[i])) {
        out[i] += 2 * Math.PI * Math.round((last - out[i]) / (2 * Math.PI));
        last = out[i];
      }
    }
    return out;
  }

  /** One part from the middle of what was seen in each frame. */
  private static FootPath part(FootPath[] part, double[][] shape, Smoother.Path turn, int which) {
    int n = turn.x().length;
    double[] x = new double[n];
    double[] y = new double[n];
    double[] forward = new double[n];
    double[] up = new double[n];
    double noise = (part[0].smooth().noise() + part[1].smooth().noise() + part[2].smooth().noise()) / 3;
    for (int i = 0; i < n; i++) {
      double c = Math.cos(turn.x()[i]);
      double s = Math.sin(turn.x()[i]);
      int seen = 0;
      double alongFoot = 0;
      double acrossFoot = 0;
      for (int k = 0; k < 3; k++) {
        if (!Double.isNaN(part[k].x()[i])) {
          double dx = shape[which][0] - shape[k][0];
          double dy = shape[which][1] - shape[k][1];
          x[i] += part[k].x()[i] + c * dx - s * dy;
          y[i] += part[k].y()[i] + s * dx + c * dy;
          alongFoot += shape[which][0] - shape[k][0];
          acrossFoot += shape[which][1] - shape[k][1];
          seen++;
        }
      }
      x[i] = seen == 0 ? Double.NaN : x[i] / seen;
      y[i] = seen == 0 ? Double.NaN : y[i] / seen;
      // an error of the turn moves the part across the lever from the middle of what was seen
      double own = noise / Math.sqrt(Math.max(1, seen));
      double turnSd = TURN_ERRS * turn.sd()[i] / Math.max(1, seen);
      forward[i] = Math.hypot(own, turnSd * (s * alongFoot + c * acrossFoot));
      up[i] = Math.hypot(own, turnSd * (c * alongFoot - s * acrossFoot));
    }
    return new FootPath(part[which].times(), x, y, part[which].smooth(), forward, up);
  }
}
