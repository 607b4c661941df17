package boundwright.web;

import boundwright.athlete.Athlete;
import boundwright.athlete.Surface;
import boundwright.evidence.Source;
import boundwright.quantity.LengthUnit;
import boundwright.readiness.LegTests;
import boundwright.readiness.TestError;
import boundwright.readiness.TestKind;
import boundwright.readiness.TestScore;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/**
 * The tests of one athlete.
 *
 * @param athlete whose
 * @param blocks one for each test that was done, newest first
 * @param legs the single-leg tests, or null without any
 * @param kind the test that the form is for
 * @param usual the usual protocol of that test, or the athlete's last one
 * @param unit the coach's unit
 * @param written what became of the forms
 * @param token makes a double tap one entry
 * @param today the day
 */
public record TestsView(
    Athlete athlete,
    List<Block> blocks,
    @Nullable LegTests legs,
    TestKind kind,
    boundwright.readiness.TestProtocol usual,
    LengthUnit unit,
    Written written,
    String token,
    LocalDate today) {
  /**
   * One test with its scores.
   *
   * @param kind which
   * @param steps approach steps, 0 from standing
   * @param scores newest first
   * @param error of the test in this squad, or null when nothing is known
   * @param change what the last two comparable scores say, or empty
   * @param trend of the squad, in words, or why there is none
   */
  public record Block(
      TestKind kind, int steps, List<TestScore> scores, @Nullable TestError error, String change, String trend) {
    /** The newest. */
    public TestScore latest() {
      return scores.get(0);
    }

    /** The test in words. */
    public String name() {
      return kind.label() + (steps == 0 ? "" : ", " + Figures.rung(steps));
    }
  }

  /** The tests to choose from. */
  public List<TestKind> kinds() {
    return List.of(TestKind.values());
  }

  /** The surfaces to choose from. */
  public List<Surface> surfaces() {
    return List.of(Surface.values());
  }

  /** A value of a test with its unit. */
  public String value(TestKind of, double value) {
    return of.unit() == TestKind.Unit.METRES ? unit.write(value) : String.format(Locale.ROOT, "%.2f m/s", value);
  }

  /** The same in figures and units. */
  public List<Figures.Part> parts(TestKind of, double value) {
    return of.unit() == TestKind.Unit.METRES
        ? Figures.of(unit, value)
        : List.of(new Figures.Part(String.format(Locale.ROOT, "%.2f", value), "m/s"));
  }

  /** A source in a line. */
  public String line(Source source) {
    return source.line();
  }

  /** A day as it is read. */
  public String day(LocalDate day) {
    return Figures.day(day, today);
  }
}
