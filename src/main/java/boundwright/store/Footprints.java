package boundwright.store;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;

/**
 * Footprints as one text, in the database and in files: positions in metres separated by {@code ;}, empty where a contact
 * was not seen. Every number comes back to the last bit.
 */
final class Footprints {
  private Footprints() {}

  /** {@code 3.1;;7.25}; empty text for no footprints. */
  static String write(List<Double> footprints_m) {
    StringBuilder out = new StringBuilder(footprints_m.size() * 6);
    for (int i = 0; i < footprints_m.size(); i++) {
      if (i > 0) {
        out.append(';');
      }
      double at = footprints_m.get(i);
      if (!Double.isNaN(at)) {
        out.append(number(at));
      }
    }
    return out.toString();
  }

  /** Reads what {@link #write} wrote; {@code read} reads one number. */
  static List<Double> read(String text, Reading read) {
    List<Double> out = new ArrayList<>();
    int from = 0;
    while (true) {
      int to = text.indexOf(';', from);
      String part = (to < 0 ? text.substring(from) : text.substring(from, to)).strip();
      out.add(part.isEmpty() ? Double.NaN : read.number(part));
      if (to < 0) {
        return out;
      }
      from = to + 1;
    }
  }

  /** A length in digits and a point, without exponent, as short as can be. */
  static String number(double value) {
    return BigDecimal.valueOf(value).stripTrailingZeros().toPlainString();
  }

  /** How one number is read. */
  interface Reading {
    /** The number in {@code text}. */
    double number(String text);
  }
}
