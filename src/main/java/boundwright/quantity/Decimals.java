package boundwright.quantity;

import java.math.BigDecimal;
import java.math.RoundingMode;

/**
 * A number with so many decimals, half away from zero. Done in decimal digits and not by {@link String#format}, because that rounds
 * ties otherwise in a browser, and the same length must read the same on every screen.
 */
public final class Decimals {
  private Decimals() {}

  /**
   * {@code value} as {@link String#format} writes it with {@code %.nf} in the root locale: {@code 12.35}, {@code -0.00}.
   *
   * @param decimals 0 to 17
   */
  public static String fixed(double value, int decimals) {
    if (Double.isNaN(value) || Double.isInfinite(value)) {
      return String.valueOf(value);
    }
    boolean minus = value < 0 || (value == 0 && 1 / value < 0);
    return (minus ? "-" : "") + BigDecimal.valueOf(Math.abs(value)).setScale(decimals, RoundingMode.HALF_UP).toPlainString();
  }
}
