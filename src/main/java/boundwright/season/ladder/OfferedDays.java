package boundwright.season.ladder;

import boundwright.load.account.Work;
import boundwright.readiness.DrillFamily;
import boundwright.season.Away;
import boundwright.season.Block;
import boundwright.season.Entry;
import boundwright.season.Meet;
import boundwright.season.Member;
import boundwright.season.Period;
import boundwright.season.PlannedDay;
import boundwright.season.SeasonInput;
import boundwright.season.SeasonPlan;
import boundwright.season.SeasonRules;
import boundwright.season.SessionKind;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.temporal.TemporalAdjusters;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;

/**
 * How much of a session of each family an athlete is offered on each day, 0 to 1, and on which days something new may begin. The
 * sessions of a week by its part of the year are spread evenly over the days on which the athlete trains and a place is open; the plan by
 * the day may put them on any of those. Beyond the season its weeks go on as they were on average, so that an expectation that reaches
 * beyond its end has one.
 *
 * <p>Bounds hold alternate and single-leg drills, combinations and short jumps those of the combination family.
 */
final class OfferedDays {
  /** How far beyond the season is looked [days]. */
  static final int BEYOND = 500;

  private static final int WEEK = 7;

  private final LocalDate[] dates;
  private final int days;
  private final Map<DrillFamily, double[]> share = new EnumMap<>(DrillFamily.class);
  private final boolean[] fresh;

  private OfferedDays(SeasonInput input, Member m, Map<DrillFamily, double[]> share) {
    days = input.days();
    dates = input.first().datesUntil(input.first().plusDays((long) days + BEYOND)).toArray(LocalDate[]::new);
    fresh = new boolean[days + BEYOND];
    this.share.putAll(share);
    share.values().forEach(s -> beyond(input, s));
    for (int d = 0; d < fresh.length; d++) {
      fresh[d] = d >= days || fresh(input, m, dates[d]);
    }
  }

  /** Whether something new may begin or be decided on a day of the season: nothing keeps the athlete, no rest, no week of a main meet. */
  static boolean fresh(SeasonInput input, Member m, LocalDate day) {
    return m.away(day).isEmpty() && input.period(day) != Period.Kind.REST && !inMainWeek(input, m, day);
  }

  /** As the parts of the year want it. */
  static OfferedDays wanted(SeasonInput input, Member m) {
    Map<DrillFamily, double[]> share = new EnumMap<>(DrillFamily.class);
    for (DrillFamily f : DrillFamily.values()) {
      share.put(f, offered(input, m, f));
    }
    return new OfferedDays(input, m, share);
  }

  /** As a plan by the day has it. */
  static OfferedDays planned(SeasonInput input, Member m, SeasonPlan.Year year) {
    Map<DrillFamily, double[]> share = new EnumMap<>(DrillFamily.class);
    for (DrillFamily f : DrillFamily.values()) {
      share.put(f, new double[input.days() + BEYOND]);
    }
    for (PlannedDay d : year.days()) {
      int n = input.number(d.date());
      for (Block b : d.session().blocks()) {
        if (n >= 0 && n < input.days() && b.work().kind() == Work.Kind.BOUNDING) {
          Objects.requireNonNull(share.get(DrillFamily.of(b.work().sequence())))[n] = 1;
        }
      }
    }
    return new OfferedDays(input, m, share);
  }

  private static double[] offered(SeasonInput input, Member m, DrillFamily f) {
    int n = input.days();
    double[] out = new double[n + BEYOND];
    List<SessionKind> kinds = kinds(f);
    boolean[] trains = new boolean[n];
    for (int d = 0; d < n; d++) {
      trains[d] = trains(input, m, input.day(d), kinds.stream().allMatch(SessionKind::sand));
    }
    for (int week = 0; week < n; week += WEEK) {
      int end = Math.min(n, week + WEEK);
      int open = 0;
      for (int d = week; d < end; d++) {
        open += trains[d] ? 1 : 0;
      }
      for (int d = week; d < end; d++) {
        if (trains[d]) {
          SeasonRules.Week w = input.rules().week(input.period(input.day(d)));
          int sessions = kinds.stream().mapToInt(w::sessions).sum();
          out[d] = Math.min(1, sessions / (double) open * (end - week) / WEEK);
        }
      }
    }
    return out;
  }

  /** The average of each day of the week, rest left out. */
  private static void beyond(SeasonInput input, double[] out) {
    int n = input.days();
    double[] sum = new double[DayOfWeek.values().length + 1];
    int[] count = new int[sum.length];
    for (int d = 0; d < n; d++) {
      if (input.period(input.day(d)) != Period.Kind.REST) {
        int w = input.day(d).getDayOfWeek().getValue();
        sum[w] += out[d];
        count[w]++;
      }
    }
    for (int d = n; d < out.length; d++) {
      int w = input.day(d).getDayOfWeek().getValue();
      out[d] = count[w] == 0 ? 0 : sum[w] / count[w];
    }
  }

  /** What a family is done in. */
  static List<SessionKind> kinds(DrillFamily family) {
    return family == DrillFamily.COMBINATION ? List.of(SessionKind.COMBINATIONS, SessionKind.JUMPS) : List.of(SessionKind.BOUNDS);
  }

  private static boolean trains(SeasonInput input, Member m, LocalDate day, boolean sand) {
    LocalDate joins = m.joins();
    return m.days().contains(day.getDayOfWeek())
        && (joins == null || !day.isBefore(joins))
        && m.away(day).map(w -> w == Away.Why.SOFT).orElse(true)
        && input.meet(m, day).isEmpty()
        && input.venues().stream().anyMatch(v -> v.open(day) && (v.sand() || !sand));
  }

  /**
   * Whether a day lies in the week of a main meet of the athlete: the six days before it, and the rest of its calendar week and of its
   * week of the season, the widest reading.
   */
  static boolean inMainWeek(SeasonInput input, Member m, LocalDate day) {
    for (Meet meet : input.meets()) {
      if (m.entry(meet).orElse(Entry.Importance.USUAL) == Entry.Importance.MAIN) {
        LocalDate date = meet.date();
        LocalDate week = input.day(input.number(date) / WEEK * WEEK);
        LocalDate sunday = date.with(TemporalAdjusters.nextOrSame(DayOfWeek.SUNDAY));
        LocalDate to = sunday.isAfter(week.plusDays(WEEK - 1)) ? sunday : week.plusDays(WEEK - 1);
        if (!day.isBefore(date.minusDays(WEEK - 1)) && !day.isAfter(to)) {
          return true;
        }
      }
    }
    return false;
  }

  int length() {
    return fresh.length;
  }

  /** Days of the season itself; later ones are beyond it. */
  int days() {
    return days;
  }

  LocalDate day(int d) {
    return dates[d];
  }

  double share(DrillFamily f, int d) {
    return Objects.requireNonNull(share.get(f))[d];
  }

  /** Whether something new may begin or be decided on a day on which the family is offered. */
  boolean fresh(DrillFamily f, int d) {
    return fresh[d] && share(f, d) > 0;
  }
}
