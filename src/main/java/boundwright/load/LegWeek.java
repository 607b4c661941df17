package boundwright.load;

import boundwright.footfall.Foot;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * Seven days of one athlete: contacts of each leg by rung, and where the guard's limits on the weekly rise lay on the last
 * of them. Weeks are counted back from the day of asking, so that the newest is what the guard looks at.
 *
 * @param last the last of the seven days
 * @param byRung contacts by approach steps, ascending; steps that were not used are not in it
 * @param base what the guard compares the seven days with: the week before, or the floor [contacts of both legs]
 * @param cautionAbove contacts of both legs above which the guard says caution
 * @param refusedAbove contacts of both legs above which the guard refuses
 */
public record LegWeek(LocalDate last, SortedMap<Integer, Legs> byRung, double base, double cautionAbove, double refusedAbove) {
  /** Takes a copy. */
  public LegWeek {
    byRung = Collections.unmodifiableSortedMap(new TreeMap<>(byRung));
  }

  /**
   * Contacts of the two legs.
   *
   * @param right at least 0
   * @param left at least 0
   */
  public record Legs(int right, int left) {
    /** Of one leg. */
    public int of(Foot foot) {
      return foot == Foot.RIGHT ? right : left;
    }

    /** Of both. */
    public int both() {
      return right + left;
    }

    private Legs plus(Legs other) {
      return new Legs(right + other.right, left + other.left);
    }
  }

  /** The first of the seven days. */
  public LocalDate first() {
    return last.minusDays(6);
  }

  /** Contacts of one leg. */
  public int contacts(Foot foot) {
    return byRung.values().stream().mapToInt(l -> l.of(foot)).sum();
  }

  /** Contacts of both legs. */
  public int contacts() {
    return contacts(Foot.RIGHT) + contacts(Foot.LEFT);
  }

  /** What the rule of the weekly rise says of these seven days. */
  public Answer answer() {
    int n = contacts();
    return n > refusedAbove ? Answer.REFUSED : n > cautionAbove ? Answer.CAUTION : Answer.ALLOWED;
  }

  /**
   * How many days before the day of asking have to be read: the weeks themselves, and the four before the first of them,
   * which its limits rest on.
   */
  public static int daysNeeded(int weeks) {
    return 7 * weeks + 28;
  }

  /**
   * The newest {@code weeks} weeks, oldest first.
   *
   * @param days at least those of {@link #daysNeeded}; others are passed over
   * @param today last day of the newest week
   * @param weeks at least 1
   * @param limits the guard's
   */
  public static List<LegWeek> of(List<DayLoad> days, LocalDate today, int weeks, GuardLimits limits) {
    List<LegWeek> out = new ArrayList<>();
    for (int w = weeks - 1; w >= 0; w--) {
      LocalDate last = today.minusDays(7L * w);
      Map<Integer, Legs> byRung = new TreeMap<>();
      days.stream()
          .filter(d -> !d.date().isAfter(last) && d.date().isAfter(last.minusDays(7)))
          .flatMap(d -> d.work().stream())
          .forEach(k -> byRung.merge(k.approachSteps(), new Legs(k.contacts(Foot.RIGHT), k.contacts(Foot.LEFT)), Legs::plus));
      double base = Math.max(Guard.before(days, last), limits.rampFloor());
      out.add(
          new LegWeek(
              last, new TreeMap<>(byRung), base, base * (1 + limits.rampPercent().caution() / 100),
              base * (1 + limits.rampPercent().refuse() / 100)));
    }
    return List.copyOf(out);
  }
}
