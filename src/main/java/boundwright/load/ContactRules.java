package boundwright.load;

import boundwright.athlete.Level;
import boundwright.athlete.growth.FastGrowth;
import boundwright.evidence.Source;
import boundwright.load.Finding.Rule;
import boundwright.load.account.ContactWeights;
import boundwright.load.account.DayLoad;
import boundwright.load.account.History;
import boundwright.load.account.OwnWeeks.Part;
import boundwright.load.account.OwnWeeks;
import boundwright.quantity.Decimals;
import boundwright.quantity.Notes;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/**
 * The rules about how much: each grows stricter with everything that is added to the day, so that they can be turned round into the
 * room that is left. Raw jump contacts are judged by the handbooks, standing-bound contacts by the athlete's own weeks.
 */
final class ContactRules {
  private static final int LONG_AGO_DAYS = 14;

  private final GuardLimits limits;
  private final @Nullable Season season;
  private final ContactWeights weights;
  private final Level level;
  private final History past;
  private final LocalDate day;
  private final List<OwnWeeks> own;
  private final boolean growing;
  private final @Nullable FastGrowth fast;
  private final long weeks;
  private final long sessionsBefore;
  private final @Nullable LocalDate lastHard;
  private final BackRules backs;

  ContactRules(
      GuardLimits limits, @Nullable Season season, ContactWeights weights, Level level, LegCare care, History history, LocalDate day) {
    this.limits = limits;
    this.season = season;
    this.weights = weights;
    this.level = level;
    this.past = new History(history.days().stream().filter(d -> d.date().isBefore(day)).toList(), history.first(), history.lastWeek());
    this.day = day;
    this.own = OwnWeeks.of(past, day, weights, DaySum.powers(weights.scale()));
    this.growing = care.limited();
    this.fast = care.fast();
    this.weeks = care.weeks(past, day);
    this.sessionsBefore =
        past.days().stream().filter(d -> d.contacts() > 0 && ChronoUnit.DAYS.between(d.date(), day) <= 6).count();
    this.lastHard =
        past.days().stream()
            .filter(d -> d.hard(limits.hardContacts(), limits.hardSteps()) && !d.date().isBefore(day.minusDays(LONG_AGO_DAYS)))
            .map(DayLoad::date)
            .max(Comparator.naturalOrder())
            .orElse(null);
    this.backs = new BackRules(care, past, day, own.get(0).week());
  }

  /** All of them, for a day on which the legs did something. */
  List<Finding> all(DaySum today) {
    List<Finding> out = new ArrayList<>();
    if (today.jumps() > 0) {
      out.add(sessionContacts(today));
      growingContacts(today).ifPresent(out::add);
      growingSessions().ifPresent(out::add);
      spacing(today).ifPresent(out::add);
    }
    if (!today.empty()) {
      out.add(ownWeeks(today));
      out.addAll(backs.all(today, this::ownRefused));
    }
    return out;
  }

  Finding sessionContacts(DaySum today) {
    Band band = limits.session(season, level);
    int n = today.jumps();
    Source source = season == null || season == Season.IN_SEASON ? LoadSources.SESSION_BY_LEVEL : LoadSources.SESSION_BY_SEASON;
    String who =
        level == Level.NOT_SET ? "level not set, judged as " + level.judgedAs().label() : "for the " + level.label() + " level";
    return finding(Rule.SESSION_CONTACTS, band.judge(n), n, band,
        n + " contacts in the session; " + who + ", " + (season == null ? "part of the year not set" : season.label()) + ", caution above "
            + whole(band.caution()) + ", refused above " + whole(band.refuse()) + ".",
        source);
  }

  private Band growingBand() {
    return limits.growingSession(season, level, weeks);
  }

  Optional<Finding> growingContacts(DaySum today) {
    if (!growing) {
      return Optional.empty();
    }
    int n = today.jumps();
    Band band = growingBand();
    return Optional.of(
        finding(Rule.GROWING_CONTACTS, band.judge(n), n, band,
            n + " contacts " + whose() + "; caution above " + whole(band.caution())
                + ", refused above " + whole(band.refuse()) + ", rising by " + limits.growingStep() + " every " + limits.growingStepWeeks()
                + " weeks after the first " + limits.growingWeeks() + (fast != null ? " once growth has slowed." : "."),
            fast != null ? LoadSources.FAST_GROWTH : weeks < limits.growingWeeks() ? LoadSources.GROWING : LoadSources.GROWING_STEPS));
  }

  private String whose() {
    FastGrowth f = fast;
    if (f == null) {
      return "for a growing athlete in week " + (weeks + 1) + " of bounding";
    }
    return f.now()
        ? "while growing fast, about " + Decimals.fixed(f.speed_cm_y(), 1) + " cm a year (" + Decimals.fixed(f.low_cm_y(), 1) + " to "
            + Decimals.fixed(f.high_cm_y(), 1) + ", by the height of " + f.measured() + "), above the " + Decimals.fixed(f.limit_cm_y(), 1) + " of the settings"
        : "in week " + (weeks + 1) + " after fast growth";
  }

  private Answer growingSessionsAnswer() {
    return growing && 1 + sessionsBefore > limits.growingSessions(weeks) ? Answer.CAUTION : Answer.ALLOWED;
  }

  Optional<Finding> growingSessions() {
    if (!growing) {
      return Optional.empty();
    }
    long n = 1 + sessionsBefore;
    int limit = limits.growingSessions(weeks);
    return Optional.of(
        new Finding(Rule.GROWING_SESSIONS, growingSessionsAnswer(), n, limit, "sessions",
            Notes.counted(n, "session") + " in seven days for a growing athlete; caution above " + limit + "." + (n > limit ? " Move it into next week." : ""),
            LoadSources.GROWING));
  }

  /** Spacing is counted in whole days from the last hard session before today, 24 hours each; a meet is never refused for it. */
  private Answer spacingAnswer(DaySum today) {
    if (!today.hard() || lastHard == null) {
      return Answer.ALLOWED;
    }
    long hours = 24 * ChronoUnit.DAYS.between(lastHard, day);
    Band band = limits.spacingHours();
    Answer strict = hours < band.caution() ? Answer.REFUSED : hours < band.refuse() ? Answer.CAUTION : Answer.ALLOWED;
    return today.onlyMeet() && strict == Answer.REFUSED ? Answer.CAUTION : strict;
  }

  Optional<Finding> spacing(DaySum today) {
    if (!today.hard() || lastHard == null) {
      return Optional.empty();
    }
    long hours = 24 * ChronoUnit.DAYS.between(lastHard, day);
    Band band = limits.spacingHours();
    Answer answer = spacingAnswer(today);
    return Optional.of(
        new Finding(Rule.SPACING, answer, hours, hours < band.caution() ? band.caution() : band.refuse(), "hours",
            hours + " hours since the last hard session (" + lastHard + "); refused below " + whole(band.caution())
                + ", caution below " + whole(band.refuse()) + "."
                + (answer == Answer.ALLOWED
                    ? ""
                    : " Wait, or keep it under " + limits.hardContacts() + " contacts and " + limits.hardSteps() + " steps."),
            LoadSources.SPACING));
  }

  /**
   * Seven days up to today beside the athlete's own weeks, for each leg and together, the strictest told. Refused only when every
   * power between 4 and 9 refuses, and only for what was trained: a meet is never refused for it. Without a history nothing is judged.
   */
  Finding ownWeeks(DaySum today) {
    Part worst = Part.TOGETHER;
    for (Part part : Part.values()) {
      if (answer(today.units(), 0, part).compareTo(answer(today.units(), 0, worst)) > 0) {
        worst = part;
      }
    }
    double now = now(today, 0, worst);
    double base = base(0, worst);
    if (!past.known(day)) {
      return new Finding(Rule.NO_HISTORY, Answer.ALLOWED, now, base, "standing-bound contacts",
          "Not known yet whether this is much for the athlete. Enter last week's contacts, or new to bounding.", LoadSources.OWN_WEEKS);
    }
    Answer answer = ownAnswer(today);
    Band band = limits.ownPercent();
    double caution = base * (1 + band.caution() / 100);
    double refuse = base * (1 + band.refuse() / 100);
    String floor = base > own.get(0).before().of(worst) ? " (the week with which anybody may start)" : "";
    return new Finding(Rule.OWN_WEEKS, answer, now, answer == Answer.REFUSED ? refuse : caution, "standing-bound contacts",
        Notes.capital(worst.label()) + ": " + whole(now) + " standing-bound contacts in seven days, own weeks " + whole(base) + floor
            + "; caution above " + whole(caution) + ", refused above " + whole(refuse) + "." + swing(today)
            + (answer == Answer.ALLOWED ? "" : " Take out a set, or use fewer steps."),
        LoadSources.OWN_WEEKS);
  }

  private Answer ownAnswer(DaySum today) {
    Answer here = answer(today.units(), 0);
    boolean everyPowerRefuses = true;
    for (int i = 0; i < own.size(); i++) {
      everyPowerRefuses &= answer(today.withoutMeet(), i) == Answer.REFUSED;
    }
    return here == Answer.REFUSED && !everyPowerRefuses ? Answer.CAUTION : here;
  }

  private Answer answer(List<OwnWeeks.Legs> units, int power) {
    Answer worst = Answer.ALLOWED;
    for (Part part : Part.values()) {
      worst = worst.or(answer(units, power, part));
    }
    return worst;
  }

  private Answer answer(List<OwnWeeks.Legs> units, int power, Part part) {
    double percent = 100 * ((units.get(power).of(part) + own.get(power).week().of(part)) / base(power, part) - 1);
    return limits.ownPercent().judge(percent);
  }

  /** Says so when the answer is another with another power. */
  private String swing(DaySum today) {
    Answer low = answer(today.units(), 1);
    Answer high = answer(today.units(), own.size() - 1);
    Answer here = answer(today.units(), 0);
    return low == here && high == here
        ? ""
        : " It depends on how much force is made to count: with power 4 " + low.label() + ", with 9 " + high.label() + ".";
  }

  /** Seven days of a leg that are refused beside its own weeks [standing-bound contacts]; infinite while nothing is known of them. */
  private double ownRefused(Part leg) {
    return past.known(day) ? base(0, leg) * (1 + limits.ownPercent().refuse() / 100) : Double.POSITIVE_INFINITY;
  }

  private double now(DaySum today, int power, Part part) {
    return today.units().get(power).of(part) + own.get(power).week().of(part);
  }

  private double base(int power, Part part) {
    double start = part == Part.TOGETHER ? limits.startWeek() : limits.startWeek() / 2.0;
    return Math.max(own.get(power).before().of(part), start);
  }

  /** What may be added from so many steps. */
  Room room(DaySum today, int steps) {
    boolean known = past.known(day);
    int contacts = most(today, steps, Answer.ALLOWED, sum -> known ? raw(sum).or(answer(sum.units(), 0)) : raw(sum));
    int least = contacts;
    int most = contacts;
    for (int i = 1; known && i < own.size(); i++) {
      int power = i;
      int at = most(today, steps, Answer.ALLOWED, sum -> raw(sum).or(answer(sum.units(), power)));
      least = Math.min(least, at);
      most = Math.max(most, at);
    }
    int beforeRefused = most(today, steps, Answer.CAUTION, sum -> known ? raw(sum).or(ownAnswer(sum)) : raw(sum));
    return new Room(steps, contacts, least, most, Math.max(contacts, beforeRefused));
  }

  private int most(DaySum today, int steps, Answer upTo, Function<DaySum, Answer> answer) {
    int low = 0;
    int high = Room.MOST;
    while (low < high) {
      int middle = (low + high + 1) / 2;
      boolean fits = answer.apply(today.plus(middle, steps, weights, limits)).compareTo(upTo) <= 0;
      low = fits ? middle : low;
      high = fits ? high : middle - 1;
    }
    return low;
  }

  /** What the rules about raw contacts say, without their sentences. */
  private Answer raw(DaySum today) {
    if (today.jumps() == 0) {
      return Answer.ALLOWED;
    }
    Answer answer = limits.session(season, level).judge(today.jumps()).or(spacingAnswer(today)).or(backs.answer(today));
    return growing ? answer.or(growingBand().judge(today.jumps())).or(growingSessionsAnswer()) : answer;
  }

  private static Finding finding(Rule rule, Answer answer, int value, Band band, String said, Source source) {
    return new Finding(rule, answer, value, answer == Answer.REFUSED ? band.refuse() : band.caution(), "contacts",
        answer == Answer.ALLOWED ? said : said + " Take out a set.", source);
  }

  private static String whole(double x) {
    return String.valueOf(Math.round(x));
  }
}
