package boundwright.jump;

import boundwright.flight.Projectile;
import java.util.stream.IntStream;

/**
 * Every jump that an athlete could make by taking the three vertical speeds from what they have shown: an even grid of
 * them, of which {@link #shown} lie within what was shown together. Flight times and falls do not depend on the contact line, and a loss is linear in its two numbers, so a total is
 * {@code known - A0 first - A1 second}: told once per point, it costs two multiplications for every line that is
 * believed possible (worked).
 */
public final class ShareGrid {
  private static final double LEAST_SPEED = 1;

  private final ContactForm form;
  private final JumpProfile profile;
  private final int n;
  private final double[][] vy = new double[3][];
  private final double[][] time = new double[3][];
  private final double[][] fall = new double[3][];
  private final ShownTogether together;
  /** The points within what was shown together. */
  private final int[] shown;

  public ShareGrid(ContactForm form, JumpProfile profile, int perPhase) {
    this.form = form;
    this.profile = profile;
    this.n = perPhase;
    this.together = new ShownTogether(profile.together());
    for (int p = 0; p < 3; p++) {
      JumpProfile.ShownPhase s = profile.phases().get(p);
      vy[p] = new double[n];
      time[p] = new double[n];
      fall[p] = new double[n];
      for (int i = 0; i < n; i++) {
        vy[p][i] = s.least() + (s.most() - s.least()) * i / (n - 1);
        Projectile f = flight(p, vy[p][i]);
        time[p][i] = f.time();
        fall[p][i] = f.touchdownVy();
      }
    }
    shown = IntStream.range(0, n * n * n).filter(p -> together.holds(up(p), halfCell())).toArray();
  }

  private double halfCell() {
    return 0.5 / (n - 1);
  }

  private Projectile flight(int phase, double up) {
    JumpProfile.ShownPhase s = profile.phases().get(phase);
    return new Projectile(1, up, s.takeOffHeight_m().mean(), s.touchdownHeight_m().mean());
  }

  public int points() {
    return n * n * n;
  }

  /** The points of the grid that lie within what was shown together. */
  int[] shown() {
    return shown.clone();
  }

  /** Whether a point lies on the edge of what was shown together. */
  boolean onEdge(int point) {
    return together.onSurface(up(point), 2 * halfCell());
  }

  /** The point nearest to three vertical speeds. */
  public int nearest(double[] up) {
    int point = 0;
    for (int p = 0; p < 3; p++) {
      double step = (vy[p][n - 1] - vy[p][0]) / (n - 1);
      int i = step <= 0 ? 0 : (int) Math.round((up[p] - vy[p][0]) / step);
      point = point * n + Math.max(0, Math.min(n - 1, i));
    }
    return point;
  }

  public double[] up(int point) {
    return new double[] {vy[0][point / (n * n)], vy[1][point / n % n], vy[2][point % n]};
  }

  /** The next point up or down in one phase, itself on the end of the range. */
  int beside(int point, int phase, int by) {
    int[] at = {point / (n * n), point / n % n, point % n};
    at[phase] = Math.max(0, Math.min(n - 1, at[phase] + by));
    return (at[0] * n + at[1]) * n + at[2];
  }

  /** Known part and the two factors of a total, written to {@code out}. */
  public void terms(int point, double[] out) {
    int a = point / (n * n);
    int b = point / n % n;
    int c = point % n;
    double x1 = form.input(profile.firstTouchdownVy(), vy[0][a]);
    double x2 = x1 + form.input(fall[0][a], vy[1][b]);
    double x3 = x2 + form.input(fall[1][b], vy[2][c]);
    double t1 = time[0][a];
    double t2 = time[1][b];
    double t3 = time[2][c];
    out[0] = profile.approach().mean() * (t1 + t2 + t3) + ground();
    out[1] = t1 + 2 * t2 + 3 * t3;
    out[2] = x1 * t1 + x2 * t2 + x3 * t3;
  }

  private double ground() {
    double sum = 0;
    for (JumpProfile.ShownPhase s : profile.phases()) {
      sum += s.ground_m().mean();
    }
    return sum;
  }

  /** The three lengths under a line, or false when the jump would stall or the step fall below {@code floor}. */
  public boolean lengths(int point, double a0, double a1, double floor, double[] out) {
    int[] at = {point / (n * n), point / n % n, point % n};
    double speed = profile.approach().mean();
    double down = profile.firstTouchdownVy();
    for (int p = 0; p < 3; p++) {
      speed -= a0 + a1 * form.input(down, vy[p][at[p]]);
      if (speed < LEAST_SPEED) {
        return false;
      }
      out[p] = speed * time[p][at[p]] + profile.phases().get(p).ground_m().mean();
      down = fall[p][at[p]];
    }
    return out[1] >= floor && out[0] > 0 && out[2] > 0;
  }

  /** Whether a phase's vertical speed sits on the end of the shown range: -1 lower, 1 upper, 0 inside. */
  int edge(int point, int phase) {
    int i = phase == 0 ? point / (n * n) : phase == 1 ? point / n % n : point % n;
    return vy[phase][n - 1] - vy[phase][0] < 1e-9 || i == 0 ? -1 : i == n - 1 ? 1 : 0;
  }
}
