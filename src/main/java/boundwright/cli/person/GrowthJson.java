package boundwright.cli.person;

import boundwright.athlete.Athlete;
import boundwright.athlete.growth.FastGrowth;
import boundwright.athlete.growth.GrowthAnswer;
import boundwright.athlete.growth.GrowthSettings;
import boundwright.athlete.growth.GrowthWords;
import boundwright.athlete.growth.MaturityOffset;
import boundwright.athlete.growth.Measurement;
import boundwright.quantity.Estimate;
import java.io.PrintWriter;
import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** What {@code growth --json} prints; field by field in {@code docs/formats-json.md}. */
public record GrowthJson(
    @Nullable String athlete,
    List<Measured> measured,
    @Nullable Range speed_cm_y,
    @Nullable String speedMissing,
    @Nullable Fast fast,
    @Nullable Offset offset,
    @Nullable String offsetMissing,
    @Nullable String measureOn,
    String measureWhy,
    Settings settings) {
  /** One measurement. */
  public record Measured(long id, String date, double height_m, @Nullable Double sitting_m, @Nullable Double mass_kg, String by) {
    static Measured of(Measurement m) {
      return new Measured(m.id(), m.date().toString(), m.height_m(), m.sitting_m(), m.mass_kg(), m.by());
    }
  }

  /** The 5, 50 and 95 % points. */
  public record Range(double p05, double p50, double p95) {
    static Range of(Estimate e) {
      return new Range(e.p05(), e.p50(), e.p95());
    }
  }

  /** Fast growth, now or not long ago. */
  public record Fast(boolean now, String until, String heightOf, double limit_cm_y) {
    static Fast of(FastGrowth f) {
      return new Fast(f.now(), f.until().toString(), f.measured().toString(), f.limit_cm_y());
    }
  }

  /** Years from the height spurt's peak. */
  public record Offset(double years, double error_y) {
    static Offset of(MaturityOffset o) {
      return new Offset(o.years(), o.error_y());
    }
  }

  /** What the facility set. */
  public record Settings(double fast_cm_y, double unsure_cm_y, int weeks) {
    static Settings of(GrowthSettings s) {
      return new Settings(s.fast_cm_y(), s.unsure_cm_y(), s.weeks());
    }
  }

  /** Of nobody: what the facility set alone. */
  static GrowthJson of(GrowthSettings settings) {
    return new GrowthJson(null, List.of(), null, null, null, null, null, null, "", Settings.of(settings));
  }

  static GrowthJson of(Athlete who, GrowthAnswer a) {
    LocalDate next = a.measureOn();
    return new GrowthJson(
        who.name(),
        a.measured().stream().map(Measured::of).toList(),
        a.speed_cm_y() == null ? null : Range.of(a.speed_cm_y()),
        a.speedMissing(),
        a.fast() == null ? null : Fast.of(a.fast()),
        a.offset() == null ? null : Offset.of(a.offset()),
        a.offsetMissing(),
        next == null ? null : next.toString(),
        a.measureWhy(),
        Settings.of(a.settings()));
  }

  void print(PrintWriter out, @Nullable GrowthAnswer answer, GrowthWords words, LocalDate today) {
    if (answer == null) {
      out.println(
          "Fast from " + words.speed(settings.fast_cm_y()) + " on; measure again when it is less sure than " + words.speed(settings.unsure_cm_y())
              + ", or after " + settings.weeks() + " weeks.");
      return;
    }
    out.println(athlete);
    words.all(answer, today).forEach(line -> out.println("  " + line));
    answer.measured().forEach(m -> out.println("  measurement " + m.id() + ": " + m.date() + ", " + words.told(m)));
  }
}
