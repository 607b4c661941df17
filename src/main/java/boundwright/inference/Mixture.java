package boundwright.inference;

import boundwright.quantity.Estimate;
import java.util.List;
import java.util.random.RandomGenerator;

/**
 * Several normals with weights that add up to 1: what is believed of a number when the spreads behind it are not known exactly.
 *
 * @param parts each normal and its weight, at least one
 */
public record Mixture(List<Part> parts) {
  /**
   * One normal.
   *
   * @param mean any unit
   * @param sd same unit, at least 0
   * @param weight 0 to 1
   */
  public record Part(double mean, double sd, double weight) {}

  /** Takes a copy. */
  public Mixture {
    parts = List.copyOf(parts);
  }

  /** Its mean. */
  public double mean() {
    return parts.stream().mapToDouble(p -> p.weight * p.mean).sum();
  }

  /** Its variance: of the parts, and of their means. */
  public double variance() {
    double mean = mean();
    return parts.stream().mapToDouble(p -> p.weight * (p.sd * p.sd + (p.mean - mean) * (p.mean - mean))).sum();
  }

  /** Chance of a value below {@code x}. */
  public double below(double x) {
    double sum = 0;
    for (Part p : parts) {
      sum += p.weight * (p.sd > 0 ? Normal.below((x - p.mean) / p.sd) : x >= p.mean ? 1 : 0);
    }
    return sum;
  }

  /** The value below which lies {@code chance}, 0 to 1 exclusive; by bisection. */
  public double quantile(double chance) {
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    for (Part p : parts) {
      low = Math.min(low, p.mean - 10 * p.sd);
      high = Math.max(high, p.mean + 10 * p.sd);
    }
    for (int i = 0; i < 60; i++) {
      double middle = (low + high) / 2;
      if (below(middle) < chance) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return (low + high) / 2;
  }

  /** Its 5, 50 and 95 % points. */
  public Estimate estimate() {
    double middle = quantile(0.5);
    return new Estimate(Math.min(quantile(0.05), middle), middle, Math.max(quantile(0.95), middle));
  }

  /** One draw. */
  public double draw(RandomGenerator random) {
    double u = random.nextDouble();
    for (Part p : parts) {
      u -= p.weight;
      if (u < 0) {
        return p.mean + p.sd * random.nextGaussian();
      }
    }
    Part last = parts.get(parts.size() - 1);
    return last.mean + last.sd * random.nextGaussian();
  }
}
