package boundwright.card;

import boundwright.athlete.Athlete;
import boundwright.card.AthleteReport.FaultBlock;
import boundwright.card.AthleteReport.FaultLine;
import boundwright.card.AthleteReport.Ratings;
import boundwright.card.AthleteReport.TestBlock;
import boundwright.card.AthleteReport.WeekLine;
import boundwright.flight.Rep;
import boundwright.flight.RepStore;
import boundwright.load.CareRepository;
import boundwright.load.GuardOverride;
import boundwright.load.LegCare;
import boundwright.load.LegCare.MedicalHold;
import boundwright.load.LoadDesk;
import boundwright.load.LoadSources;
import boundwright.load.account.LegWeek;
import boundwright.load.rating.RatedWeek;
import boundwright.picture.Drawn;
import boundwright.picture.FaultPicture;
import boundwright.picture.LadderPicture;
import boundwright.picture.LoadDrawing;
import boundwright.picture.LoadPicture;
import boundwright.picture.TestPicture;
import boundwright.quantity.Notes;
import boundwright.quantity.RefusedException;
import boundwright.readiness.JudgedReps;
import boundwright.readiness.LadderDesk;
import boundwright.readiness.LadderRepository;
import boundwright.readiness.LegTests;
import boundwright.readiness.LimbSymmetry;
import boundwright.readiness.TestError;
import boundwright.readiness.TestKind;
import boundwright.readiness.TestRepository;
import boundwright.readiness.TestScore;
import boundwright.readiness.TestTrend;
import boundwright.runway.CoachSettings;
import boundwright.technique.FaultCatalogue;
import boundwright.technique.FaultTrends;
import boundwright.technique.LookRepository;
import java.time.Clock;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.SortedSet;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** Makes the report of one athlete from what is kept. */
public final class AthleteReports {
  /** Weeks in the picture of the load, and of reps whose faults are mapped. */
  public static final int WEEKS = 8;

  private static final int RATED_WEEKS = 4;
  private static final int DRILLS = 3;
  private static final int OVERRIDES = 5;
  private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("EEEE d MMMM yyyy", Locale.ENGLISH);
  private static final DateTimeFormatter SHORT = DateTimeFormatter.ofPattern("d MMM yyyy", Locale.ENGLISH);

  private final RepStore reps;
  private final CareRepository care;
  private final LoadDesk load;
  private final LadderDesk gate;
  private final LadderRepository ladder;
  private final LookRepository looks;
  private final TestRepository tests;
  private final Clock clock;

  /** Reads from these. */
  public AthleteReports(
      RepStore reps, CareRepository care, LoadDesk load, LadderDesk gate, LadderRepository ladder, LookRepository looks, TestRepository tests,
      Clock clock) {
    this.reps = reps;
    this.care = care;
    this.load = load;
    this.gate = gate;
    this.ladder = ladder;
    this.looks = looks;
    this.tests = tests;
    this.clock = clock;
  }

  /** The report of today; {@code footnote} is printed at the end, for example that the athlete is invented. */
  public AthleteReport of(Athlete athlete, CoachSettings settings, String footnote) {
    return of(facts(athlete), athlete, settings, LocalDate.now(clock), footnote);
  }

  /** All that is kept of an athlete and goes into a report of today. */
  public ReportFacts facts(Athlete athlete) {
    LocalDate today = LocalDate.now(clock);
    long id = athlete.id();
    List<Rep> all = reps.since(id, today.minusDays(LegWeek.daysNeeded(WEEKS)));
    List<Rep> drawn = all.stream().filter(r -> r.date().isAfter(today.minusWeeks(WEEKS))).toList();
    List<TestScore> scores = Arrays.stream(TestKind.values()).flatMap(k -> tests.all(k).stream()).toList();
    return new ReportFacts(
        load.day(athlete), care.care(id, today), care.overrides(id, OVERRIDES), care.guard(), load.session(athlete),
        load.weights(athlete, today), load.history(athlete, LegWeek.daysNeeded(WEEKS)),
        care.ratings(id, today.minusWeeks(RATED_WEEKS).plusDays(1)), gate.answers(athlete), ladder.rules().days(), drawn, looks.ownFaults(), scores,
        looks.teaching().anywhere());
  }

  /** The report made from facts, for {@code today}. */
  public static AthleteReport of(ReportFacts facts, Athlete athlete, CoachSettings settings, LocalDate today, String footnote) {
    List<LegWeek> weeks = LegWeek.of(facts.history(), today, WEEKS, facts.weights());
    List<Rep> gateReps = facts.reps().stream().filter(r -> r.date().isAfter(today.minusDays(facts.gateDays()))).toList();
    List<String> unjudged = new ArrayList<>();
    List<FaultBlock> faults = faults(facts, unjudged);
    return new AthleteReport(
        athlete.name(), DAY.format(today), settings.facility().name(), athlete.level().label(), facts.day(),
        holds(facts.care(), today), facts.overrides().stream().map(AthleteReports::override).toList(),
        Drawn.of(form -> LoadPicture.of(weeks, facts.history().days(), facts.session(), facts.settings().limits(), form)), ratings(facts, today),
        Drawn.of(form -> LadderPicture.of(facts.answers(), gateReps, form)), facts.gateDays(), facts.answers(),
        tests(facts, athlete, settings), legs(facts, athlete, settings), faults, String.join(" ", unjudged), SessionCards.CAUTIONS, footnote);
  }

  /** Those that last, and the one that ended last. */
  private static List<String> holds(LegCare care, LocalDate today) {
    List<MedicalHold> byDay = care.holds().stream().sorted(Comparator.comparing(MedicalHold::from).reversed()).toList();
    return Stream.concat(byDay.stream().filter(h -> h.holds(today)), byDay.stream().filter(h -> !h.holds(today)).limit(1))
        .map(h -> hold(h, today))
        .toList();
  }

  private static String hold(MedicalHold hold, LocalDate today) {
    String since = "Medical hold since " + SHORT.format(hold.from());
    LocalDate on = hold.clearedOn();
    if (on == null) {
      return since + (hold.holds(today) ? ". No bounding. A named clinician ends it, with a date; a coach cannot." : ".");
    }
    return since
        + (hold.holds(today)
            ? ". No bounding before " + SHORT.format(on) + ", the day named by " + hold.clearedBy() + "."
            : ", ended by " + hold.clearedBy() + " from " + SHORT.format(on) + " on.");
  }

  private static String override(GuardOverride o) {
    return SHORT.format(o.date()) + ", " + o.rule().label() + " (" + o.answer().label() + "): the coach went on. Reason: " + o.reason();
  }

  private static Ratings ratings(ReportFacts facts, LocalDate today) {
    List<String> sources = List.of(LoadSources.SESSION_LOAD.line(), LoadSources.EWMA.line());
    if (facts.ratings().isEmpty()) {
      return new Ratings(List.of(), "", sources);
    }
    List<WeekLine> lines =
        RatedWeek.of(facts.ratings(), facts.history().days(), today, RATED_WEEKS).stream()
            .map(
                w ->
                    new WeekLine(
                        LoadDrawing.DAY.format(w.last()), w.rated() + " of " + Math.max(w.sessions(), w.rated()), figure(w.week().sum(), 0),
                        figure(w.week().monotony(), 2), figure(w.week().strain(), 0)))
            .toList();
    String means =
        RatedWeek.weightedMean(facts.ratings(), today, 7)
            .flatMap(
                seven ->
                    RatedWeek.weightedMean(facts.ratings(), today, 28)
                        .map(four -> "Weighted mean of the daily load: " + figure(seven, 0) + " over 7 days, " + figure(four, 0) + " over 28."))
            .orElse("");
    return new Ratings(lines, means, sources);
  }

  private static String figure(double value, int digits) {
    return Double.isNaN(value) ? "–" : String.format(Locale.ROOT, "%." + digits + "f", value);
  }

  // ---- tests ----

  private static List<TestBlock> tests(ReportFacts facts, Athlete athlete, CoachSettings settings) {
    List<TestBlock> out = new ArrayList<>();
    for (TestKind kind : TestKind.values()) {
      SortedSet<Integer> steps = new TreeSet<>();
      own(facts, athlete).stream().filter(s -> s.kind() == kind).forEach(s -> steps.add(s.approachSteps()));
      for (int from : steps) {
        out.add(test(facts, athlete, settings, kind, from));
      }
    }
    return out;
  }

  private static TestBlock test(ReportFacts facts, Athlete athlete, CoachSettings settings, TestKind kind, int steps) {
    List<TestScore> own = own(facts, athlete).stream().filter(s -> s.kind() == kind && s.approachSteps() == steps).toList();
    TestError error = TestError.of(facts.squadScores(), kind, steps, false).orElse(null);
    List<String> notes = new ArrayList<>();
    TestTrend trend = trend(facts, kind, steps, notes);
    TestScore latest = own.stream().max(Comparator.comparing(TestScore::date).thenComparing(TestScore::id)).orElseThrow();
    return new TestBlock(
        Drawn.of(form -> TestPicture.of(own, error, trend, settings.unit(), form)), latest.protocol().text(),
        error == null ? "The error of this test is not known yet: repeat it with the squad within " + TestError.MAX_DAYS + " days." : error.inWords(),
        notes);
  }

  /** Null, and why, where the scores do not carry a trend. */
  private static @Nullable TestTrend trend(ReportFacts facts, TestKind kind, int steps, List<String> notes) {
    try {
      TestTrend trend = TestTrend.of(facts.squadScores(), kind, steps);
      notes.addAll(trend.model().notes());
      return trend;
    } catch (RefusedException e) {
      notes.add(e.getMessage());
      return null;
    }
  }

  private static List<TestScore> own(ReportFacts facts, Athlete athlete) {
    return facts.squadScores().stream().filter(s -> s.athleteId() == athlete.id()).toList();
  }

  private static List<String> legs(ReportFacts facts, Athlete athlete, CoachSettings settings) {
    return TestError.of(facts.squadScores(), TestKind.SINGLE_LEG_RIGHT, 0, false)
        .map(
            error -> {
              LegTests legs = LegTests.of(own(facts, athlete), error);
              List<String> out = new ArrayList<>();
              legs.changes().forEach(c -> out.add(c.inWords(settings.unit())));
              LimbSymmetry symmetry = legs.symmetry();
              if (symmetry != null) {
                out.add(symmetry.inWords());
              }
              if (!out.isEmpty()) {
                out.add("Error of the test: " + error.inWords());
              }
              return List.copyOf(out);
            })
        .orElse(List.of());
  }

  // ---- faults ----

  private static List<FaultBlock> faults(ReportFacts facts, List<String> unjudged) {
    FaultCatalogue catalogue = new FaultCatalogue(facts.ownFaults(), facts.taught());
    JudgedReps.WellRead looks = JudgedReps.readable(facts.reps());
    if (looks.unread() > 0) {
      unjudged.add(Notes.counted(looks.unread(), "rep") + " left out: the fault kept with it cannot be read.");
    }
    List<FaultTrends> drills =
        FaultTrends.of(looks.judged()).stream()
            .sorted(Comparator.comparingInt((FaultTrends t) -> t.sessions().stream().mapToInt(FaultTrends.Session::judged).sum()).reversed())
            .toList();
    if (drills.isEmpty()) {
      unjudged.add("No rep was looked at in the last " + WEEKS + " weeks.");
    } else if (drills.size() > DRILLS) {
      unjudged.add("The " + DRILLS + " drills looked at most often are shown, of " + drills.size() + ".");
    }
    return drills.stream().limit(DRILLS).map(t -> block(t, catalogue)).toList();
  }

  private static FaultBlock block(FaultTrends trends, FaultCatalogue catalogue) {
    List<FaultLine> lines =
        trends.courses().stream()
            .limit(DRILLS)
            .map(
                c ->
                    new FaultLine(
                        catalogue.label(c.key()), c.trend().direction().label(), c.whereToLook(trends.sequence()),
                        catalogue.byKey(c.key()).orElse(null)))
            .toList();
    return new FaultBlock(Drawn.of(form -> FaultPicture.of(trends, catalogue, form)), lines);
  }
}
