package boundwright.readiness;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.hipparchus.analysis.MultivariateFunction;

/**
 * The REML criterion of a line per athlete, y = b0 + b1 z + (u0 + u1 z) + e with (u0, u1) ~ N(0, s2 L L') and e ~ N(0, s2), as
 * a function of the lower triangle L = (l1 0; l2 l3) alone: fixed effects and s2 are profiled out (Bates and others 2015, J Stat
 * Softw 67(1); memory). Every athlete is held as sums of squares and products, so one evaluation costs a few dozen operations
 * per athlete whatever the number of scores. Time is centred and scaled inside (z), scores are centred: the criterion is that
 * of the raw time.
 */
final class RemlDeviance implements MultivariateFunction {
  /** Sums of one athlete. */
  record Group(long athlete, int n, double z, double zz, double y, double zy) {}

  /** Symmetric 2 x 2. */
  record Sym(double a, double b, double c) {
    double det() {
      return a * c - b * b;
    }

    Sym inverse() {
      double d = det();
      return new Sym(c / d, -b / d, a / d);
    }

    Sym plus(Sym o) {
      return new Sym(a + o.a, b + o.b, c + o.c);
    }
  }

  /**
   * What belongs to one L.
   *
   * @param criterion minus twice the REML log-likelihood
   * @param b0 level at the mean time, of centred scores
   * @param b1 slope per scaled time
   * @param s2 residual variance
   * @param info the information of the fixed effects, to be divided by {@code s2}
   */
  record Solution(double criterion, double b0, double b1, double s2, Sym info) {}

  private final List<Group> groups = new ArrayList<>();
  private final int n;
  private final double yy;
  private final double centre;
  private final double scale;
  private final double meanScore;

  /** At least three observations on two different times. */
  RemlDeviance(List<TrendModel.Observation> observations) {
    n = observations.size();
    centre = observations.stream().mapToDouble(TrendModel.Observation::time).sum() / n;
    meanScore = observations.stream().mapToDouble(TrendModel.Observation::value).sum() / n;
    scale = Math.sqrt(observations.stream().mapToDouble(o -> (o.time() - centre) * (o.time() - centre)).sum() / n);
    Map<Long, List<TrendModel.Observation>> byAthlete = new TreeMap<>();
    double squares = 0;
    for (TrendModel.Observation o : observations) {
      byAthlete.computeIfAbsent(o.athlete(), k -> new ArrayList<>()).add(o);
      squares += (o.value() - meanScore) * (o.value() - meanScore);
    }
    yy = squares;
    byAthlete.forEach(
        (athlete, list) -> {
          double z = 0;
          double zz = 0;
          double y = 0;
          double zy = 0;
          for (TrendModel.Observation o : list) {
            double t = (o.time() - centre) / scale;
            double v = o.value() - meanScore;
            z += t;
            zz += t * t;
            y += v;
            zy += t * v;
          }
          groups.add(new Group(athlete, list.size(), z, zz, y, zy));
        });
  }

  List<Group> groups() {
    return groups;
  }

  int observations() {
    return n;
  }

  double centre() {
    return centre;
  }

  double scale() {
    return scale;
  }

  double meanScore() {
    return meanScore;
  }

  double totalSquares() {
    return yy;
  }

  @Override
  public double value(double[] l) {
    return solve(l).criterion();
  }

  /** Fixed effects, residual variance and criterion for this L, given as (l1), or (l1, l2, l3), or empty for no differences. */
  Solution solve(double[] l) {
    double logDet = 0;
    Sym info = new Sym(0, 0, 0);
    double r0 = 0;
    double r1 = 0;
    double wyy = yy;
    for (Group g : groups) {
      Whitened w = whiten(g, l);
      logDet += w.logDet();
      info = info.plus(w.h());
      r0 += w.b0();
      r1 += w.b1();
      wyy -= w.explained();
    }
    double det = info.det();
    double b0 = (info.c() * r0 - info.b() * r1) / det;
    double b1 = (info.a() * r1 - info.b() * r0) / det;
    double rest = Math.max(wyy - b0 * r0 - b1 * r1, 1e-14 * yy);
    double s2 = rest / (n - 2);
    // The information of raw time is that of scaled time with its determinant times scale squared.
    double criterion = logDet + Math.log(det) + 2 * Math.log(scale) + (n - 2) * (1 + Math.log(2 * Math.PI * s2));
    return new Solution(criterion, b0, b1, s2, info);
  }

  /**
   * One athlete seen through W = (I + Z L L' Z')^-1.
   *
   * @param h Z' W Z
   * @param b0 first of Z' W y
   * @param b1 second of Z' W y
   * @param logDet log determinant of I + Z L L' Z'
   * @param explained y' (I - W) y
   */
  record Whitened(Sym h, double b0, double b1, double logDet, double explained) {}

  static Whitened whiten(Group g, double[] l) {
    double l1 = l.length > 0 ? l[0] : 0;
    double l2 = l.length > 1 ? l[1] : 0;
    double l3 = l.length > 1 ? l[2] : 0;
    double a11 = g.n();
    double a12 = g.z();
    double a22 = g.zz();
    // A L, with A = Z'Z and L lower triangular.
    double p11 = a11 * l1 + a12 * l2;
    double p12 = a12 * l3;
    double p21 = a12 * l1 + a22 * l2;
    double p22 = a22 * l3;
    // I + L' A L and its inverse.
    Sym inner = new Sym(1 + l1 * p11 + l2 * p21, l3 * p21, 1 + l3 * p22);
    Sym k = inner.inverse();
    double c0 = l1 * g.y() + l2 * g.zy();
    double c1 = l3 * g.zy();
    double d0 = k.a() * c0 + k.b() * c1;
    double d1 = k.b() * c0 + k.c() * c1;
    double q11 = k.a() * p11 + k.b() * p12;
    double q12 = k.b() * p11 + k.c() * p12;
    double q21 = k.a() * p21 + k.b() * p22;
    double q22 = k.b() * p21 + k.c() * p22;
    Sym h = new Sym(a11 - q11 * p11 - q12 * p12, a12 - q11 * p21 - q12 * p22, a22 - q21 * p21 - q22 * p22);
    return new Whitened(h, g.y() - p11 * d0 - p12 * d1, g.zy() - p21 * d0 - p22 * d1, Math.log(inner.det()), c0 * d0 + c1 * d1);
  }
}
