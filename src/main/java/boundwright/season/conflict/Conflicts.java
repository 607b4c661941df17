package boundwright.season.conflict;

import boundwright.season.Away;
import boundwright.season.Climb;
import boundwright.season.Done;
import boundwright.season.Entry;
import boundwright.season.Meet;
import boundwright.season.Member;
import boundwright.season.SeasonInput;
import boundwright.season.SessionKind;
import boundwright.season.Venue;
import boundwright.season.Wish;
import boundwright.season.weeks.WantedWeek;
import boundwright.season.weeks.WantedWeeks;
import boundwright.season.year.YearProblem;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import java.util.function.Predicate;

/**
 * Looks for what clashes: athlete by athlete over the whole season, the shortest run of days that cannot be kept first, then week by
 * week for all athletes at their places. What was found to clash is given up, and the search goes on, up to {@value #MOST} an athlete.
 */
public final class Conflicts {
  /** Most clashes that are told of one athlete, and of the places. */
  static final int MOST = 3;
  /** Dead ends after which a way of searching is given up. */
  private static final int DEAD_ENDS = 3000;

  private final SeasonInput input;
  private final Field field;
  private final Feasibility check;
  private final List<List<Demand>> all = new ArrayList<>();
  private final List<Clash> clashes = new ArrayList<>();
  private final List<String> undecided = new ArrayList<>();
  private boolean more;

  /**
   * Of a season.
   *
   * @param climbs expected approaches, for each athlete of the squad one for each family
   * @param insisted beside the meets
   */
  public Conflicts(SeasonInput input, List<List<Climb>> climbs, Done done, Set<Insisted> insisted) {
    this.input = input;
    SeasonInput there = there(input);
    WantedWeeks weeks = new WantedWeeks(input);
    List<List<WantedWeek>> wanted = input.squad().stream().map(weeks::of).toList();
    int open = (int) Math.max(0, ChronoUnit.DAYS.between(input.first(), done.today()));
    this.field = new Field(YearProblem.all(there, climbs, wanted, null, done), input.venues().stream().mapToInt(Venue::athletes).toArray(), open);
    this.check = new Feasibility(input, field, DEAD_ENDS);
    for (int a = 0; a < input.squad().size(); a++) {
      all.add(demands(a, wanted.get(a), insisted));
    }
  }

  /** The same, but that everybody is there every day: days away are members that can clash. */
  private static SeasonInput there(SeasonInput in) {
    List<Member> squad = new ArrayList<>();
    for (Member m : in.squad()) {
      List<Away> soft = m.away().stream().filter(w -> w.why() == Away.Why.SOFT).toList();
      squad.add(
          new Member(
              m.athlete(), m.growing(), m.firstSession(), m.steps(), m.fullSteps(), m.days(), m.peakWeek(), m.joins(), soft, m.entries(), m.wishes(), m.past()));
    }
    return new SeasonInput(in.name(), in.first(), in.last(), in.periods(), in.meets(), in.venues(), squad, in.rules());
  }

  /** All that must hold for an athlete; the coach's own first. */
  List<Demand> demands(int a, List<WantedWeek> weeks, Set<Insisted> insisted) {
    Member m = input.squad().get(a);
    List<Demand> out = new ArrayList<>();
    for (int w = 0; insisted.contains(Insisted.SESSIONS) && w < weeks.size(); w++) {
      for (SessionKind k : SessionKind.values()) {
        if (weeks.get(w).sessions(k) > 0 && 7 * w >= field.open) {
          out.add(Demand.sessions(a, w, k.at(), weeks.get(w).sessions(k)));
        }
      }
    }
    for (Wish w : insisted.contains(Insisted.WISHES) ? m.wishes() : List.<Wish>of()) {
      int t = day(w.date());
      if (t >= field.open && t < field.days) {
        out.add(Demand.of(Demand.Kind.DAY_WISH, a, t, w.kind() == null ? -1 : w.kind().at()));
      }
    }
    for (Meet x : input.meets()) {
      if (m.entry(x).isPresent() && day(x.date()) >= field.open && joined(m, x.date())) {
        out.add(Demand.of(Demand.Kind.MEET, a, day(x.date()), m.entry(x).filter(i -> i == Entry.Importance.MAIN).isPresent() ? 1 : 0));
      }
    }
    for (int i = 0; i < m.away().size(); i++) {
      if (m.away().get(i).why() != Away.Why.SOFT) {
        out.add(Demand.of(Demand.Kind.AWAY, a, i, -1));
      }
    }
    rules(a, out);
    return out;
  }

  private void rules(int a, List<Demand> out) {
    YearProblem p = field.problems.get(a);
    for (int i = 0; i < p.tapers().size(); i++) {
      if (p.tapers().get(i).meet() >= field.open) {
        out.add(Demand.of(Demand.Kind.TAPER, a, i, -1));
      }
    }
    for (Demand.Kind kind : List.of(Demand.Kind.SPACING, Demand.Kind.OWN_WEEKS)) {
      for (int t = field.open; t < field.days; t++) {
        if (field.options(field.cell(a, t)).length > 1) {
          out.add(Demand.of(kind, a, t, -1));
        }
      }
    }
  }

  private static boolean joined(Member m, LocalDate day) {
    LocalDate joins = m.joins();
    return joins == null || !day.isBefore(joins);
  }

  private int day(LocalDate date) {
    return (int) ChronoUnit.DAYS.between(input.first(), date);
  }

  /** Last day that a demand looks at. */
  private int last(Demand d) {
    return switch (d.kind()) {
      case SESSIONS -> Math.min(field.days - 1, 7 * d.at() + 6);
      case TAPER -> field.problems.get(d.athlete()).tapers().get(d.at()).meet();
      case AWAY -> field.open;
      case DAY_WISH, MEET, CAPACITY, SPACING, OWN_WEEKS -> d.at();
    };
  }

  /** Looks. */
  public Verdict find() {
    for (int a = 0; a < all.size(); a++) {
      Answer last = Answer.INFEASIBLE;
      for (int i = 0; i < MOST && last == Answer.INFEASIBLE; i++) {
        last = one(all.get(a));
      }
      more |= last == Answer.INFEASIBLE;
      if (last == Answer.UNDECIDED) {
        undecided.add(input.squad().get(a).name());
      }
    }
    places();
    return new Verdict(clashes, more, undecided, together(), check.checks());
  }

  /** One clash of these, which are given up where they clash; infeasible if one was found. */
  private Answer one(List<Demand> demands) {
    int weeks = (field.days + 6) / 7;
    Answer whole = check.of(demands);
    if (whole == Answer.FEASIBLE) {
      return whole;
    }
    int end = weeks;
    for (int w = 1; w <= weeks; w++) {
      if (check.of(within(demands, 0, 7 * w - 1)) == Answer.INFEASIBLE) {
        end = w;
        whole = Answer.INFEASIBLE;
        break;
      }
    }
    if (whole != Answer.INFEASIBLE) {
      return whole;
    }
    int begin = 0;
    for (int w = end - 1; w > 0; w--) {
      if (check.of(within(demands, 7 * w, 7 * end - 1)) == Answer.INFEASIBLE) {
        begin = w;
        break;
      }
    }
    tell(within(demands, 7 * begin, 7 * end - 1), List.of(demands));
    return Answer.INFEASIBLE;
  }

  private void tell(List<Demand> infeasible, List<List<Demand>> from) {
    Irreducible.Core<Demand> core = new Irreducible<>(check).of(infeasible);
    List<Demand> sorted = core.members().stream().sorted(Comparator.comparing(Demand::kind).thenComparing(Demand::athlete).thenComparing(Demand::at)).toList();
    clashes.add(new Clash(sorted, new ClashWords(input, field).parts(sorted), core.unproven()));
    Demand given = sorted.get(0);
    from.forEach(list -> list.remove(given));
  }

  private List<Demand> within(List<Demand> demands, int from, int to) {
    Predicate<Demand> away = d -> d.kind() == Demand.Kind.AWAY;
    return demands.stream().filter(away.or(d -> last(d) >= from && last(d) <= to)).toList();
  }

  /** All athletes at their places, week by week, without the load of other weeks. */
  private void places() {
    if (all.size() == 1) {
      return;
    }
    int found = 0;
    for (int w = field.open / 7; w < (field.days + 6) / 7 && found < MOST; w++) {
      List<Demand> week = new ArrayList<>();
      for (List<Demand> one : all) {
        within(one, 7 * w, 7 * w + 6).stream().filter(d -> d.kind() != Demand.Kind.OWN_WEEKS && d.kind() != Demand.Kind.TAPER).forEach(week::add);
      }
      for (int t = Math.max(field.open, 7 * w); t < Math.min(field.days, 7 * w + 7); t++) {
        for (int v = 0; v < field.room.length; v++) {
          if (field.room[v] < all.size()) {
            week.add(Demand.of(Demand.Kind.CAPACITY, -1, t, v));
          }
        }
      }
      Answer answer = check.of(week);
      if (answer == Answer.INFEASIBLE) {
        tell(week, all);
        found++;
      } else if (answer == Answer.UNDECIDED) {
        undecided.add("the places in the week of " + input.day(7 * w));
      }
    }
    more |= found == MOST;
  }

  /** Whether one choice for everybody was found that keeps everything. */
  private boolean together() {
    if (!clashes.isEmpty() || !undecided.isEmpty()) {
      return false;
    }
    List<Demand> whole = new ArrayList<>();
    all.forEach(whole::addAll);
    for (int t = field.open; t < field.days && all.size() > 1; t++) {
      for (int v = 0; v < field.room.length; v++) {
        if (field.room[v] < all.size()) {
          whole.add(Demand.of(Demand.Kind.CAPACITY, -1, t, v));
        }
      }
    }
    return check.of(whole) == Answer.FEASIBLE;
  }
}
