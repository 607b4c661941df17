package boundwright.web.watching;

import boundwright.athlete.Athlete;
import boundwright.athlete.Surface;
import boundwright.footfall.Sequence;
import boundwright.picture.TestPicture;
import boundwright.quantity.LengthUnit;
import boundwright.readiness.LegTests;
import boundwright.readiness.TestError;
import boundwright.readiness.TestKind;
import boundwright.readiness.TestProtocol;
import boundwright.readiness.TestScore;
import boundwright.web.page.Figures;
import boundwright.web.page.Written;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/**
 * The tests of one athlete.
 *
 * @param athlete whose
 * @param blocks one for each test that was done, the newest first
 * @param legs the single-leg tests
 * @param kind the test that the form is for
 * @param protocol how the athlete did it last, or as it is usually done
 * @param unit the coach's unit
 * @param written what became of the forms
 * @param token makes a double tap one entry
 * @param today the day
 */
public record TestsView(
    Athlete athlete,
    List<Block> blocks,
    LegTests legs,
    TestKind kind,
    TestProtocol protocol,
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
   * @param wide the picture for a desk
   * @param narrow the same for a phone
   * @param trend what the squad's scores say together, or why nothing can be said
   */
  public record Block(
      TestKind kind, int steps, List<TestScore> scores, @Nullable TestError error, TestPicture wide, TestPicture narrow, String trend) {
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

  /** The contacts of the chosen test, begun on the take-off foot; empty for a run-up. */
  public String letters() {
    return kind.sequence()
        .map(s -> kind.leg().isPresent() || s.contacts().get(0) == athlete.takeOffFoot() ? s : s.mirrored())
        .map(Sequence::text)
        .orElse("");
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

  /** The style in which the newest score fits a narrow screen. */
  public String size(TestKind of, double value) {
    return of.unit() == TestKind.Unit.METRES ? Figures.size(unit, value) : "six";
  }

  /** A day as it is read. */
  public String day(LocalDate day) {
    return Figures.day(day, today);
  }
}
