package boundwright.store.movein;

import boundwright.quantity.RefusedException;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * Reads the days of a file: 2026-11-03, 2026/11/03, 3.11.2026, 11/3/2026. Which number of the last two is the month is told by a day above 12
 * somewhere in the file, or by the coach; never by the sign between the numbers alone.
 */
final class Days {
  private static final Pattern YEAR_FIRST = Pattern.compile("(\\d{4})[-./](\\d{1,2})[-./](\\d{1,2})");
  private static final Pattern YEAR_LAST = Pattern.compile("(\\d{1,2})[-./ ](\\d{1,2})[-./ ](\\d{4})");
  /** Midnight, which spreadsheets add. */
  private static final Pattern MIDNIGHT = Pattern.compile("[ T]00:00(:00(\\.0+)?)?$");

  private final @Nullable DayOrder order;

  /** Days of a file whose order is known, or does not matter. */
  Days(@Nullable DayOrder order) {
    this.order = order;
  }

  /**
   * What a file says of the order of its days.
   *
   * @param dayFirst a cell can be read with the day first only
   * @param monthFirst a cell can be read with the month first only
   * @param open a cell can be read both ways, to two days
   */
  record Told(boolean dayFirst, boolean monthFirst, boolean open) {
    /** The order, or null where the file does not say one. */
    @Nullable DayOrder order() {
      return dayFirst == monthFirst ? null : dayFirst ? DayOrder.DAY_FIRST : DayOrder.MONTH_FIRST;
    }

    /** Whether the coach must be asked. */
    boolean ask() {
      return dayFirst == monthFirst && (dayFirst || open);
    }
  }

  /** Looks at all cells of a file that are days. */
  static Told look(List<String> cells) {
    boolean dayFirst = false;
    boolean monthFirst = false;
    boolean open = false;
    for (String cell : cells) {
      Matcher m = YEAR_LAST.matcher(tidy(cell));
      if (m.matches()) {
        int a = Integer.parseInt(m.group(1));
        int b = Integer.parseInt(m.group(2));
        dayFirst |= a > 12 && a <= 31 && b <= 12;
        monthFirst |= b > 12 && b <= 31 && a <= 12;
        open |= a <= 12 && b <= 12 && a != b;
      }
    }
    return new Told(dayFirst, monthFirst, open);
  }

  /**
   * Reads a cell.
   *
   * @param what how it is called in the refusal
   */
  LocalDate read(String what, String cell) {
    String text = tidy(cell);
    try {
      Matcher iso = YEAR_FIRST.matcher(text);
      if (iso.matches()) {
        return LocalDate.of(number(iso, 1), number(iso, 2), number(iso, 3));
      }
      Matcher m = YEAR_LAST.matcher(text);
      if (m.matches()) {
        int a = number(m, 1);
        int b = number(m, 2);
        if (a == b || order == DayOrder.DAY_FIRST) {
          return LocalDate.of(number(m, 3), b, a);
        }
        if (order == DayOrder.MONTH_FIRST) {
          return LocalDate.of(number(m, 3), a, b);
        }
        throw new RefusedException("The " + what + " '" + cell + "' can be two days. Say whether the file writes the day or the month first.");
      }
    } catch (DateTimeException e) {
      throw new RefusedException("The " + what + " '" + cell + "' is no day of the calendar" + (order == null ? "" : ", read as " + order.label()) + ". Correct it in the file.", e);
    }
    throw new RefusedException("The " + what + " '" + shortened(cell) + "' is not a day. Write it as 2026-11-03, or with the year in four digits as 3.11.2026.");
  }

  private static String tidy(String cell) {
    return MIDNIGHT.matcher(cell.strip()).replaceFirst("");
  }

  private static int number(Matcher m, int group) {
    return Integer.parseInt(m.group(group));
  }

  private static String shortened(String text) {
    return text.length() <= 40 ? text : text.substring(0, 40) + "...";
  }
}
