package boundwright.load;

import boundwright.athlete.Level;
import boundwright.athlete.Surface;
import boundwright.evidence.Source;
import boundwright.load.Finding.Rule;
import boundwright.load.LegCare.MedicalHold;
import boundwright.load.LegCare.Pain;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * Answers allowed, caution or refused for a session, planned or going on, with the limit, the value, the source and its
 * standing. One rule is one method. A growing athlete's pain is judged more strictly, because the pain limits were
 * studied in adults. Session ratings, monotony and weighted means are never asked here.
 */
public final class Guard {
  private static final int PAIN_DAYS = 7;
  private static final int REFER_DAYS = 28;
  private static final int LONG_AGO_DAYS = 14;

  private final GuardLimits limits;
  private final Season season;

  /** Judges by these limits in this part of the year. */
  public Guard(GuardLimits limits, Season season) {
    this.limits = limits;
    this.season = season;
  }

  /**
   * Judges a day: all the work of that day, done and planned.
   *
   * @param level of the athlete
   * @param care growing, pain, holds
   * @param before the days before, oldest first; days from {@code today.date()} on are ignored
   * @param today the day's work, done and planned together; may be empty
   */
  public Verdict judge(Level level, LegCare care, List<DayLoad> before, DayLoad today) {
    List<DayLoad> past = before.stream().filter(d -> d.date().isBefore(today.date())).toList();
    List<Finding> out = new ArrayList<>();
    medicalHold(care, today.date()).ifPresent(out::add);
    refer(care, today.date()).ifPresent(out::add);
    pain(care, today.date()).ifPresent(out::add);
    if (!today.work().isEmpty()) {
      out.add(sessionContacts(level, today));
      growingContacts(care, past, today).ifPresent(out::add);
      growingSessions(care, past, today).ifPresent(out::add);
      spacing(past, today).ifPresent(out::add);
      ramp(past, today).ifPresent(out::add);
      singleLegSeries(level, care, today).ifPresent(out::add);
      out.add(surface(today));
    }
    return Verdict.of(out, today.contacts());
  }

  Finding sessionContacts(Level level, DayLoad today) {
    Band band = limits.session(season, level);
    int n = today.contacts();
    Source source = season == Season.IN_SEASON ? LoadSources.SESSION_IN_SEASON : LoadSources.SESSION_BY_SEASON;
    return finding(Rule.SESSION_CONTACTS, band.judge(n), n, band, "contacts",
        n + " contacts in the session; for the " + level.label() + " level, " + season.label() + ", caution above "
            + whole(band.caution()) + ", refused above " + whole(band.refuse()) + ".",
        "Take out a set.", source);
  }

  Optional<Finding> growingContacts(LegCare care, List<DayLoad> past, DayLoad today) {
    if (!newAndGrowing(care, past, today.date())) {
      return Optional.empty();
    }
    int n = today.contacts();
    Band band = limits.growing();
    return Optional.of(
        finding(Rule.GROWING_CONTACTS, band.judge(n), n, band, "contacts",
            n + " contacts for a growing athlete in the first " + limits.growingWeeks() + " weeks; caution above "
                + whole(band.caution()) + ", refused above " + whole(band.refuse()) + ".",
            "Take out a set.", LoadSources.GROWING));
  }

  Optional<Finding> growingSessions(LegCare care, List<DayLoad> past, DayLoad today) {
    if (!newAndGrowing(care, past, today.date())) {
      return Optional.empty();
    }
    long n = 1 + past.stream().filter(d -> within(d.date(), today.date(), 6)).count();
    int limit = limits.growingSessions();
    return Optional.of(
        new Finding(Rule.GROWING_SESSIONS, n > limit ? Answer.CAUTION : Answer.ALLOWED, n, limit, "sessions",
            n + " sessions in seven days for a growing athlete in the first " + limits.growingWeeks() + " weeks; caution above "
                + limit + "." + (n > limit ? " Move it into next week." : ""),
            LoadSources.GROWING));
  }

  /** Spacing is counted in whole days from the last hard session before today, 24 hours each. */
  Optional<Finding> spacing(List<DayLoad> past, DayLoad today) {
    if (!today.hard(limits)) {
      return Optional.empty();
    }
    Optional<LocalDate> last =
        past.stream().filter(d -> d.hard(limits)).map(DayLoad::date).max(Comparator.naturalOrder());
    if (last.isEmpty()) {
      return Optional.empty();
    }
    long days = ChronoUnit.DAYS.between(last.get(), today.date());
    if (days > LONG_AGO_DAYS) {
      return Optional.empty();
    }
    long hours = 24 * days;
    Band band = limits.spacingHours();
    Answer answer =
        hours < band.caution() ? Answer.REFUSED : hours < band.refuse() ? Answer.CAUTION : Answer.ALLOWED;
    return Optional.of(
        new Finding(Rule.SPACING, answer, hours, answer == Answer.REFUSED ? band.caution() : band.refuse(), "hours",
            hours + " hours since the last hard session (" + last.get() + "); refused below " + whole(band.caution())
                + ", caution below " + whole(band.refuse()) + "."
                + (answer == Answer.ALLOWED ? "" : " Wait, or keep it under " + limits.hardContacts() + " contacts and "
                    + limits.hardSteps() + " steps."),
            LoadSources.SPACING));
  }

  /** Seven days up to today against the larger of the seven before and a quarter of the twenty-eight before. */
  Optional<Finding> ramp(List<DayLoad> past, DayLoad today) {
    int now = today.contacts() + sum(past, today.date(), 1, 6);
    double before = before(past, today.date());
    double base = Math.max(before, limits.rampFloor());
    double percent = 100 * (now - base) / base;
    Band band = limits.rampPercent();
    // from the floor up: a first week after a rest is judged against the floor, not against nothing
    return Optional.of(
        finding(Rule.RAMP, now <= limits.rampFloor() ? Answer.ALLOWED : band.judge(percent), percent, band, "per cent",
            now + " contacts in seven days against " + whole(base)
                + (base > before ? " (the floor below which a rise is not judged)" : " before") + ": "
                + String.format(Locale.ROOT, "%+.0f", percent) + " %; caution above " + whole(band.caution()) + " %, refused above "
                + whole(band.refuse()) + " %.",
            "Spread the contacts over more weeks.", LoadSources.RAMP));
  }

  /** What the seven days up to {@code day} are compared with [contacts]; days after it are passed over. */
  static double before(List<DayLoad> days, LocalDate day) {
    return Math.max(sum(days, day, 7, 13), sum(days, day, 7, 34) / 4.0);
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
    boolean refused = steps >= limits.seriesRefusedSteps() || level == Level.BEGINNER || care.growing();
    return Optional.of(
        new Finding(Rule.SINGLE_LEG_SERIES, refused ? Answer.REFUSED : Answer.CAUTION, steps,
            refused && steps >= limits.seriesRefusedSteps() ? limits.seriesRefusedSteps() : limits.seriesSteps(), "steps",
            worst.get().longestSeries() + " contacts in a row on one foot from " + steps + " steps; caution from "
                + limits.seriesSteps() + ", refused from " + limits.seriesRefusedSteps()
                + (refused && steps < limits.seriesRefusedSteps() ? ", and from " + limits.seriesSteps() + " for beginners and growing athletes" : "")
                + ". Do a combination such as RRL from there, or the series from fewer steps.",
            care.growing() ? LoadSources.NO_SHOCK : LoadSources.SERIES));
  }

  Finding surface(DayLoad today) {
    boolean concrete = today.work().stream().anyMatch(w -> w.surface() == Surface.CONCRETE);
    boolean track = today.work().stream().anyMatch(w -> w.surface() == Surface.TRACK);
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
            .max(Comparator.comparing((Pain p) -> judgePain(p, care.growing())).thenComparingInt(Pain::level));
    if (worst.isEmpty()) {
      return Optional.empty();
    }
    Pain p = worst.get();
    Answer answer = judgePain(p, care.growing());
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
                + (care.growing() ? "; a growing athlete is refused from caution on" : "") + "." + next,
            LoadSources.PAIN));
  }

  private Answer judgePain(Pain p, boolean growing) {
    if (p.level() > 0 && Boolean.FALSE.equals(p.settled())) {
      return Answer.REFUSED;
    }
    Answer answer = limits.pain().judge(p.level());
    if (!growing) {
      return answer;
    }
    return answer == Answer.ALLOWED ? (p.level() > 0 ? Answer.CAUTION : Answer.ALLOWED) : Answer.REFUSED;
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
    return care.holds().stream()
        .filter(h -> h.holds(day))
        .findFirst()
        .map(
            (MedicalHold h) ->
                new Finding(Rule.MEDICAL_HOLD, Answer.REFUSED, 1, 0, "holds",
                    "On medical hold since " + h.from()
                        + ". A coach cannot lift it: enter the name of the clinician who ends it, and the date.",
                    LoadSources.REFER));
  }

  /** Whether a clinician ended a hold between the sign and the day. */
  private static boolean clearedSince(LegCare care, LocalDate sign, LocalDate day) {
    return care.holds().stream()
        .anyMatch(h -> h.clearedOn() != null && !h.clearedOn().isBefore(sign) && !h.clearedOn().isAfter(day));
  }

  /**
   * The limits of a session that an athlete is held to on a day: those of their level, or those of a growing athlete new to
   * bounding where they are lower.
   *
   * @param past the days before, oldest first
   */
  public Band session(Level level, LegCare care, List<DayLoad> past, LocalDate day) {
    Band band = limits.session(season, level);
    Band growing = limits.growing();
    return newAndGrowing(care, past, day)
        ? new Band(Math.min(band.caution(), growing.caution()), Math.min(band.refuse(), growing.refuse()))
        : band;
  }

  private boolean newAndGrowing(LegCare care, List<DayLoad> past, LocalDate day) {
    if (!care.growing()) {
      return false;
    }
    LocalDate first =
        care.firstSession() != null ? care.firstSession() : past.isEmpty() ? day : past.get(0).date();
    return ChronoUnit.WEEKS.between(first, day) < limits.growingWeeks();
  }

  private static int sum(List<DayLoad> past, LocalDate day, int from, int to) {
    return past.stream()
        .filter(d -> !d.date().isAfter(day.minusDays(from)) && !d.date().isBefore(day.minusDays(to)))
        .mapToInt(DayLoad::contacts)
        .sum();
  }

  private static boolean within(LocalDate date, LocalDate day, int days) {
    return !date.isAfter(day) && !date.isBefore(day.minusDays(days));
  }

  private static Finding finding(
      Rule rule, Answer answer, double value, Band band, String unit, String said, String wayOut, Source source) {
    return new Finding(rule, answer, value, answer == Answer.REFUSED ? band.refuse() : band.caution(), unit,
        answer == Answer.ALLOWED ? said : said + " " + wayOut, source);
  }

  private static String whole(double x) {
    return String.valueOf(Math.round(x));
  }
}
