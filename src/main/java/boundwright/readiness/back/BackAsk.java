package boundwright.readiness.back;

import boundwright.footfall.Foot;
import boundwright.load.back.BackState;
import boundwright.load.back.Stages;
import boundwright.load.back.WayBack;
import boundwright.quantity.LengthUnit;
import boundwright.quantity.Notes;
import boundwright.readiness.TestError;
import boundwright.readiness.TestKind;
import boundwright.readiness.TestScore;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * One thing that a stage asks before the next. Days are asked by every stage; the leg's own test before half of the former week, before
 * the days are 72 hours apart, and before the end (judgement: an all-out test has no place earlier). The test is held against the leg's own
 * scores from before the days off, less the typical error of the test, never against the other leg or a norm.
 *
 * @param what in a few words
 * @param test whether it is the test; the others are days
 * @param met how it stands
 * @param said with the figures
 */
public record BackAsk(String what, boolean test, Met met, String said) {
  /** How it stands. */
  public enum Met {
    /** It is there. */
    YES("met"),
    /** It is not there yet. */
    NOT_YET("not yet"),
    /** It was tested, and it is below. */
    BELOW("below"),
    /** Nothing from before to hold it against. */
    CANNOT_TELL("cannot be told");

    private final String label;

    Met(String label) {
      this.label = label;
    }

    /** In words. */
    public String label() {
      return label;
    }
  }

  private static final double HALF = 0.5;

  /** Whether no step on is taken without it, whatever is noted: days that are missing, a test that is below. */
  public boolean refuses() {
    return test ? met == Met.BELOW : met != Met.YES;
  }

  /** The five on a leg. */
  static TestKind five(Foot leg) {
    return leg == Foot.RIGHT ? TestKind.SINGLE_LEG_RIGHT : TestKind.SINGLE_LEG_LEFT;
  }

  /** Whether the test is asked before the stage after this one. */
  static boolean tests(Stages s, int stage) {
    boolean toHalf = s.share(stage) < HALF && s.share(stage + 1) >= HALF;
    return toHalf || s.restDays(stage) < s.restDays(stage + 1) || stage + 1 >= s.count();
  }

  /**
   * What the stage asks.
   *
   * @param state where the leg stands
   * @param own scores of this athlete
   * @param squad scores of the squad, for the error of the test
   */
  static List<BackAsk> of(WayBack way, BackState state, List<TestScore> own, List<TestScore> squad, LengthUnit unit) {
    List<BackAsk> out = new ArrayList<>();
    out.add(
        new BackAsk(
            "Two clean days", false, state.clean() >= Stages.CLEAN_DAYS ? Met.YES : Met.NOT_YET,
            state.clean() + " of " + Stages.CLEAN_DAYS + ": the leg loaded with half of the stage's day or more, nothing above safe felt, settled next morning."));
    out.add(
        new BackAsk(
            "A week", false, state.days() >= Stages.LEAST_DAYS ? Met.YES : Met.NOT_YET, state.days() + " of " + Stages.LEAST_DAYS + " days in this stage."));
    if (tests(way.stages(), state.stage())) {
      out.add(test(way, own, squad, unit));
    }
    return List.copyOf(out);
  }

  private static BackAsk test(WayBack way, List<TestScore> own, List<TestScore> squad, LengthUnit unit) {
    TestKind kind = five(way.leg());
    LocalDate off = way.begun().minusDays(way.daysOff());
    List<TestScore> mine = own.stream().filter(s -> s.kind() == kind).sorted(Comparator.comparing(TestScore::date).thenComparing(TestScore::id)).toList();
    Optional<TestScore> now = mine.stream().filter(s -> !s.date().isBefore(way.begun())).reduce((a, b) -> b);
    List<TestScore> before =
        mine.stream()
            .filter(s -> s.date().isBefore(off))
            .filter(s -> now.isEmpty() || s.comparableWith(now.get()))
            .toList();
    Optional<TestError> error = TestError.of(squad, kind, 0, false);
    String what = Notes.capital(kind.label());
    if (before.isEmpty() || error.isEmpty()) {
      return new BackAsk(what, true, Met.CANNOT_TELL, cannotTell(way.leg(), kind, own, off, unit));
    }
    double usual = before.stream().mapToDouble(TestScore::value).average().orElseThrow();
    double te = error.get().te();
    String against =
        "its own " + (before.size() == 1 ? "score" : "mean of " + before.size()) + " from before the days off (" + unit.write(usual) + ") by more than the test's typical error ("
            + unit.write(te) + ")";
    if (now.isEmpty()) {
      return new BackAsk(what, true, Met.NOT_YET, "Not below " + against + ": at least " + unit.write(usual - te) + ". Not tested since; test it rested, as it was done then.");
    }
    double value = now.get().value();
    if (value >= usual - te) {
      return new BackAsk(what, true, Met.YES, unit.write(value) + " on " + now.get().date() + ": not below " + against + ".");
    }
    return new BackAsk(
        what, true, Met.BELOW,
        unit.write(value) + " on " + now.get().date() + ": below " + against + ". Stay in this stage, test again on a fresh day, and ask licensed medical staff.");
  }

  /** Nothing from before: the other leg is no measure of this one, but better known than nothing. */
  private static String cannotTell(Foot leg, TestKind kind, List<TestScore> own, LocalDate off, LengthUnit unit) {
    TestKind other = five(leg.other());
    Optional<TestScore> known = own.stream().filter(s -> s.kind() == other).max(Comparator.comparing(TestScore::date).thenComparing(TestScore::id));
    String there =
        known.map(s -> "The " + leg.other().label() + " leg reached " + unit.write(s.value()) + " on " + s.date() + ". ").orElse("");
    return "No " + kind.label() + " of the same kind from before " + off + ": what this leg used to reach cannot be told from the log. " + there
        + "Test the " + leg.other().label() + " leg the same way and show both to licensed medical staff.";
  }
}
