package boundwright.quantity;

import java.util.OptionalDouble;
import java.util.regex.Pattern;

/** A number as a person types it: with a point or a comma, and no power of ten. */
public final class WrittenNumber {
  private static final Pattern WRITTEN = Pattern.compile("[+-]?(\\d+[.,]?|\\d*[.,]\\d+)");

  private WrittenNumber() {}

  /**
   * Reads one.
   *
   * @param written the number; spaces around it are left out
   * @return empty if it is none
   */
  public static OptionalDouble read(String written) {
    String text = written.strip();
    return WRITTEN.matcher(text).matches() ? OptionalDouble.of(Double.parseDouble(text.replace(',', '.'))) : OptionalDouble.empty();
  }
}
