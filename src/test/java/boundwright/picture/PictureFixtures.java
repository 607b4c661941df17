package boundwright.picture;

import boundwright.athlete.Athlete;
import boundwright.athlete.Level;
import boundwright.athlete.Surface;
import boundwright.card.AthleteReport;
import boundwright.card.AthleteReports;
import boundwright.card.ReportFacts;
import boundwright.flight.Outcome;
import boundwright.flight.Rep;
import boundwright.footfall.Foot;
import boundwright.footfall.Sequence;
import boundwright.load.Answer;
import boundwright.load.Band;
import boundwright.load.DayVerdict;
import boundwright.load.Finding;
import boundwright.load.Guard;
import boundwright.load.GuardLimits;
import boundwright.load.GuardOverride;
import boundwright.load.GuardSettings;
import boundwright.load.LegCare;
import boundwright.load.Room;
import boundwright.load.Season;
import boundwright.load.Verdict;
import boundwright.load.account.ContactWeights;
import boundwright.load.account.DayLoad;
import boundwright.load.account.History;
import boundwright.load.account.LegWeek;
import boundwright.load.account.LoadScale;
import boundwright.load.account.Work;
import boundwright.load.rating.SessionRating;
import boundwright.picture.strip.RunwayStrip.Width;
import boundwright.quantity.LengthUnit;
import boundwright.readiness.DrillFamily;
import boundwright.readiness.Gate;
import boundwright.readiness.GateAnswer;
import boundwright.readiness.GateCase;
import boundwright.readiness.GateRules;
import boundwright.readiness.LoadAnswer;
import boundwright.readiness.TestError;
import boundwright.readiness.TestKind;
import boundwright.readiness.TestProtocol;
import boundwright.readiness.TestScore;
import boundwright.readiness.TestTrend;
import boundwright.runway.CoachSettings;
import boundwright.technique.Fault;
import boundwright.technique.FaultCatalogue;
import boundwright.technique.FaultTick;
import boundwright.technique.FaultTrends;
import boundwright.technique.FootContact;
import boundwright.technique.JudgedRep;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;

/** Invented weeks, reps and scores for the pictures of this room; no athlete stands behind them. */
public final class PictureFixtures {
  private PictureFixtures() {}

  public static final LocalDate TODAY = LocalDate.of(2026, 3, 3);

  record Shown(String template, Object picture) {}

  public static Work work(String letters, int reps, int steps) {
    return new Work(Sequence.parse(letters), reps, steps, Surface.GRASS);
  }

  /** Twelve weeks of two or three sessions that climb from standing to six steps; the newest week rises too fast. */
  public static List<DayLoad> days() {
    List<DayLoad> out = new ArrayList<>();
    for (int w = 12; w >= 0; w--) {
      int reps = 2 + (12 - w) / 3 + (w == 0 ? 3 : 0) - (w == 4 ? 2 : 0);
      LocalDate last = TODAY.minusWeeks(w);
      out.add(new DayLoad(last.minusDays(5), List.of(work("RL x5", reps, 0), work("RRL x2", reps, w > 8 ? 0 : 2))));
      if (w != 4) {
        out.add(new DayLoad(last.minusDays(2), List.of(work("RRL x2", reps, w > 6 ? 2 : 4), work("RRLL RRLL RR", 1, 0))));
      }
      if (w < 3) {
        out.add(new DayLoad(last, List.of(work("RRL", 2 * reps, 6), work("RL x4", 1, 4))));
      }
    }
    return out;
  }

  public static final ContactWeights WEIGHTS = new ContactWeights(LoadScale.DEFAULT);

  public static LoadPicture load(Width width) {
    return load(days(), 8, width);
  }

  public static LoadPicture load(List<DayLoad> days, int weeks, Width width) {
    return LoadPicture.of(LegWeek.of(History.of(days), TODAY, weeks, WEIGHTS), days, new Band(60, 100), GuardLimits.DEFAULT, width);
  }

  /** {@code how}: a letter for each rep, {@code c} clean, a digit for a fault on that contact, {@code f} one without a contact, {@code -} not judged. */
  public static List<Rep> reps(String letters, int steps, String how, String fault) {
    List<Rep> out = new ArrayList<>();
    for (int i = 0; i < how.length(); i++) {
      char h = how.charAt(i);
      List<String> ticks = h == 'c' || h == '-' ? List.of() : List.of(h == 'f' ? fault : fault + "@" + h);
      out.add(
          new Rep(i + 1, 1, TODAY.minusDays(18 - 3L * (i / 6)), Sequence.parse(letters), steps, Surface.GRASS, List.of(), null, Outcome.IN, null, h != '-', ticks));
    }
    return out;
  }

  public static List<Rep> ladderReps() {
    List<Rep> out = new ArrayList<>();
    out.addAll(reps("RL x5", 4, "cc3ccccccfccccccccccccc2cccccccccccccccccc", "knee-up"));
    out.addAll(reps("RL x5", 2, "ccc", "knee-up"));
    out.addAll(reps("R x6", 0, "c44c5-c", "foot-under"));
    out.addAll(reps("R x6", 2, "4445f44c4", "foot-under"));
    out.addAll(reps("RRL x2", 2, "ccfcc-2ccc", "hips-tall"));
    out.addAll(reps("RRL x2", 4, "cc3c", "hips-tall"));
    return out;
  }

  public static GateAnswer answer(DrillFamily family, int rung, List<Rep> reps) {
    LoadAnswer load = LoadAnswer.of(family == DrillFamily.COMBINATION ? guard(LegCare.NONE) : EASY, false);
    return new Gate(GateRules.DEFAULT).answer(GateCase.of(reps, family, rung, rung + 2, load, GateRules.DEFAULT, TODAY));
  }

  public static final Verdict EASY =
      new Guard(GuardLimits.DEFAULT, Season.OFF_SEASON).judge(Level.INTERMEDIATE, LegCare.NONE, List.of(), new DayLoad(TODAY, List.of(work("RL x5", 2, 0))));

  public static Verdict guard(LegCare care) {
    return new Guard(GuardLimits.DEFAULT, Season.OFF_SEASON).judge(Level.INTERMEDIATE, care, days(), days().get(days().size() - 1));
  }

  public static List<GateAnswer> answers(List<Rep> reps) {
    return List.of(
        answer(DrillFamily.ALTERNATE, 4, reps),
        answer(DrillFamily.SINGLE_LEG, 2, reps),
        answer(DrillFamily.COMBINATION, 4, reps));
  }

  public static LadderPicture ladder(Width width) {
    return LadderPicture.of(answers(ladderReps()), ladderReps(), width);
  }

  public static final FaultCatalogue FAULTS = new FaultCatalogue(List.of(Fault.named("late left arm, held too high", "", "", "", "")));

  public static JudgedRep judged(int i, String letters, String... ticks) {
    return new JudgedRep(i, 1, TODAY.minusDays(20 - i), Sequence.parse(letters), 4, FaultTick.parseAll(List.of(ticks)));
  }

  public static FaultTrends trends() {
    return FaultTrends.ofDrill(
        List.of(
            judged(1, "RRL x3", "toe-up@4", "toe-up@5"), judged(2, "RRL x3", "toe-up@5", "upright"), judged(3, "RRL x3", "toe-up@5", "toe-up@8"),
            judged(4, "RRL x3"), judged(5, "RRL x3", "toe-up@5", "hips-tall@1"), judged(6, "RRL x3", "toe-up@6", "hips-tall@1", "upright@9"),
            judged(7, "RRL x3"), judged(8, "RRL x3", "toe-up@5", "late-left-arm-held-too-high@2"), judged(9, "RRL x3", "hips-tall@1")));
  }

  public static FaultTrends longTrends() {
    return FaultTrends.ofDrill(List.of(judged(1, "RL x15", "speed-through@14", "upright@3"), judged(2, "RL x15", "speed-through@16"), judged(3, "RL x15", "speed-through@15")));
  }

  public static TestScore score(int i, TestKind kind, double value, int daysAgo, String shoes) {
    LocalDate day = TODAY.minusDays(daysAgo);
    return new TestScore(i, 1 + i / 100, kind, kind.fromStanding() ? 0 : 8, value, null, day, new TestProtocol(Surface.GRASS, shoes, "both feet on the line", 3, ""));
  }

  /** One athlete's five scores, the second in other shoes. */
  public static List<TestScore> scores(TestKind kind, double level) {
    return List.of(
        score(1, kind, level, 160, "flat shoes"), score(2, kind, level * 1.04, 120, "spikes"), score(3, kind, level * 1.01, 90, "flat shoes"),
        score(4, kind, level * 1.035, 40, "flat shoes"), score(5, kind, level * 1.062, 4, "flat shoes"));
  }

  /** The same of six more athletes, with a little of their own each. */
  public static List<TestScore> squad(TestKind kind, double level) {
    List<TestScore> out = new ArrayList<>(scores(kind, level));
    for (int a = 1; a <= 6; a++) {
      for (int k = 0; k < 4; k++) {
        double wobble = 0.012 * ((a * 7 + k * 5) % 5 - 2);
        out.add(score(100 * a + k, kind, level * (0.9 + 0.03 * a + 0.008 * k + wobble), 150 - 42 * k, "flat shoes"));
      }
      out.add(score(100 * a + 9, kind, level * (0.925 + 0.03 * a), 150 - 42 * 3 - 8, "flat shoes"));
    }
    return out;
  }

  public static TestPicture test(TestKind kind, double level, LengthUnit unit, Width width) {
    List<TestScore> squad = squad(kind, level);
    int steps = kind.fromStanding() ? 0 : 8;
    return TestPicture.of(
        scores(kind, level), TestError.of(squad, kind, steps, false).orElse(null), TestTrend.of(squad, kind, steps), unit, width);
  }

  public static final LegCare HELD =
      new LegCare(
          false, TODAY.minusYears(1), List.of(new LegCare.Pain(1, TODAY.minusDays(2), "left shin", 4, true, false)),
          List.of(
              new LegCare.MedicalHold(1, TODAY.minusDays(200), "", "Dr A. Invented", TODAY.minusDays(180)),
              new LegCare.MedicalHold(2, TODAY.minusDays(1), "set by the coach", null, null)));

  public static final Athlete ATHLETE = new Athlete(1, "Ilva Torun", Level.INTERMEDIATE, Foot.RIGHT, 4);

  /** A day with nothing more planned. */
  public static DayVerdict day(Verdict soFar) {
    return new DayVerdict(TODAY, soFar, soFar, false, List.of(new Room(4, 12, 8, 20, 30), new Room(0, 30, 28, 33, 90)), false);
  }

  public static ReportFacts facts(LegCare care) {
    List<TestScore> tests = new ArrayList<>(squad(TestKind.STANDING_TRIPLE, 6.9));
    tests.addAll(squad(TestKind.SINGLE_LEG_RIGHT, 9.4));
    tests.addAll(squad(TestKind.SINGLE_LEG_LEFT, 9.2));
    tests.addAll(scores(TestKind.TIMED_RUN_UP, 7.1).subList(0, 3));
    List<SessionRating> ratings = new ArrayList<>();
    days().stream().filter(d -> d.date().isAfter(TODAY.minusDays(26))).forEach(d -> ratings.add(new SessionRating(1, d.date(), 4 + d.contacts() / 40.0, 60)));
    GuardOverride override =
        new GuardOverride(
            1, 1, TODAY.minusDays(5), Finding.Rule.RAMP, Answer.CAUTION, "", "Two weeks of illness before; the athlete is used to this load.");
    return new ReportFacts(
        day(guard(care)), care, List.of(override), GuardSettings.DEFAULT,
        new Guard(GuardLimits.DEFAULT, Season.OFF_SEASON).session(ATHLETE.level(), care, History.of(days()), TODAY), WEIGHTS, History.of(days()), ratings, answers(ladderReps()), 21, ladderReps(),
        List.of(), tests, FootContact.HEEL_ROLLS);
  }

  public static AthleteReport report() {
    return AthleteReports.of(facts(HELD), ATHLETE, CoachSettings.DEFAULT, TODAY, "Invented athlete, invented place: for trying out.");
  }

  public static AthleteReport bare(CoachSettings settings) {
    ReportFacts none =
        new ReportFacts(
            day(EASY), LegCare.NONE, List.of(), GuardSettings.DEFAULT, new Band(100, 150), WEIGHTS, History.NONE, List.of(), answers(List.of()), 21, List.of(), List.of(), List.of(), FootContact.HEEL_ROLLS);
    return AthleteReports.of(none, ATHLETE, settings, TODAY, "");
  }

  public static List<Shown> all(Width width) {
    return List.of(
        new Shown("picture/ladder.jte", ladder(width)),
        new Shown("picture/test.jte", test(TestKind.STANDING_TRIPLE, 6.9, LengthUnit.METRES, width)),
        new Shown("picture/test.jte", test(TestKind.SINGLE_LEG_LEFT, 9.2, LengthUnit.FEET_INCHES, width)),
        new Shown("picture/test.jte", TestPicture.of(scores(TestKind.TIMED_RUN_UP, 7.1), null, null, LengthUnit.METRES, width)),
        new Shown("picture/test.jte", TestPicture.of(scores(TestKind.STANDING_TEN, 24.1).subList(0, 1), TestError.of(scores(TestKind.STANDING_TEN, 24.1), TestKind.STANDING_TEN, 0, false).orElse(null), null, LengthUnit.METRES, width)),
        new Shown("picture/faults.jte", FaultPicture.of(trends(), FAULTS, width)),
        new Shown("picture/faults.jte", FaultPicture.of(longTrends(), FAULTS, width)),
        new Shown("picture/faults.jte", FaultPicture.of(FaultTrends.ofDrill(List.of(judged(1, "RL x5"))), FAULTS, width)),
        new Shown("picture/load.jte", load(width)), new Shown("picture/load.jte", load(days().subList(20, 26), 6, width)),
        new Shown("picture/load.jte", load(List.of(), 10, width)));
  }
}
