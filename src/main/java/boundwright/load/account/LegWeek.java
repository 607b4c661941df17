package boundwright.load.account;

import boundwright.footfall.Foot;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * Seven days of one athlete in standing-bound contacts: each leg by rung, beside the week of their own that these days are compared
 * with. Weeks are counted back from the day of asking, so that the newest is what is judged.
 *
 * @param last the last of the seven days
 * @param byRung standing-bound contacts by approach steps, ascending; {@value #OTHER} for work without a run-up of its own
 * @param counts jump contacts
 * @param before the athlete's own week before, both legs [standing-bound contacts]
 */
public record LegWeek(LocalDate last, SortedMap<Integer, Legs> byRung, LegCounts.Legs counts, double before) {
  /** Where other work stands in {@link #byRung}. */
  public static final int OTHER = -1;

  /** Takes a copy. */
  public LegWeek {
    byRung = Collections.unmodifiableSortedMap(new TreeMap<>(byRung));
  }

  /**
   * Of the two legs.
   *
   * @param right at least 0 [standing-bound contacts]
   * @param left at least 0 [standing-bound contacts]
   */
  public record Legs(double right, double left) {
    /** Of one leg. */
    public double of(Foot foot) {
      return foot == Foot.RIGHT ? right : left;
    }

    /** Of both. */
    public double both() {
      return right + left;
    }

    private Legs plus(Legs other) {
      return new Legs(right + other.right, left + other.left);
    }

    private static Legs of(LegLoad load) {
      return new Legs(load.rightUnits(), load.leftUnits());
    }
  }

  /** The first of the seven days. */
  public LocalDate first() {
    return last.minusDays(6);
  }

  /** Of one leg [standing-bound contacts]. */
  public double units(Foot foot) {
    return byRung.values().stream().mapToDouble(l -> l.of(foot)).sum();
  }

  /** Of both legs [standing-bound contacts]. */
  public double units() {
    return units(Foot.RIGHT) + units(Foot.LEFT);
  }

  /**
   * How many days before the day of asking have to be read: the weeks themselves, and the four before the first of them,
   * which it is compared with.
   */
  public static int daysNeeded(int weeks) {
    return 7 * weeks + 28;
  }

  /**
   * The newest {@code weeks} weeks, oldest first.
   *
   * @param history with at least the days of {@link #daysNeeded}; others are passed over
   * @param today last day of the newest week
   * @param weeks at least 1
   */
  public static List<LegWeek> of(History history, LocalDate today, int weeks, ContactWeights weights) {
    double power = weights.scale().power();
    List<LegWeek> out = new ArrayList<>();
    for (int w = weeks - 1; w >= 0; w--) {
      LocalDate last = today.minusDays(7L * w);
      List<DayLoad> days =
          history.days().stream().filter(d -> !d.date().isAfter(last) && d.date().isAfter(last.minusDays(7))).toList();
      Map<Integer, Legs> byRung = new TreeMap<>();
      for (DayLoad d : days) {
        d.work().forEach(k -> byRung.merge(k.approachSteps(), Legs.of(weights.of(k, power)), Legs::plus));
        d.other().forEach(o -> byRung.merge(o.kind() == OtherWork.Kind.BOUNDS ? (int) o.grade() : OTHER, Legs.of(weights.of(o, power)), Legs::plus));
      }
      OwnWeeks own = OwnWeeks.of(history, last, weights, power);
      out.add(new LegWeek(last, new TreeMap<>(byRung), LegCounts.of(days).all(), own.before().of(OwnWeeks.Part.TOGETHER)));
    }
    return List.copyOf(out);
  }
}
