package boundwright.flight;

/**
 * How much wider or narrower than the prior says an athlete scatters: a factor on a prior variance, believed to be
 * inverse-gamma with shape {@code a} and scale {@code b}. Learned by variational Bayes beside the normal belief
 * (form: Särkkä and Nummenmaa 2009, IEEE Trans Autom Control 54:596-600; from memory).
 *
 * @param a shape, above 1
 * @param b scale, above 0
 */
record Scatter(double a, double b) {
  /** Before any rep: as wide as the prior says (mean 1), worth {@code 2 (strength + 1)} measured deviations. */
  static Scatter prior(double strength) {
    return new Scatter(strength + 1, strength);
  }

  /** The factor used while learning. */
  double learning() {
    return b / a;
  }

  /** The mean factor, used when forecasting. */
  double mean() {
    return b / (a - 1);
  }

  /** After {@code count} more deviations whose squares, over the prior variance, sum to {@code sum}. */
  Scatter after(double count, double sum) {
    return new Scatter(a + count / 2, b + sum / 2);
  }
}
