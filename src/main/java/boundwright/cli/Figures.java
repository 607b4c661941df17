package boundwright.cli;

import boundwright.quantity.WrittenNumber;
import java.util.OptionalDouble;
import picocli.CommandLine;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** Reads the figures of options as the forms do, see {@link WrittenNumber}; what is none is told in a sentence. */
final class Figures {
  private Figures() {}

  /** Makes a command and those under it, added before, read them so. */
  static void readBy(CommandLine line) {
    Decimal decimal = new Decimal();
    Whole whole = new Whole();
    Long64 number = new Long64();
    line.registerConverter(Double.class, decimal)
        .registerConverter(double.class, decimal)
        .registerConverter(Integer.class, whole)
        .registerConverter(int.class, whole)
        .registerConverter(Long.class, number)
        .registerConverter(long.class, number);
  }

  // Classes and no lambdas: Java 17 breaks down when it keeps lambdas of so old an interface in the archive of loaded classes.

  private static final class Decimal implements ITypeConverter<Double> {
    @Override
    public Double convert(String written) {
      OptionalDouble number = WrittenNumber.read(written);
      if (number.isEmpty()) {
        throw new TypeConversionException("'" + written + "' is no figure. Write it as 1.5.");
      }
      return number.getAsDouble();
    }
  }

  private static final class Whole implements ITypeConverter<Integer> {
    @Override
    public Integer convert(String written) {
      long number = number(written);
      if (number != (int) number) {
        throw none(written);
      }
      return (int) number;
    }
  }

  private static final class Long64 implements ITypeConverter<Long> {
    @Override
    public Long convert(String written) {
      return number(written);
    }
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
