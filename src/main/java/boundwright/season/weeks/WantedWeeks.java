package boundwright.season.weeks;

import boundwright.load.account.ContactWeights;
import boundwright.load.account.DayLoad;
import boundwright.load.account.LastWeek;
import boundwright.season.Away;
import boundwright.season.Entry;
import boundwright.season.Meet;
import boundwright.season.Member;
import boundwright.season.Period;
import boundwright.season.SeasonInput;
import boundwright.season.SeasonRules;
import boundwright.season.SessionKind;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * How much is wanted week by week: the athlete's largest week times the share of the part of the year, less in lighter weeks, in weeks
 * with few days, and before a main meet along {@link TaperCurve}; never rising faster than the guard's caution above the own weeks, so
 * that the wish itself asks for no caution. Weeks are counted from the season's first day.
 */
public final class WantedWeeks {
  private static final int MONTH = 28;

  private final SeasonInput input;
  private final SeasonRules rules;
  private final ContactWeights weights;
  private final boolean[] lighter;
  private final boolean[] tests;
  private final @Nullable TaperCurve curve;

  /** For a season. */
  public WantedWeeks(SeasonInput input) {
    this.input = input;
    this.rules = input.rules();
    this.weights = new ContactWeights(rules.guard().scale());
    this.lighter = lighter();
    this.tests = tests();
    this.curve = rules.taper().cut() == 0 ? null : TaperCurve.of(rules.taper().days(), rules.taper().cut());
  }

  /** Weeks of the season; the last may be short. */
  public int count() {
    return (input.days() + 6) / 7;
  }

  /** One for each week. */
  public List<WantedWeek> of(Member m) {
    List<WantedWeek> out = new ArrayList<>();
    List<Double> before = past(m);
    for (int w = 0; w < count(); w++) {
      double free = freeShare(m, w);
      double units = Math.min(Math.min(asked(m, w, lighter[w]) * free, most(before)), taper(m, w, before));
      out.add(new WantedWeek(units, sessions(m, w, tests[w] && free > 0), lighter[w], tests[w]));
      before.add(units);
    }
    return out;
  }

  /** Loads of the four weeks before the season, oldest first [standing-bound contacts]. */
  private List<Double> past(Member m) {
    List<Double> out = new ArrayList<>();
    for (int w = 4; w >= 1; w--) {
      LocalDate from = input.first().minusDays(7L * w);
      double sum = 0;
      for (DayLoad d : m.past().days()) {
        if (!d.date().isBefore(from) && d.date().isBefore(from.plusDays(7))) {
          sum += weights.of(d).units();
        }
      }
      LastWeek said = m.past().lastWeek();
      out.add(said != null && sum == 0 ? said.contacts() : sum);
    }
    return out;
  }

  private double most(List<Double> before) {
    int n = before.size();
    double month = (before.get(n - 1) + before.get(n - 2) + before.get(n - 3) + before.get(n - 4)) / 4;
    double own = Math.max(Math.max(before.get(n - 1), month), rules.guard().limits().startWeek());
    return own * (1 + rules.guard().limits().ownPercent().caution() / 100);
  }

  private double asked(Member m, int week, boolean lighter) {
    double share = 0;
    int days = days(week);
    for (int d = 0; d < days; d++) {
      share += rules.week(period(week, d)).share();
    }
    return m.peakWeek() * share / 7 * (lighter ? rules.lighterShare() : 1);
  }

  private Period.Kind period(int week, int day) {
    return input.period(input.day(7 * week + day));
  }

  private int days(int week) {
    return Math.min(7, input.days() - 7 * week);
  }

  /** How much of a usual week the athlete is there: a day on which little may be done counts half. */
  private double freeShare(Member m, int week) {
    double there = 0;
    int usual = 0;
    for (int d = 0; d < days(week); d++) {
      LocalDate day = input.day(7 * week + d);
      if (m.days().contains(day.getDayOfWeek())) {
        usual++;
        there += there(m, day);
      }
    }
    return usual == 0 ? 0 : there / usual;
  }

  private static double there(Member m, LocalDate day) {
    LocalDate joins = m.joins();
    if (joins != null && day.isBefore(joins)) {
      return 0;
    }
    return m.away(day).map(w -> w == Away.Why.SOFT ? 0.5 : 0.0).orElse(1.0);
  }

  private boolean open(Member m, LocalDate day, SessionKind kind) {
    return m.days().contains(day.getDayOfWeek())
        && there(m, day) > (kind == SessionKind.COMBINATIONS || kind == SessionKind.JUMPS ? 0.5 : 0)
        && input.meet(m, day).isEmpty()
        && input.venues().stream().anyMatch(v -> v.open(day) && (v.sand() || !kind.sand()));
  }

  /** Sessions that are wanted, never more than there are days; a meet takes the place of a session in the sand. */
  private Map<SessionKind, Integer> sessions(Member m, int week, boolean test) {
    SeasonRules.Week usual = rules.week(period(week, Math.min(3, days(week) - 1)));
    Map<SessionKind, Integer> out = new EnumMap<>(SessionKind.class);
    int free = 0;
    int sand = 0;
    boolean meets = false;
    boolean main = false;
    for (int d = 0; d < days(week); d++) {
      LocalDate day = input.day(7 * week + d);
      free += open(m, day, SessionKind.BOUNDS) ? 1 : 0;
      sand += open(m, day, SessionKind.COMBINATIONS) ? 1 : 0;
      Optional<Entry.Importance> meet = input.meet(m, day).flatMap(m::entry);
      meets |= meet.isPresent();
      main |= meet.filter(i -> i == Entry.Importance.MAIN).isPresent();
    }
    int tests = test && free > 0 && !main ? 1 : 0;
    int jumps = meets ? 0 : Math.min(usual.jumps(), Math.min(sand, free - tests));
    int combinations = Math.min(Math.max(0, usual.combinations() - (meets ? 1 : 0)), Math.min(sand - jumps, free - tests - jumps));
    int bounds = Math.min(usual.bounds(), free - tests - jumps - Math.max(0, combinations));
    out.put(SessionKind.TEST, tests);
    out.put(SessionKind.JUMPS, Math.max(0, jumps));
    out.put(SessionKind.COMBINATIONS, Math.max(0, combinations));
    out.put(SessionKind.BOUNDS, Math.max(0, bounds));
    return out;
  }

  /** The most that the taper before a main meet leaves of a week; no limit where there is none. */
  private double taper(Member m, int week, List<Double> before) {
    double least = Double.POSITIVE_INFINITY;
    TaperCurve curve = this.curve;
    SeasonRules.Taper taper = rules.taper();
    for (Meet meet : input.meets()) {
      if (curve == null || m.entry(meet).filter(i -> i == Entry.Importance.MAIN).isEmpty()) {
        continue;
      }
      long begins = ChronoUnit.DAYS.between(input.first(), meet.date()) - taper.days() + 1;
      double sum = 0;
      boolean in = false;
      double usual = daily(before, begins, week);
      for (int d = 0; d < days(week); d++) {
        long k = 7L * week + d - begins + 1;
        boolean tapers = k >= 1 && k <= taper.days();
        in |= tapers;
        sum += tapers ? usual * curve.share((int) k) : usual;
      }
      if (in && usual * 7 >= rules.guard().limits().startWeek() / 2.0) {
        least = Math.min(least, sum);
      }
    }
    return least;
  }

  /** Mean load of a day in the four weeks before the taper begins, as far as they are known [standing-bound contacts]. */
  private static double daily(List<Double> before, long begins, int week) {
    double sum = 0;
    for (int i = 0; i < MONTH; i++) {
      long w = Math.floorDiv(begins - MONTH + i, 7) + 4;
      int at = (int) Math.max(0, Math.min(w, 3L + week));
      sum += before.get(at) / 7;
    }
    return sum / MONTH;
  }

  private boolean[] lighter() {
    boolean[] out = new boolean[count()];
    int since = 0;
    for (int w = 0; w < out.length; w++) {
      since++;
      if (rules.lighterEvery() > 0 && since >= rules.lighterEvery()) {
        out[w] = true;
        since = 0;
      }
    }
    return out;
  }

  /** A lighter week at least so many weeks after the last; every so many weeks where there are no lighter ones. */
  private boolean[] tests() {
    boolean[] out = new boolean[lighter.length];
    int since = rules.testEvery();
    for (int w = 0; w < out.length && rules.testEvery() > 0; w++) {
      since++;
      if (since >= rules.testEvery() && (lighter[w] || rules.lighterEvery() == 0)) {
        out[w] = true;
        since = 0;
      }
    }
    return out;
  }
}
