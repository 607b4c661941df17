package boundwright.load;

import boundwright.athlete.Level;
import boundwright.athlete.Surface;
import boundwright.load.Finding.Rule;
import boundwright.load.LegCare.MedicalHold;
import boundwright.load.LegCare.Pain;
import boundwright.load.account.ContactWeights;
import boundwright.load.account.DayLoad;
import boundwright.load.account.History;
import boundwright.load.account.LoadScale;
import boundwright.load.account.Work;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * Answers allowed, caution or refused for a session, planned or going on, with the limit, the value, the source and its
 * standing. One rule is one method; those about how much are in {@link ContactRules}. A growing athlete's pain is judged more
 * strictly, because the pain limits were studied in adults. Session ratings, monotony and weighted means are never asked here.
 */
public final class Guard {
  private static final int PAIN_DAYS = 7;
  private static final int REFER_DAYS = 28;

  private final GuardLimits limits;
  private final @Nullable Season season;
  private final ContactWeights weights;
  private final boolean told;

  /** Judges by these limits in this part of the year, on the usual scale. */
  public Guard(GuardLimits limits, @Nullable Season season) {
    this(limits, season, new ContactWeights(LoadScale.DEFAULT));
  }

  /**
   * Judges by these limits in this part of the year.
   *
   * @param season null when nobody has said: the lowest limits are asked
   */
  public Guard(GuardLimits limits, @Nullable Season season, ContactWeights weights) {
    this(limits, season, weights, true);
  }

  /**
   * As {@link #Guard(GuardLimits, Season, ContactWeights)}.
   *
   * @param told whether whoever reads it may be told of pain, holds and growth; if not the answers are the same, without these reasons
   */
  Guard(GuardLimits limits, @Nullable Season season, ContactWeights weights, boolean told) {
    this.limits = limits;
    this.season = season;
    this.weights = weights;
    this.told = told;
  }

  /** Judges a day of an athlete of whom nothing but these days is known, the first of them the first there was. */
  public Verdict judge(Level level, LegCare care, List<DayLoad> before, DayLoad today) {
    return judge(level, care, History.of(before), today);
  }

  /**
   * Judges a day: all the work of that day, done and planned.
   *
   * @param level of the athlete
   * @param care growth, pain, holds
   * @param history the days before; days from {@code today.date()} on are ignored
   * @param today the day's work, done and planned together; may be empty
   */
  public Verdict judge(Level level, LegCare care, History history, DayLoad today) {
    return on(level, care, history, today.date()).judge(today);
  }

  /** What may still be added to a day in alternate bounds, see {@link AthleteDay#room}. */
  public List<Room> room(Level level, LegCare care, History history, DayLoad today, List<Integer> steps) {
    return on(level, care, history, today.date()).room(today, steps);
  }

  /** One athlete's day, to be judged more than once; what was before it is weighed once. */
  public AthleteDay on(Level level, LegCare care, History history, LocalDate date) {
    return new AthleteDay(level, care, new ContactRules(limits, season, weights, level, care, history, date), date);
  }

  /** One athlete's day with all that was before it. */
  public final class AthleteDay {
    private final Level level;
    private final LegCare care;
    private final ContactRules rules;
    private final LocalDate date;

    private AthleteDay(Level level, LegCare care, ContactRules rules, LocalDate date) {
      this.level = level;
      this.care = care;
      this.rules = rules;
      this.date = date;
    }

    /** Judges this work as that of the day. */
    public Verdict judge(DayLoad today) {
      List<Finding> out = new ArrayList<>();
      medicalHold(care, date).ifPresent(out::add);
      refer(care, date).ifPresent(out::add);
      pain(care, date).ifPresent(out::add);
      out.addAll(rules.all(DaySum.of(today, weights, limits)));
      singleLegSeries(level, care, today).ifPresent(out::add);
      if (today.work().stream().anyMatch(w -> !w.atTheBoard())) {
        out.add(surface(today));
      }
      return Verdict.of(told ? out : Withheld.from(out), today.contacts());
    }

    /**
     * What may still be added to the day in alternate bounds, by the rules about contacts; nothing while bounding is stopped.
     *
     * @param today the day's work so far
     * @param steps from how many steps each, in order
     */
    public List<Room> room(DayLoad today, List<Integer> steps) {
      DaySum sum = DaySum.of(today, weights, limits);
      boolean stopped = medicalHold(care, date).isPresent() || refer(care, date).isPresent();
      return steps.stream().map(s -> stopped ? new Room(s, 0, 0, 0, 0) : rules.room(sum, s)).toList();
    }
  }

  Optional<Finding> singleLegSeries(Level level, LegCare care, DayLoad today) {
    Optional<Work> worst =
        today.work().stream()
            .filter(w -> w.longestSeries() >= limits.seriesContacts() && w.approachSteps() >= limits.seriesSteps())
            .max(Comparator.comparingInt(Work::approachSteps));
    if (worst.isEmpty()) {
      return Optional.empty();
    }
    int steps = worst.get().approachSteps();
    boolean refused = steps >= limits.seriesRefusedSteps() || level.judgedAs() == Level.BEGINNER || care.limited();
    return Optional.of(
        new Finding(Rule.SINGLE_LEG_SERIES, refused ? Answer.REFUSED : Answer.CAUTION, steps,
            refused && steps >= limits.seriesRefusedSteps() ? limits.seriesRefusedSteps() : limits.seriesSteps(), "steps",
            worst.get().longestSeries() + " contacts in a row on one foot from " + steps + " steps; caution from "
                + limits.seriesSteps() + ", refused from " + limits.seriesRefusedSteps()
                + (refused && steps < limits.seriesRefusedSteps() ? ", and from " + limits.seriesSteps() + " for beginners and growing athletes" : "")
                + ". Do a combination such as RRL from there, or the series from fewer steps.",
            care.limited() ? LoadSources.NO_SHOCK : LoadSources.SERIES));
  }

  /** Of bounding; a jump at the board is made on the runway there is. */
  Finding surface(DayLoad today) {
    boolean concrete = today.work().stream().anyMatch(w -> !w.atTheBoard() && w.surface() == Surface.CONCRETE);
    boolean track = today.work().stream().anyMatch(w -> !w.atTheBoard() && w.surface() == Surface.TRACK);
    Answer answer = concrete ? Answer.REFUSED : track ? Answer.CAUTION : Answer.ALLOWED;
    String said =
        concrete
            ? "On concrete: never. Go onto level grass, a sprung floor or a raised runway."
            : track ? "On the ordinary track: only if it must be. Level grass is best." : "The surface is soft enough.";
    return new Finding(Rule.SURFACE, answer, concrete ? 2 : track ? 1 : 0, 0, "rank", said, LoadSources.SURFACE);
  }

  Optional<Finding> pain(LegCare care, LocalDate day) {
    Optional<Pain> worst =
        care.pains().stream()
            .filter(p -> within(p.date(), day, PAIN_DAYS - 1))
            .max(Comparator.comparing((Pain p) -> p.judged(limits.pain(), care.limited())).thenComparingInt(Pain::level));
    if (worst.isEmpty()) {
      return Optional.empty();
    }
    Pain p = worst.get();
    Answer answer = p.judged(limits.pain(), care.limited());
    boolean rising = answer == Answer.ALLOWED && rising(care, day);
    if (rising) {
      answer = Answer.CAUTION;
    }
    String settled = Boolean.FALSE.equals(p.settled()) ? ", not settled next morning" : "";
    String next =
        switch (answer) {
          case REFUSED -> " No bounding: refer to licensed medical staff.";
          case CAUTION -> rising ? " It rises from week to week: lessen the load." : " Lessen the load and ask again next morning.";
          case ALLOWED -> "";
        };
    Band band = limits.pain();
    return Optional.of(
        new Finding(Rule.PAIN, answer, p.level(), answer == Answer.REFUSED ? band.refuse() : band.caution(), "of 10",
            "Pain " + p.level() + " of 10, " + p.area() + ", on " + p.date() + settled + "; caution above " + whole(band.caution())
                + ", refused above " + whole(band.refuse()) + " or not settled next morning"
                + (care.limited() ? "; a growing athlete is refused from caution on" : "") + "." + next,
            LoadSources.PAIN));
  }

  /** Why no bounding is allowed on a day by what was felt: a sign to stop and refer, or a pain that is refused; a medical hold stands apart. */
  public Optional<Finding> stoppedByPain(LegCare care, LocalDate day) {
    return refer(care, day).or(() -> pain(care, day).filter(f -> f.answer() == Answer.REFUSED));
  }

  private static boolean rising(LegCare care, LocalDate day) {
    int now = highest(care, day, 0, 6);
    int before = highest(care, day, 7, 13);
    return before > 0 && now > before;
  }

  private static int highest(LegCare care, LocalDate day, int from, int to) {
    return care.pains().stream()
        .filter(p -> !p.date().isAfter(day.minusDays(from)) && !p.date().isBefore(day.minusDays(to)))
        .mapToInt(Pain::level)
        .max()
        .orElse(0);
  }

  Optional<Finding> refer(LegCare care, LocalDate day) {
    return care.pains().stream()
        .filter(p -> p.refer() && within(p.date(), day, REFER_DAYS - 1) && !clearedSince(care, p.date(), day))
        .findFirst()
        .map(
            p ->
                new Finding(Rule.REFER, Answer.REFUSED, p.level(), 0, "of 10",
                    "A sign to stop and refer was noted on " + p.date() + " (" + p.area()
                        + "). No bounding: licensed medical staff decide. Enter a medical hold until they do.",
                    LoadSources.REFER));
  }

  Optional<Finding> medicalHold(LegCare care, LocalDate day) {
    return care.holding(day)
        .map(
            (MedicalHold h) ->
                new Finding(Rule.MEDICAL_HOLD, Answer.REFUSED, 1, 0, "holds",
                    "On medical hold since " + h.from() + ". A coach cannot lift it"
                        + (h.clearedOn() == null ? ": enter the name of the clinician who ends it, and the date." : ". It ends " + h.endsSaid() + "."),
                    LoadSources.REFER));
  }

  /** Whether a clinician ended a hold between the sign and the day. */
  private static boolean clearedSince(LegCare care, LocalDate sign, LocalDate day) {
    return care.holds().stream()
        .anyMatch(h -> h.clearedOn() != null && !h.clearedOn().isBefore(sign) && !h.clearedOn().isAfter(day));
  }

  /** The limits of a session that an athlete is held to on a day: those of their level, lower while they grow. */
  public Band session(Level level, LegCare care, History history, LocalDate day) {
    return care.limited()
        ? limits.growingSession(season, level, care.weeks(history, day))
        : limits.session(season, level);
  }

  private static boolean within(LocalDate date, LocalDate day, int days) {
    return !date.isAfter(day) && !date.isBefore(day.minusDays(days));
  }

  private static String whole(double x) {
    return String.valueOf(Math.round(x));
  }
}
