package boundwright.web.page;

import boundwright.athlete.Athlete;
import boundwright.quantity.LengthUnit;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;

/** Splits what {@link LengthUnit} writes into figures and units, so that a page can set the figures large. */
public final class Figures {
  private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("d MMMM", Locale.ENGLISH);
  private static final DateTimeFormatter DAY_OF_YEAR = DateTimeFormatter.ofPattern("d MMMM yyyy", Locale.ENGLISH);
  private static final DateTimeFormatter WEEKDAY = DateTimeFormatter.ofPattern("EEE d MMMM yyyy", Locale.ENGLISH);

  private Figures() {}

  /**
   * A figure and its unit.
   *
   * @param figure {@code 9.52}
   * @param unit {@code m}
   */
  public record Part(String figure, String unit) {}

  /** {@code 9.52 m}, or {@code 31 ft} and {@code 2 3/4 in} with the fraction as one sign. */
  public static List<Part> of(LengthUnit unit, double metres) {
    return unit.parts(metres).stream().map(p -> new Part(p.figure(), p.unit())).toList();
  }

  /** A chance in percent, never rounded to certainty: {@code 29 %}, {@code < 1 %}. */
  public static String odds(double chance) {
    return chance > 0 && chance < 0.005 ? "< 1 %" : chance < 1 && chance > 0.995 ? "> 99 %" : percent(chance);
  }

  /** A length for a narrow cell: it may break between feet and inches, nowhere else. */
  public static String tight(LengthUnit unit, double metres) {
    return unit.write(metres).replace(' ', '\u00a0').replace("ft\u00a0", "ft ");
  }

  /** A wind with its sign: {@code +1.2}. */
  public static String wind(double speed) {
    return String.format(Locale.ROOT, speed < 0 ? "\u2212%.1f" : "+%.1f", Math.abs(speed));
  }

  /** A speed: {@code 8.42 m/s}. */
  public static String speed(double speed) {
    return String.format(Locale.ROOT, "%.2f m/s", speed);
  }

  /** A day for a list: {@code Sat 18 July 2026}. */
  public static String day(LocalDate day) {
    return WEEKDAY.format(day);
  }

  /** A length as it is typed on a phone: metres without the unit, {@code 9.52}; feet and inches in full. */
  public static String bare(LengthUnit unit, double metres) {
    return unit.write(metres).replaceFirst(" m$", "");
  }

  /** The style in which a length fits a narrow screen: none, {@code six} for {@code 101.50 m}, {@code long} in feet and inches. */
  public static String size(LengthUnit unit, double metres) {
    if (unit == LengthUnit.FEET_INCHES) {
      return "long";
    }
    return unit.write(metres).length() > "11.66 m".length() ? "six" : "";
  }

  /** Approach steps in words: {@code from standing}, {@code from 4 steps}. */
  public static String fromSteps(int steps) {
    return Athlete.fromSteps(steps);
  }

  /** A rung in words: {@code standing}, {@code 4 steps}. */
  public static String rung(int steps) {
    return steps == 0 ? "standing" : steps + (steps == 1 ? " step" : " steps");
  }

  /** A count or a limit without decimals it does not have: {@code 48}, {@code 12.5}. */
  public static String whole(double value) {
    return value == Math.rint(value) ? String.valueOf((long) value) : String.format(Locale.ROOT, "%.1f", value);
  }

  /** A ratio with the decimals it has, at most three: {@code 8}, {@code 8.008}. */
  public static String whole3(double value) {
    return String.format(Locale.ROOT, "%.3f", value).replaceFirst("\\.?0+$", "");
  }

  /** A share in per cent, {@code 83 %}. */
  public static String percent(double share) {
    return Math.round(share * 100) + " %";
  }

  /** A figure with so many decimals; a dash where there is none. */
  public static String fixed(double value, int decimals) {
    return Double.isFinite(value) ? String.format(Locale.ROOT, "%." + decimals + "f", value) : "\u2013";
  }

  /** A day as it is read: {@code 12 May}; the year only when it is not that of {@code today}. */
  public static String day(LocalDate day, LocalDate today) {
    return day.getYear() == today.getYear() ? DAY.format(day) : dayOfYear(day);
  }

  /** A day with its year: {@code 12 May 2026}. */
  public static String dayOfYear(LocalDate day) {
    return DAY_OF_YEAR.format(day);
  }
}
