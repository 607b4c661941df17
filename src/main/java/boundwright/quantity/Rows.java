package boundwright.quantity;

/** Arithmetic of rows of numbers that several rooms need. */
public final class Rows {
  private Rows() {}

  /**
   * The sum of the products of two rows.
   *
   * @param a a row
   * @param b at least as long; what is beyond {@code a} is not looked at
   */
  public static double dot(double[] a, double[] b) {
    double sum = 0;
    for (int i = 0; i < a.length; i++) {
      sum += a[i] * b[i];
    }
    return sum;
  }
}
