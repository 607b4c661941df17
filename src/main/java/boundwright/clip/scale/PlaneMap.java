package boundwright.clip.scale;

import boundwright.clip.track.Spot;
import boundwright.quantity.RefusedException;
import java.util.List;
import java.util.Locale;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.LUDecomposition;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.QRDecomposition;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;

/**
 * The projective map between a plane in metres and the picture in pixels, eight parameters (check values in the tests:
 * worked). The plane may be the ground or the upright plane in which the athlete runs.
 */
public final class PlaneMap {
  private final double[][] toPicture;
  private final double[][] toPlane;

  /**
   * Takes the matrix that maps (x, y, 1) in metres to the picture.
   *
   * @throws RefusedException if the matrix cannot be inverted
   */
  public PlaneMap(double[][] toPicture) {
    this.toPicture = copy(toPicture);
    LUDecomposition lu = new LUDecomposition(new Array2DRowRealMatrix(toPicture));
    if (lu.getDeterminant() == 0) {
      throw new RefusedException("The points lie on one line, so they span no plane. Mark the four corners of a rectangle.");
    }
    this.toPlane = lu.getSolver().getInverse().getData();
  }

  /**
   * A known point.
   *
   * @param picture where it is in the picture [px]
   * @param plane where it is in the plane [m]
   * @param frame number of the film's frame in which it was clicked, from 0
   */
  public record Known(Spot picture, Spot plane, int frame) {
    /** A point of the first frame, as where the camera stood. */
    public Known(Spot picture, Spot plane) {
      this(picture, plane, 0);
    }
  }


  /**
   * The map through at least four known points, least squares when there are more.
   *
   * @throws RefusedException if there are too few, or three of four lie on a line, or all are too close in the picture
   */
  public static PlaneMap through(List<Known> points) {
    if (points.size() < 4) {
      throw new RefusedException(
          "A plane needs at least 4 points; " + points.size() + " were marked. Mark the four corners of a rectangle of known size.");
    }
    double span = 0;
    for (Known a : points) {
      for (Known b : points) {
        span = Math.max(span, a.picture.to(b.picture));
      }
    }
    if (span < 40) {
      throw new RefusedException(
          String.format(
              Locale.ROOT, "The marked points lie within %.0f pixels; at least 40 are needed, better half the picture. Mark points further apart.", span));
    }
    Norm from = Norm.of(points.stream().map(Known::plane).toList());
    Norm to = Norm.of(points.stream().map(Known::picture).toList());
    refuseLines(points, from, to);
    int n = points.size();
    RealMatrix a = MatrixUtils.createRealMatrix(2 * n, 8);
    RealVector b = new ArrayRealVector(2 * n);
    for (int i = 0; i < n; i++) {
      Spot p = from.apply(points.get(i).plane);
      Spot q = to.apply(points.get(i).picture);
      a.setRow(2 * i, new double[] {p.x(), p.y(), 1, 0, 0, 0, -q.x() * p.x(), -q.x() * p.y()});
      a.setRow(2 * i + 1, new double[] {0, 0, 0, p.x(), p.y(), 1, -q.y() * p.x(), -q.y() * p.y()});
      b.setEntry(2 * i, q.x());
      b.setEntry(2 * i + 1, q.y());
    }
    double[] h = new QRDecomposition(a, 1e-10).getSolver().solve(b).toArray();
    RealMatrix m = new Array2DRowRealMatrix(new double[][] {{h[0], h[1], h[2]}, {h[3], h[4], h[5]}, {h[6], h[7], 1}});
    RealMatrix full = MatrixUtils.inverse(to.matrix()).multiply(m).multiply(from.matrix());
    return new PlaneMap(full.scalarMultiply(1 / full.getEntry(2, 2)).getData());
  }

  /** With four points every three must span a triangle; with more, some three must. */
  private static void refuseLines(List<Known> points, Norm from, Norm to) {
    double least = Double.POSITIVE_INFINITY;
    double most = 0;
    for (int i = 0; i < points.size(); i++) {
      for (int j = i + 1; j < points.size(); j++) {
        for (int k = j + 1; k < points.size(); k++) {
          Known a = points.get(i);
          Known b = points.get(j);
          Known c = points.get(k);
          double size = Math.min(area(from, a.plane, b.plane, c.plane), area(to, a.picture, b.picture, c.picture));
          least = Math.min(least, size);
          most = Math.max(most, size);
        }
      }
    }
    // after centring and scaling a square's corners span triangles of area 1
    if ((points.size() == 4 ? least : most) < 0.005) {
      throw new RefusedException(
          (points.size() == 4 ? "Three of the four" : "All the")
              + " points lie on one line, so they span no plane. Mark the four corners of a rectangle.");
    }
  }

  private static double area(Norm norm, Spot a, Spot b, Spot c) {
    Spot p = norm.apply(a);
    Spot q = norm.apply(b);
    Spot r = norm.apply(c);
    return Math.abs((q.x() - p.x()) * (r.y() - p.y()) - (r.x() - p.x()) * (q.y() - p.y())) / 2;
  }

  /** From metres to pixels. */
  public Spot toPicture(Spot plane) {
    return apply(toPicture, plane);
  }

  /** From pixels to metres. */
  public Spot toPlane(Spot picture) {
    return apply(toPlane, picture);
  }

  /** Pixels per metre along the plane's first direction at a place. */
  public double pixelsPerMetre(Spot plane) {
    return toPicture(plane).to(toPicture(new Spot(plane.x() + 0.01, plane.y()))) / 0.01;
  }

  private static Spot apply(double[][] h, Spot p) {
    double w = h[2][0] * p.x() + h[2][1] * p.y() + h[2][2];
    return new Spot(
        (h[0][0] * p.x() + h[0][1] * p.y() + h[0][2]) / w, (h[1][0] * p.x() + h[1][1] * p.y() + h[1][2]) / w);
  }

  private static double[][] copy(double[][] m) {
    return new double[][] {m[0].clone(), m[1].clone(), m[2].clone()};
  }

  /** Centre and spread taken off, because pixels and metres differ by a thousand. */
  private record Norm(double cx, double cy, double scale) {
    static Norm of(List<Spot> spots) {
      double cx = spots.stream().mapToDouble(Spot::x).average().orElse(0);
      double cy = spots.stream().mapToDouble(Spot::y).average().orElse(0);
      Spot c = new Spot(cx, cy);
      double d = spots.stream().mapToDouble(s -> s.to(c)).average().orElse(0);
      return new Norm(cx, cy, d > 0 ? Math.sqrt(2) / d : 1);
    }

    Spot apply(Spot s) {
      return new Spot((s.x() - cx) * scale, (s.y() - cy) * scale);
    }

    RealMatrix matrix() {
      return new Array2DRowRealMatrix(new double[][] {{scale, 0, -scale * cx}, {0, scale, -scale * cy}, {0, 0, 1}});
    }
  }
}
