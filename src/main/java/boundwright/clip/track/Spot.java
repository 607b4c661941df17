package boundwright.clip.track;

import java.util.List;

/**
 * A place in a plane: pixels right and down in the picture, or metres forward and up in the athlete's plane.
 *
 * @param x right [px] or forward [m]
 * @param y down [px] or up [m]
 */
public record Spot(double x, double y) {
  /** Whether both are numbers. */
  public boolean known() {
    return !Double.isNaN(x) && !Double.isNaN(y);
  }

  /** Distance to another spot, same unit. */
  public double to(Spot other) {
    return Math.hypot(other.x - x, other.y - y);
  }

  /** The point {@code share} of the way to another; 0 is this one. */
  public Spot towards(Spot other, double share) {
    return new Spot(x + share * (other.x - x), y + share * (other.y - y));
  }

  /** The median of each direction by itself; unknown where there is none. */
  public static Spot median(List<Spot> of) {
    if (of.isEmpty()) {
      return new Spot(Double.NaN, Double.NaN);
    }
    double[] x = of.stream().mapToDouble(Spot::x).sorted().toArray();
    double[] y = of.stream().mapToDouble(Spot::y).sorted().toArray();
    return new Spot(x[x.length / 2], y[y.length / 2]);
  }
}
