package boundwright.web;

import boundwright.quantity.LengthUnit;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Splits what {@link LengthUnit} writes into figures and units, so that a page can set the figures large. */
public final class Figures {
  private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("EEE d MMMM yyyy", Locale.ENGLISH);
  private static final Pattern PART = Pattern.compile("(-?[0-9][0-9./ ]*?)\\s*(ft|in|m)\\b");

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
    List<Part> out = new ArrayList<>();
    Matcher m = PART.matcher(unit.write(metres));
    while (m.find()) {
      out.add(new Part(oneSign(m.group(1).strip()), m.group(2)));
    }
    return List.copyOf(out);
  }

  /** A chance as reps in a hundred, never rounded to certainty. */
  public static String chance(double chance) {
    return Math.min(99, Math.max(1, Math.round(chance * 100))) + " in 100";
  }

  /** A chance in percent, never rounded to certainty: {@code 29 %}. */
  public static String percent(double chance) {
    return chance <= 0 ? "0 %" : chance >= 1 ? "100 %" : Math.min(99, Math.max(1, Math.round(chance * 100))) + " %";
  }

  /** A wind with its sign: {@code +1.2}. */
  public static String wind(double speed) {
    return String.format(Locale.ROOT, speed < 0 ? "\u2212%.1f" : "+%.1f", Math.abs(speed));
  }

  /** A speed: {@code 8.42 m/s}. */
  public static String speed(double speed) {
    return String.format(Locale.ROOT, "%.2f m/s", speed);
  }

  /** A number without a needless fraction: {@code 2}, {@code 2.5}. */
  public static String plain(double number) {
    return number == Math.rint(number) ? String.valueOf(Math.round(number)) : String.valueOf(number);
  }

  /** A day for a list: {@code Sat 18 July 2026}. */
  public static String day(LocalDate day) {
    return DAY.format(day);
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
    return steps == 0 ? "from standing" : "from " + steps + (steps == 1 ? " step" : " steps");
  }

  /** A rung in words: {@code standing}, {@code 4 steps}. */
  public static String rung(int steps) {
    return steps == 0 ? "standing" : steps + (steps == 1 ? " step" : " steps");
  }

  private static String oneSign(String figure) {
    return figure.replace(" 1/4", "\u00bc").replace(" 1/2", "\u00bd").replace(" 3/4", "\u00be");
  }
}
