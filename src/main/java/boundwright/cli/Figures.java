package boundwright.cli;

import java.util.regex.Pattern;
import picocli.CommandLine;
import picocli.CommandLine.TypeConversionException;

/** Reads the figures of options as the forms do: with a point or a comma, and what is none is told in a sentence. */
final class Figures {
  private static final Pattern DECIMAL = Pattern.compile("[+-]?(\\d+[.,]?|\\d*[.,]\\d+)");

  private Figures() {}

  /** Makes a command and those under it, added before, read them so. */
  static void readBy(CommandLine line) {
    line.registerConverter(Double.class, Figures::decimal)
        .registerConverter(double.class, Figures::decimal)
        .registerConverter(Integer.class, Figures::whole)
        .registerConverter(int.class, Figures::whole)
        .registerConverter(Long.class, Figures::number)
        .registerConverter(long.class, Figures::number);
  }

  private static double decimal(String written) {
    String text = written.strip();
    if (!DECIMAL.matcher(text).matches()) {
      throw new TypeConversionException("'" + written + "' is no figure. Write it as 1.5.");
    }
    return Double.parseDouble(text.replace(',', '.'));
  }

  private static int whole(String written) {
    long number = number(written);
    if (number != (int) number) {
      throw none(written);
    }
    return (int) number;
  }

  private static long number(String written) {
    try {
      return Long.parseLong(written.strip());
    } catch (NumberFormatException e) {
      throw none(written);
    }
  }

  private static TypeConversionException none(String written) {
    return new TypeConversionException("'" + written + "' is no whole number. Write it as 8.");
  }
}
