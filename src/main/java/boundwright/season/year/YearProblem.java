package boundwright.season.year;

import boundwright.footfall.Foot;
import boundwright.load.GuardLimits;
import boundwright.load.account.ContactWeights;
import boundwright.load.account.DayLoad;
import boundwright.load.account.LastWeek;
import boundwright.load.back.LegBack;
import boundwright.season.Climb;
import boundwright.season.Done;
import boundwright.season.Entry;
import boundwright.season.Meet;
import boundwright.season.Member;
import boundwright.season.SeasonInput;
import boundwright.season.SeasonPlan;
import boundwright.season.Session;
import boundwright.season.SessionKind;
import boundwright.season.Wish;
import boundwright.season.weeks.WantedWeek;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * One athlete's season as numbers. Days are counted from the season's first; {@value #BEFORE} days before it are known too. Loads are
 * whole hundredths of a standing-bound contact, part 0 is both legs together, 1 the right, 2 the left.
 */
public final class YearProblem {
  /** Days before the season that the rules look at. */
  static final int BEFORE = 49;
  /** Kinds of sessions that are asked for by the week. */
  static final SessionKind[] KINDS = {SessionKind.TEST, SessionKind.JUMPS, SessionKind.COMBINATIONS, SessionKind.BOUNDS};

  final Member member;
  final int days;
  /** The first day that is still open: nothing that is over is refused any more. */
  final int open;
  final List<List<Choice>> choices;
  final List<WantedWeek> weeks;
  /** Hundredths wanted of each week. */
  final int[] wanted;
  /** Load before the season, index {@code day + BEFORE}, by leg; what the coach said of days without a log stands in {@code said}. */
  final int[] pastRight;

  final int[] pastLeft;
  final int[] said;
  /** Days since the last hard session before the season's first day, 0 the day before; large if there was none. */
  final int hardAgo;

  final boolean[] pastSession;
  final Taper[] tapers;
  /** Wished for a day: null nothing, -1 rest, else the kind. */
  final @Nullable Integer[] wishes;
  /** What was published of a day: choice index, or -1 for nothing published. */
  final int[] published;

  final int startWeek;
  final double refusePercent;
  final double cautionPercent;
  final int refuseBelowDays;
  final int cautionBelowDays;
  /** Sessions in seven days from which a growing athlete is cautioned, by day; large for others. */
  final int[] mostSessions;
  /** Most of seven days of a leg on its way back, by day, right and left [1/100 standing-bound contact]; large for others. */
  final int[][] backMost;
  /** Days from one loaded day of such a leg to the next, by day, right and left; 0 for others. */
  final int[][] backRest;

  /** Days of a taper before a main meet: {@code from} to {@code meet}; most is the share of before that may be left, in thousandths. */
  public record Taper(int from, int meet, int mostMille) {}

  /**
   * Of an athlete.
   *
   * @param choices allowed on each day
   * @param weeks wanted
   * @param published what was published before, or null
   */
  public YearProblem(
      SeasonInput input, Member member, List<List<Choice>> choices, List<WantedWeek> weeks, SeasonPlan.@Nullable Year published) {
    this(input, member, choices, weeks, published, 0);
  }

  private YearProblem(
      SeasonInput input, Member member, List<List<Choice>> choices, List<WantedWeek> weeks, SeasonPlan.@Nullable Year published, int open) {
    this.member = member;
    this.days = input.days();
    this.open = open;
    this.choices = List.copyOf(choices);
    this.weeks = possible(this.choices, weeks);
    this.wanted = weeks.stream().mapToInt(w -> Choices.hundredths(w.units())).toArray();
    GuardLimits limits = input.rules().guard().limits();
    this.startWeek = 100 * limits.startWeek();
    this.refusePercent = limits.ownPercent().refuse() - 100 * input.rules().spareShare();
    this.cautionPercent = limits.ownPercent().caution();
    this.refuseBelowDays = (int) Math.ceil(limits.spacingHours().caution() / 24);
    this.cautionBelowDays = (int) Math.ceil(limits.spacingHours().refuse() / 24);
    this.pastRight = new int[BEFORE];
    this.pastLeft = new int[BEFORE];
    this.pastSession = new boolean[BEFORE];
    this.said = new int[BEFORE];
    this.hardAgo = past(input, limits);
    this.tapers = tapers(input);
    this.wishes = wishes(input);
    this.published = new int[days];
    this.mostSessions = new int[days];
    this.backMost = new int[2][days];
    this.backRest = new int[2][days];
    for (int t = 0; t < days; t++) {
      LocalDate day = input.day(t);
      this.published[t] = published == null || choices.get(t).size() == 1 ? -1 : index(t, published.on(day).orElse(null));
      back(t, day);
      this.mostSessions[t] = member.growing() ? limits.growingSessions(weeksOfBounding(day)) : Integer.MAX_VALUE;
    }
  }

  /**
   * All problems of a season, in the order of the squad.
   *
   * @param done what happened so far; those days leave no choice
   */
  public static List<YearProblem> all(
      SeasonInput input, List<List<Climb>> climbs, List<List<WantedWeek>> weeks, @Nullable SeasonPlan published, Done done) {
    Choices choices = new Choices(input);
    List<YearProblem> out = new ArrayList<>();
    for (int a = 0; a < input.squad().size(); a++) {
      out.add(of(input, choices, a, climbs.get(a), weeks.get(a), published, done));
    }
    return out;
  }

  /** That of one athlete, by the place in the squad. */
  public static YearProblem of(
      SeasonInput input, int athlete, List<Climb> climbs, List<WantedWeek> weeks, @Nullable SeasonPlan published, Done done) {
    return of(input, new Choices(input), athlete, climbs, weeks, published, done);
  }

  private static YearProblem of(
      SeasonInput input, Choices choices, int athlete, List<Climb> climbs, List<WantedWeek> weeks, @Nullable SeasonPlan published, Done done) {
    Member m = input.squad().get(athlete);
    SeasonPlan.Year year = published == null ? null : published.of(m.id()).orElse(null);
    Map<LocalDate, DayLoad> was = new HashMap<>();
    done.of(m.id()).forEach(d -> was.put(d.date(), d));
    List<List<Choice>> days = new ArrayList<>();
    for (int t = 0; t < input.days(); t++) {
      LocalDate day = input.day(t);
      DayLoad load = was.getOrDefault(day, new DayLoad(day, List.of()));
      days.add(day.isBefore(done.today()) ? List.of(choices.done(load, kind(year, load))) : choices.of(m, climbs, day));
    }
    int open = (int) Math.max(0, Math.min(input.days(), ChronoUnit.DAYS.between(input.first(), done.today())));
    return new YearProblem(input, m, days, weeks, year, open);
  }

  private static SessionKind kind(SeasonPlan.@Nullable Year year, DayLoad load) {
    SessionKind planned = year == null ? null : year.on(load.date()).map(Session::kind).orElse(null);
    return load.onlyMeet() ? SessionKind.MEET : planned != null ? planned : SessionKind.BOUNDS;
  }

  /** Sessions for which there is no day are not wished for: that there are none is said elsewhere, not counted every week. */
  private static List<WantedWeek> possible(List<List<Choice>> choices, List<WantedWeek> weeks) {
    List<WantedWeek> out = new ArrayList<>();
    for (int w = 0; w < weeks.size(); w++) {
      Map<SessionKind, Integer> days = new EnumMap<>(SessionKind.class);
      int open = 0;
      for (List<Choice> day : choices.subList(7 * w, Math.min(choices.size(), 7 * w + 7))) {
        open += day.size() > 1 ? 1 : 0;
        Set<SessionKind> kinds = EnumSet.noneOf(SessionKind.class);
        day.stream().map(Choice::session).filter(Objects::nonNull).forEach(s -> kinds.add(s.kind()));
        kinds.forEach(k -> days.merge(k, 1, Integer::sum));
      }
      Map<SessionKind, Integer> sessions = new EnumMap<>(SessionKind.class);
      for (SessionKind k : KINDS) {
        int n = Math.min(open, Math.min(weeks.get(w).sessions(k), days.getOrDefault(k, 0)));
        sessions.put(k, n);
        open -= n;
      }
      out.add(new WantedWeek(weeks.get(w).units(), sessions, weeks.get(w).lighter(), weeks.get(w).test()));
    }
    return List.copyOf(out);
  }

  /** Days before the season that the rules look at. */
  public static int before() {
    return BEFORE;
  }

  /** Load of a leg on a day before the season, -1 the last, and what the coach said of it where no log is [1/100 standing-bound contact]. */
  public int past(Foot foot, int day) {
    return (foot == Foot.RIGHT ? pastRight : pastLeft)[day + BEFORE];
  }

  /** What the coach said of a day before the season that has no log, of each leg [1/100 standing-bound contact]. */
  public int said(int day) {
    return said[day + BEFORE];
  }

  /** With which anybody may start [1/100 standing-bound contact a week]. */
  public int startWeek() {
    return startWeek;
  }

  /** What seven days may be of the own week before they are refused [thousandths]. */
  public long refuseMille() {
    return Math.round(1000 + 10 * refusePercent);
  }

  /** Fewer days than these between hard sessions are refused. */
  public int refuseBelowDays() {
    return refuseBelowDays;
  }

  /** Days from the last hard session before the season to a day of it. */
  public int sinceHardBefore(int day) {
    return day + 1 + hardAgo;
  }

  /** Tapers before main meets. */
  public List<Taper> tapers() {
    return List.of(tapers);
  }

  /** Days of the season. */
  public int days() {
    return days;
  }

  /** Allowed on a day. */
  public List<Choice> choices(int day) {
    return choices.get(day);
  }

  /** Whose. */
  public Member member() {
    return member;
  }

  /** Wanted of all weeks together, both legs [1/100 standing-bound contact]. */
  public long wanted() {
    long sum = 0;
    for (int w : wanted) {
      sum += w;
    }
    return sum;
  }

  /** Wanted of a week, both legs [1/100 standing-bound contact]. */
  public int wantedLoad(int week) {
    return wanted[week];
  }

  /** Sessions wanted in a week, of a kind. */
  public int wantedSessions(int week, SessionKind kind) {
    return weeks.get(week).sessions(kind);
  }

  /** Sessions wanted in a week. */
  public int wantedSessions(int week) {
    return weeks.get(week).all();
  }

  /** Whether a choice is of a kind that the week asks for, or that was published of the day: tests are not put in the place of bounds. */
  public boolean sensible(int day, Choice c) {
    if (c.session() == null || wantedSessions(day / 7, c.session().kind()) > 0) {
      return true;
    }
    int at = published[day];
    Session was = at < 0 ? null : choices.get(day).get(at).session();
    return was != null && was.kind() == c.session().kind();
  }

  /** Whether something is wished for a day. */
  public boolean wished(int day) {
    return wishes[day] != null;
  }

  /** What is wished for a day by the athlete: null nothing, -1 rest, else the kind's place. */
  public @Nullable Integer wish(int day) {
    return wishes[day];
  }

  private void back(int t, LocalDate day) {
    for (Foot leg : Foot.values()) {
      int of = leg == Foot.RIGHT ? 0 : 1;
      backMost[of][t] = Integer.MAX_VALUE;
      for (LegBack b : member.backs()) {
        if (b.leg() == leg && b.holds(day)) {
          backMost[of][t] = Math.min(backMost[of][t], (int) Math.floor(100 * b.week(day)));
          backRest[of][t] = Math.max(backRest[of][t], b.stages().restDays(b.stageOn(day)));
        }
      }
    }
  }

  /** Most of seven days up to a day, of a part, because a leg is on its way back [1/100 standing-bound contact]; large where none is. */
  public int backMost(int part, int day) {
    return part == 0 || day < 0 || day >= days ? Integer.MAX_VALUE : backMost[part - 1][day];
  }

  private long weeksOfBounding(LocalDate day) {
    LocalDate first = member.firstSession() != null ? member.firstSession() : member.past().first();
    return first == null ? 0 : Math.max(0, ChronoUnit.WEEKS.between(first, day));
  }

  private int past(SeasonInput input, GuardLimits limits) {
    ContactWeights weights = new ContactWeights(input.rules().guard().scale());
    int ago = 10_000;
    for (DayLoad d : member.past().days()) {
      int at = (int) ChronoUnit.DAYS.between(input.first(), d.date()) + BEFORE;
      if (at >= 0 && at < BEFORE) {
        pastRight[at] += Choices.hundredths(weights.of(d).rightUnits());
        pastLeft[at] += Choices.hundredths(weights.of(d).leftUnits());
        pastSession[at] |= d.contacts() > 0;
        if (d.hard(limits.hardContacts(), limits.hardSteps())) {
          ago = Math.min(ago, BEFORE - 1 - at);
        }
      }
    }
    LastWeek word = member.past().lastWeek();
    if (word != null) {
      LocalDate first = member.past().first();
      LocalDate end = first != null && first.isBefore(word.said()) ? first : word.said();
      for (int at = 0; at < BEFORE; at++) {
        said[at] = input.day(at - BEFORE).isBefore(end) ? Choices.hundredths(word.contacts() / 14.0) : 0;
      }
    }
    return ago;
  }

  private Taper[] tapers(SeasonInput input) {
    List<Taper> out = new ArrayList<>();
    for (Meet m : input.meets()) {
      if (member.entry(m).filter(i -> i == Entry.Importance.MAIN).isPresent()) {
        int meet = (int) ChronoUnit.DAYS.between(input.first(), m.date());
        out.add(new Taper(meet - input.rules().taper().days() + 1, meet, (int) Math.round(1000 * (1 - input.rules().taper().leastCut()))));
      }
    }
    return out.toArray(Taper[]::new);
  }

  private @Nullable Integer[] wishes(SeasonInput input) {
    @Nullable Integer[] out = new Integer[days];
    for (Wish w : member.wishes()) {
      int at = (int) ChronoUnit.DAYS.between(input.first(), w.date());
      if (at >= 0 && at < days) {
        SessionKind kind = w.kind();
        out[at] = kind == null ? -1 : kind.at();
      }
    }
    return out;
  }

  /** Index of what was published of a day; -1 for nothing or a day that leaves no choice, -2 for what may no longer be chosen. */
  public int published(int day) {
    return published[day];
  }

  /** The choice of a day that is this session; -2 for one that may no longer be chosen. */
  int index(int day, @Nullable Session session) {
    if (session == null) {
      return 0;
    }
    for (Choice c : choices.get(day)) {
      if (session.equals(c.session())) {
        return c.index();
      }
    }
    return -2;
  }
}
