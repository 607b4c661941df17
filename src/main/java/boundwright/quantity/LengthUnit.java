package boundwright.quantity;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The two ways in which a coach writes a length. A length is stored in metres and only written in the coach's unit.
 * One foot is 0.3048 m and one inch 0.0254 m exactly (international yard and pound agreement, 1959; published).
 */
public enum LengthUnit {
  /** Metres to the centimetre: {@code 12.35 m}. */
  METRES("metres"),
  /** Feet and inches to the quarter inch: {@code 40 ft 6 1/4 in}. */
  FEET_INCHES("feet and inches");

  /** Metres in a foot, exactly. */
  public static final double FOOT_M = 0.3048;
  /** Metres in an inch, exactly. */
  public static final double INCH_M = 0.0254;

  private static final Pattern METRIC = Pattern.compile("([+-]?\\d+(?:[.,]\\d+)?)\\s*(m|cm)?");
  private static final Pattern IMPERIAL =
      Pattern.compile(
          "(-)?(?:(\\d+(?:[.,]\\d+)?)\\s*(?:ft|feet|foot|'|′))?\\s*-?\\s*"
              + "(?:(\\d+(?:[.,]\\d+)?)?\\s*(?:(\\d+)\\s*/\\s*(\\d+)|([¼½¾]))?\\s*(in|inch|inches|\"|″|'')?)?");
  /** Feet and inches with a dash, as result lists print them: {@code 40-06.25} (common practice). */
  private static final Pattern DASHED = Pattern.compile("(\\d+)\\s*-\\s*(\\d+(?:[.,]\\d+)?)");

  private final String label;

  LengthUnit(String label) {
    this.label = label;
  }

  /** How the unit is named to the coach. */
  public String label() {
    return label;
  }

  /** The step to which this unit is written [m]: a centimetre, or a quarter inch. */
  public double step() {
    return this == METRES ? 0.01 : INCH_M / 4;
  }

  /** {@code metres} to the nearest step that this unit can write [m], half a step away from zero; never a negative zero. */
  public double round(double metres) {
    double size = Math.abs(metres);
    double rounded =
        this == METRES ? BigDecimal.valueOf(size).setScale(2, RoundingMode.HALF_UP).doubleValue() : quarterInches(size) * step();
    return metres < 0 && rounded > 0 ? -rounded : rounded;
  }

  private static long quarterInches(double size) {
    return Math.round(size / (INCH_M / 4));
  }

  /**
   * Writes a length given in metres, with its unit, to the nearest step: {@code 12.35 m}, {@code 40 ft 6 1/4 in}. What is less than a
   * foot has no feet, so that a minus never stands before a nought: {@code -3/4 in}.
   */
  public String write(double metres) {
    double rounded = round(metres);
    if (this == METRES) {
      return Decimals.fixed(rounded, 2) + " m";
    }
    long quarters = quarterInches(Math.abs(metres));
    long feet = quarters / 48;
    long inches = quarters % 48 / 4;
    String fraction = List.of("", "1/4", "1/2", "3/4").get((int) (quarters % 4));
    boolean bareFraction = feet == 0 && inches == 0 && !fraction.isEmpty();
    return (rounded < 0 ? "-" : "") + (feet == 0 ? "" : feet + " ft ") + (bareFraction ? "" : inches + (fraction.isEmpty() ? "" : " "))
        + fraction + " in";
  }

  /**
   * A figure and its unit.
   *
   * @param figure {@code 9.52}
   * @param unit {@code m}
   */
  public record Part(String figure, String unit) {}

  private static final Pattern PART = Pattern.compile("(-?[0-9][0-9./ ]*?)\\s*(ft|in|m)\\b");

  /** {@code 9.52 m}, or {@code 31 ft} and {@code 2 3/4 in} with the fraction as one sign, so that figures can be set large. */
  public List<Part> parts(double metres) {
    List<Part> out = new ArrayList<>();
    Matcher m = PART.matcher(write(metres));
    while (m.find()) {
      String figure = m.group(1).strip().replaceFirst(" ?1/4", "\u00bc").replaceFirst(" ?1/2", "\u00bd").replaceFirst(" ?3/4", "\u00be");
      out.add(new Part(figure, m.group(2)));
    }
    return List.copyOf(out);
  }

  /** Writes a spread without false precision: {@code ± 18 cm}, {@code ± 1.4 m}, {@code ± 7 in}. */
  public String writeSpread(double metres) {
    if (this == FEET_INCHES) {
      return "± " + Decimals.fixed(metres / INCH_M, 0) + " in";
    }
    return metres < 0.995
        ? "± " + Decimals.fixed(metres * 100, 0) + " cm"
        : "± " + Decimals.fixed(metres, 1) + " m";
  }

  /** Writes a length with its spread: {@code 3.42 m ± 4 cm}. */
  public String write(Estimate metres) {
    return write(metres.p50()) + " " + writeSpread(metres.halfWidth());
  }

  /** Writes a short length, at the board or a shift of a mark, without its sign: {@code 9 cm}, {@code 3 1/2 in}, {@code 1.20 m}. */
  public String writeSmall(double metres) {
    double size = Math.abs(metres);
    return this == METRES && size < 0.995 ? Decimals.fixed(100 * size, 0) + " cm" : write(size);
  }

  /**
   * Reads a length written by hand and returns metres. A bare number is metres, or feet in feet and inches, where
   * {@code 40-06.25} is 40 ft 6 1/4 in. Either unit is understood in both settings when it is written out.
   *
   * @param what how the length is named in the error, for example {@code "landing"}
   * @throws RefusedException if the text is no length; the sentence shows the text and two good examples
   */
  public double read(String what, String text) {
    String t = text.strip().toLowerCase(Locale.ROOT);
    Matcher metric = METRIC.matcher(t);
    if (metric.matches() && (this == METRES || metric.group(2) != null)) {
      double value = number(metric.group(1));
      return "cm".equals(metric.group(2)) ? value / 100 : value;
    }
    Matcher dashed = DASHED.matcher(t);
    if (this == FEET_INCHES && dashed.matches()) {
      return number(dashed.group(1)) * FOOT_M + number(dashed.group(2)) * INCH_M;
    }
    Matcher imperial = IMPERIAL.matcher(t);
    if (!t.isEmpty() && imperial.matches() && (this == FEET_INCHES || t.matches(".*(ft|feet|foot|in|['\"′″]).*"))) {
      return readImperial(what, text, t, imperial);
    }
    throw notALength(what, text);
  }

  /**
   * Reads a short length, at the board or a shift of a mark, and returns metres. A bare number is centimetres, or inches in
   * feet and inches; every other way of {@link #read} is understood too.
   *
   * @param what how the length is named in the error, for example {@code "board gap"}
   * @throws RefusedException if the text is no length, or a bare part of a centimetre, which is a slip for metres
   */
  public double readSmall(String what, String text) {
    String t = text.strip();
    boolean bare = t.matches(this == METRES ? "[+-]?\\d+(?:[.,]\\d+)?" : "[+-]?(?:\\d+(?:[.,]\\d+)?|(?:\\d+\\s+)?\\d+\\s*/\\s*\\d+)");
    if (this == METRES && bare && t.matches(".*[.,].*") && Math.abs(number(t)) < 1) {
      throw new RefusedException(
          "The " + what + " '" + t + "' is either centimetres or metres. Write it as 7 (centimetres) or with its unit, " + t + " m.");
    }
    if (!bare && !t.matches(".*[A-Za-z'\"′″].*")) {
      throw new RefusedException(
          "The " + what + " '" + t + "' is not a length. Write it as " + (this == METRES ? "7 (centimetres) or 0.07 m." : "3 1/2 (inches) or 7 cm."));
    }
    return read(what, bare ? t.replaceFirst("^\\+", "") + (this == METRES ? " cm" : " in") : t);
  }

  private double readImperial(String what, String text, String t, Matcher m) {
    boolean bareFeet = m.group(2) == null && m.group(3) != null && t.matches("-?\\d+(?:[.,]\\d+)?");
    boolean feetGiven = m.group(2) != null;
    boolean inchesGiven = m.group(3) != null || m.group(4) != null || m.group(6) != null;
    boolean inchesNamed = feetGiven || m.group(7) != null;
    if ((!feetGiven && !inchesGiven) || (inchesGiven && !inchesNamed && !bareFeet)) {
      throw notALength(what, text);
    }
    double feet = m.group(2) == null ? (bareFeet ? number(m.group(3)) : 0) : number(m.group(2));
    double inches = bareFeet || m.group(3) == null ? 0 : number(m.group(3));
    if (m.group(4) != null) {
      double below = number(m.group(5));
      if (below == 0) {
        throw notALength(what, text);
      }
      inches += number(m.group(4)) / below;
    }
    if (m.group(6) != null) {
      inches += "¼".equals(m.group(6)) ? 0.25 : "½".equals(m.group(6)) ? 0.5 : 0.75;
    }
    double metres = feet * FOOT_M + inches * INCH_M;
    return m.group(1) == null ? metres : -metres;
  }

  private RefusedException notALength(String what, String text) {
    return new RefusedException(
        "The " + what + " '" + text.strip() + "' is not a length. Write it as "
            + (this == METRES ? "12.35 (metres) or 40 ft 6 1/4 in." : "40 ft 6 1/4 in, 40' 6\" or 12.35 m."));
  }

  private static double number(String digits) {
    return Double.parseDouble(digits.replace(',', '.'));
  }
}
