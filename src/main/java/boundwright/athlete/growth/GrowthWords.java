package boundwright.athlete.growth;

import boundwright.quantity.Decimals;
import boundwright.quantity.Estimate;
import boundwright.quantity.LengthUnit;
import boundwright.quantity.RefusedException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/**
 * What is said of growth in sentences, in the coach's unit: what is so, how sure, what to do. They are read by athletes too: no praise, no worry.
 *
 * @param unit in which heights and speeds are written
 * @param day writes a day
 */
public record GrowthWords(LengthUnit unit, Function<LocalDate, String> day) {
  /** A bare number from this on is centimetres: nobody is so many metres or feet tall. */
  private static final double CENTIMETRES_FROM = 30;
  private static final double SLOW = 1;
  /** No rod reads finer. */
  private static final double TENTHS_OF_MM = 10_000;

  /** {@code 162.4 cm}, {@code 5 ft 4 in}. */
  public String height(double metres) {
    return unit == LengthUnit.METRES ? Decimals.fixed(100 * metres, 1) + " cm" : unit.write(metres);
  }

  /** Reads a height as it is written at a wall: {@code 1.624}, {@code 162.4}, {@code 162.4 cm}, {@code 5 ft 4 in}; in metres. */
  public double read(String what, String text) {
    String t = text.strip();
    boolean bare = t.matches("\\d{1,6}(?:[.,]\\d{1,6})?");
    try {
      double metres = unit.read(what, bare && Double.parseDouble(t.replace(',', '.')) >= CENTIMETRES_FROM ? t + " cm" : t);
      return Math.round(metres * TENTHS_OF_MM) / TENTHS_OF_MM;
    } catch (RefusedException e) {
      throw new RefusedException("The " + what + " '" + t + "' cannot be read. Write it as 162.4 (cm), 1.624 m or 5 ft 4 in.", e);
    }
  }

  /** A speed with one decimal and without its unit. */
  private static String figure(double cm) {
    return Decimals.fixed(cm, 1);
  }

  /** {@code 6.4 cm a year}, whatever the unit of heights: so are the settings, and inches would read as the word. */
  public String speed(double cm) {
    return figure(cm) + " cm a year";
  }

  /** How fast, and how sure; or why it is not told. */
  public String speed(GrowthAnswer a) {
    Estimate v = a.speed_cm_y();
    if (v == null) {
      return String.valueOf(a.speedMissing());
    }
    return v.p50() < SLOW
        ? "Hardly growing: at most " + speed(v.p95()) + ", nine times in ten."
        : "Grows about " + speed(v.p50()) + "; between " + figure(v.p05()) + " and " + figure(v.p95()) + " nine times in ten.";
  }

  /** What fast growth changes, or empty. */
  public String fast(GrowthAnswer a) {
    FastGrowth f = a.fast();
    if (f == null) {
      return "";
    }
    return f.now()
        ? "That is fast, above the " + speed(f.limit_cm_y()) + " of the settings. It passes. Until then limits are lower, and steps and flights may change from week to week."
        : "Growth was fast until about " + day.apply(f.until()) + ". Limits rise again step by step.";
  }

  /** Years from the height spurt's peak with their error, or why not; empty where nothing is said. */
  public String offset(GrowthAnswer a) {
    MaturityOffset o = a.offset();
    if (o == null) {
      return a.offsetMissing() == null ? "" : a.offsetMissing();
    }
    double size = Math.abs(o.years());
    String years = Decimals.fixed(size, 1);
    String where = years.equals("0.0") ? "at" : years + (years.equals("1.0") ? " year " : " years ") + (o.years() < 0 ? "before" : "after");
    Measurement last = a.last();
    return (last == null ? "By" : "On " + day.apply(last.date()) + ", by") + " a formula made for many, about " + where + " the fastest growth, give or take half a year; less sure for who is early or late.";
  }

  /** When to measure next and why, or empty. */
  public String next(GrowthAnswer a, LocalDate today) {
    LocalDate on = a.measureOn();
    if (on == null) {
      return "";
    }
    return (on.isAfter(today) ? "Measure again on " + day.apply(on) + "." : "Measure now.") + (a.measureWhy().isEmpty() ? "" : " " + a.measureWhy());
  }

  /** All of it, in the order in which it is read; what is empty is left out. */
  public List<String> all(GrowthAnswer a, LocalDate today) {
    List<String> out = new ArrayList<>(List.of(speed(a), fast(a), next(a, today), offset(a)));
    out.removeIf(String::isEmpty);
    return out;
  }

  /** A measurement in a line, without its day. */
  public String told(Measurement m) {
    return height(m.height_m()) + optional("sitting", m.sitting_m() == null ? null : height(m.sitting_m()))
        + optional("", m.mass_kg() == null ? null : Decimals.fixed(m.mass_kg(), 1) + " kg") + optional("by", m.by().isEmpty() ? null : m.by());
  }

  private static String optional(String what, @Nullable String value) {
    return value == null ? "" : ", " + (what.isEmpty() ? "" : what + " ") + value;
  }
}
