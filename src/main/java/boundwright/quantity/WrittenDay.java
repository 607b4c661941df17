package boundwright.quantity;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A day as a person types it: 2026-05-14 (ISO 8601), or with dots day.month.year, 14.5.2026 (common practice where dots are written). With
 * slashes both day/month and month/day are common practice: taken where only one reading is a day of the calendar or both are the same.
 */
public final class WrittenDay {
  private static final Pattern YEAR_FIRST = Pattern.compile("(\\d{4})-(\\d{2})-(\\d{2})");
  private static final Pattern DOTS = Pattern.compile("(\\d{1,2})\\.\\s?(\\d{1,2})\\.\\s?(\\d{4})");
  private static final Pattern SLASHES = Pattern.compile("(\\d{1,2})/(\\d{1,2})/(\\d{4})");
  private static final int MONTHS = 12;

  private WrittenDay() {}

  /**
   * Reads one.
   *
   * @param written the day; spaces around it are left out
   * @throws RefusedException if it is no day, or with slashes could be two
   */
  public static LocalDate read(String written) {
    String text = written.strip();
    try {
      Matcher iso = YEAR_FIRST.matcher(text);
      if (iso.matches()) {
        return day(iso, 1, 2, 3);
      }
      Matcher dots = DOTS.matcher(text);
      if (dots.matches()) {
        return day(dots, 3, 2, 1);
      }
      Matcher slashes = SLASHES.matcher(text);
      if (slashes.matches()) {
        return slashes(slashes);
      }
    } catch (DateTimeException e) {
      throw new RefusedException("The day '" + shortened(text) + "' is no date of the calendar. Write year, month, day, as in 2026-05-14.", e);
    }
    throw new RefusedException("The day '" + shortened(text) + "' is no date. Write year, month, day, as in 2026-05-14, or day.month.year, as in 14.5.2026.");
  }

  private static LocalDate slashes(Matcher m) {
    int a = Integer.parseInt(m.group(1));
    int b = Integer.parseInt(m.group(2));
    if (b > MONTHS) {
      return day(m, 3, 1, 2);
    }
    if (a > MONTHS || a == b) {
      return day(m, 3, 2, 1);
    }
    throw new RefusedException(
        "The day '" + m.group() + "' can be two: day first it is " + day(m, 3, 2, 1) + ", month first " + day(m, 3, 1, 2) + ". Write the one that is meant, in these figures.");
  }

  private static LocalDate day(Matcher m, int year, int month, int day) {
    return LocalDate.of(Integer.parseInt(m.group(year)), Integer.parseInt(m.group(month)), Integer.parseInt(m.group(day)));
  }

  private static String shortened(String text) {
    return text.length() <= 40 ? text : text.substring(0, 40) + "...";
  }
}
