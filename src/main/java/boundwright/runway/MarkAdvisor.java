package boundwright.runway;

import boundwright.athlete.Athlete;
import boundwright.athlete.Changes;
import boundwright.athlete.Surface;
import boundwright.flight.FlightModel;
import boundwright.flight.Forecast;
import boundwright.flight.Logbook;
import boundwright.flight.RunUp;
import boundwright.footfall.Sequence;
import java.time.Clock;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;

/** Answers where the tapes go, for one athlete or for the squad, and says why and how sure. */
public final class MarkAdvisor {
  /** Enough for a squad of sixty with a plan of eight drills. */
  private static final int MOST_REMEMBERED = 500;

  private final Logbook logbook;
  private final Clock clock;
  private final Supplier<Rungs> rungs;
  private final AdviceMemory memory = new AdviceMemory(MOST_REMEMBERED);
  private final SquadMarks squad;

  /** Reads what was learned from {@code logbook}; {@code clock} tells which day it is. */
  public MarkAdvisor(Logbook logbook, Clock clock) {
    this(logbook, clock, () -> Rungs.OWN);
  }

  /** As {@link #MarkAdvisor(Logbook, Clock)}; {@code rungs} says anew for each squad or drill from which rung it is done. */
  public MarkAdvisor(Logbook logbook, Clock clock, Supplier<Rungs> rungs) {
    this(logbook, clock, rungs, Changes.UNKNOWN);
  }

  /** As {@link #MarkAdvisor(Logbook, Clock, Supplier)}; {@code changes} says how long the squad's marks are kept. */
  public MarkAdvisor(Logbook logbook, Clock clock, Supplier<Rungs> rungs, Changes changes) {
    this.logbook = logbook;
    this.clock = clock;
    this.rungs = rungs;
    this.squad = new SquadMarks(changes, this::workedOut);
  }

  /** From which rung each athlete does each drill now. */
  public Rungs rungs() {
    return rungs.get();
  }

  /** The marks on the facility's own surface. */
  public MarkAdvice advise(Athlete athlete, Sequence sequence, int approachSteps, CoachSettings settings) {
    return advise(athlete, sequence, approachSteps, settings.facility().surface(), settings);
  }

  /**
   * The marks for this athlete, sequence and approach steps at the coach's settings.
   *
   * @param approachSteps 0 to 26
   * @param surface what is bounded on
   */
  public MarkAdvice advise(
      Athlete athlete, Sequence sequence, int approachSteps, Surface surface, CoachSettings settings) {
    Athlete.checkSteps(approachSteps);
    LocalDate today = begun();
    FlightModel model = logbook.model(athlete);
    Double first =
        Beginning.holdsBack(model)
            ? firstMark(logbook.before(athlete), sequence, approachSteps, surface, settings, today)
            : null;
    return said(
        athlete,
        model,
        remembered(model, logbook.runUp(athlete, approachSteps), sequence, approachSteps, surface, settings, today, first));
  }

  /**
   * What logging this athlete's next rep should add, or null if nothing would make enough more reps count.
   *
   * @param approachSteps 0 to 26
   * @param surface what is bounded on
   */
  public @Nullable LogNext whatToLog(
      Athlete athlete, Sequence sequence, int approachSteps, Surface surface, CoachSettings settings) {
    Athlete.checkSteps(approachSteps);
    LocalDate today = begun();
    return whatToLog(logbook.model(athlete), sequence, approachSteps, surface, settings, today);
  }

  /** What to log next from a model that is at hand; null if nothing is worth the trouble. */
  public static @Nullable LogNext whatToLog(
      FlightModel model, Sequence sequence, int approachSteps, Surface surface, CoachSettings settings, LocalDate date) {
    MarkChances chances = MarkChances.of(model.forecast(sequence, approachSteps, surface, date), settings.marks());
    boolean onlyTaps = model.measuredReps() == 0 && model.reps() >= WhatToLog.HABIT;
    return WhatToLog.choose(
        model.inquiry(sequence, approachSteps, surface, date), chances, sequence.size(), onlyTaps, settings.unit());
  }

  /** The marks of one drill for a squad, by the athlete's number; a few reads for all of them. */
  public Map<Long, MarkAdvice> advise(List<Athlete> athletes, Drill drill, CoachSettings settings) {
    return advise(athletes, drill.sequence(), drill, settings);
  }

  /** As {@link #advise(List, Drill, CoachSettings)} for a piece of a drill, from where each does the whole drill. */
  public Map<Long, MarkAdvice> advise(List<Athlete> athletes, Sequence piece, Drill drill, CoachSettings settings) {
    return squad.of(athletes, new SquadMarks.Asked(piece, drill, settings), begun());
  }

  private Map<Long, MarkAdvice> workedOut(List<Athlete> athletes, SquadMarks.Asked asked, LocalDate today) {
    Map<Long, Logbook.Known> known = logbook.known(athletes);
    Map<Long, MarkAdvice> out = new HashMap<>();
    Rungs now = rungs();
    for (Athlete a : athletes) {
      Logbook.Known of = Objects.requireNonNull(known.get(a.id()));
      out.put(a.id(), said(a, of.flights(), known(of, asked.sequence(), now.stepsFor(a, asked.drill()), asked.settings(), today)));
    }
    return out;
  }

  /** With a word to whoever tapes if the newest reps alone speak for now. */
  private MarkAdvice said(Athlete athlete, FlightModel model, MarkAdvice advice) {
    return logbook.isFromNewest(athlete.id(), model)
        ? advice.warning("From the newest " + Logbook.NEWEST + " reps until all are learned again, in a minute or two.")
        : advice;
  }

  /** Today, and what is due on a day's first question is done. */
  private LocalDate begun() {
    LocalDate today = LocalDate.now(clock);
    logbook.dayBegins(today);
    return today;
  }

  private MarkAdvice known(Logbook.Known of, Sequence sequence, int steps, CoachSettings settings, LocalDate today) {
    FlightModel model = of.flights();
    Surface surface = settings.facility().surface();
    Double first = Beginning.holdsBack(model) ? firstMark(of.before(), sequence, steps, surface, settings, today) : null;
    return remembered(model, of.runUp(steps), sequence, steps, surface, settings, today, first);
  }

  /**
   * The mark with which this athlete began, or would begin, with this drill, from their model before the first rep [m]; null if a
   * mark worked from the first. What {@link #advise(FlightModel, RunUp, Sequence, int, Surface, CoachSettings, LocalDate, Double)} needs
   * after one and two taps.
   */
  public static @Nullable Double firstMark(
      FlightModel before, Sequence sequence, int approachSteps, Surface surface, CoachSettings settings, LocalDate date) {
    MarkChances chances = MarkChances.of(before.forecast(sequence, approachSteps, surface, date), settings.marks());
    Beginning first = Beginning.of(before, null, chances, sequence, approachSteps, surface, settings, date);
    return first == null ? null : (Double) first.markToSand_m();
  }

  /** Whether what an athlete does next may still be a beginning, so that {@link #firstMark} is asked for. */
  public static boolean mayBegin(FlightModel model) {
    return model.reps() < Beginning.TEACHING && model.measuredReps() == 0;
  }

  /** Whether {@link #firstMark} is needed with this model. */
  public static boolean needsFirstMark(FlightModel model) {
    return Beginning.holdsBack(model);
  }

  private MarkAdvice remembered(
      FlightModel model,
      RunUp runUp,
      Sequence sequence,
      int steps,
      Surface surface,
      CoachSettings settings,
      LocalDate today,
      @Nullable Double first) {
    return memory.advice(
        model,
        runUp,
        sequence,
        steps,
        surface,
        settings,
        today,
        first,
        () -> advise(model, runUp, sequence, steps, surface, settings, today, first));
  }

  /** The marks from a model and a run-up that are at hand; the same arithmetic without the store. */
  public static MarkAdvice advise(
      FlightModel model,
      RunUp runUp,
      Sequence sequence,
      int approachSteps,
      Surface surface,
      CoachSettings settings,
      LocalDate date) {
    return advise(model, runUp, sequence, approachSteps, surface, settings, date, null);
  }

  /**
   * As {@link #advise(FlightModel, RunUp, Sequence, int, Surface, CoachSettings, LocalDate)}.
   *
   * @param first_m {@link #firstMark} of the same drill [m], from which a beginning moves by less than the model says after one and
   *     two taps; null where it is not known or not needed
   */
  public static MarkAdvice advise(
      FlightModel model,
      RunUp runUp,
      Sequence sequence,
      int approachSteps,
      Surface surface,
      CoachSettings settings,
      LocalDate date,
      @Nullable Double first_m) {
    Forecast forecast = model.forecast(sequence, approachSteps, surface, date);
    MarkChances chances = MarkChances.of(forecast, settings.marks());
    Optional<Window> window = chances.window();
    Beginning beginning =
        Beginning.of(model, first_m, chances, sequence, approachSteps, surface, settings, date);
    double mark = beginning == null ? chances.best() : beginning.markToSand_m();
    double startSpread = runUp.length().halfWidth();
    double runwayNeeded = mark + runUp.length().p50() + startSpread;
    double groundNeeded = forecast.landing().p95() + runUp.length().p50() + startSpread;
    List<Opener> openers =
        window.isPresent() || (beginning != null && !beginning.longShot())
            ? List.of()
            : new WindowOpeners(model, surface, settings, date).find(sequence, approachSteps, groundNeeded);
    String elsewhere = AdviceWords.elsewhere(model, surface).orElse(null);
    return new MarkAdvice(
        forecast,
        settings.marks(),
        mark,
        beginning == null ? chances.bestChance() : chances.counts(mark),
        window.orElse(null),
        beginning,
        chances.learning(),
        runUp.length(),
        runUp.measured(),
        runUp.speed(),
        runwayNeeded,
        groundNeeded,
        openers,
        AdviceWords.from(model, approachSteps, surface),
        AdviceWords.sure(model, forecast, settings.unit()),
        elsewhere,
        AdviceWarnings.inSand(
            forecast, mark, window.isPresent(), beginning, runUp.length(), runUp.measured(), runwayNeeded, elsewhere, surface, settings));
  }

  /**
   * What the coach must know before a drill on the flat, where no mark is sought; {@link MarkAdvice#warnings} is for a last
   * flight into sand.
   */
  public static List<String> flatWarnings(MarkAdvice advice, Surface surface, CoachSettings settings) {
    return AdviceWarnings.onTheFlat(
        advice.forecast(), advice.startToMark(), advice.startMeasured(), advice.groundNeeded_m(), advice.elsewhere(), surface,
        settings);
  }

  /** The fewest tapes for these athletes and the plan's drills that end in sand. */
  public Tapes tapes(List<Athlete> athletes, DayPlan plan, CoachSettings settings) {
    Rungs now = rungs();
    List<Drill> drills = plan.drills().stream().filter(Drill::inSand).toList();
    LocalDate today = begun();
    List<Map<Long, MarkAdvice>> marks = drills.stream().map(d -> squad.of(athletes, new SquadMarks.Asked(d.sequence(), d, settings), today)).toList();
    List<Tapes.Wish> wishes = new ArrayList<>();
    for (Athlete a : athletes) {
      for (int i = 0; i < drills.size(); i++) {
        Drill d = drills.get(i);
        wishes.add(
            new Tapes.Wish(
                a.name(), d.sequence().text() + ", " + Athlete.fromSteps(now.stepsFor(a, d)), Objects.requireNonNull(marks.get(i).get(a.id()))));
      }
    }
    return squad.tapes(wishes, settings.unit());
  }
}
