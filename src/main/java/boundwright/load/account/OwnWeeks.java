package boundwright.load.account;

import boundwright.footfall.Foot;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.function.ToDoubleFunction;
import org.jspecify.annotations.Nullable;

/**
 * Seven days of an athlete beside their own weeks before, for each leg and together, in standing-bound contacts. The weeks before
 * are the larger of the seven days before these and a quarter of the twenty-eight before these; the coach's word on the weeks before
 * the log began fills the days that have no log.
 *
 * @param week the six days before the day that is asked for
 * @param before the week it is compared with, of the athlete's own
 */
public record OwnWeeks(Legs week, Before before) {
  /** Both legs together, or one. */
  public enum Part {
    /** Both. */
    TOGETHER("both legs"),
    /** The right leg. */
    RIGHT("right leg"),
    /** The left leg. */
    LEFT("left leg");

    private final String label;

    Part(String label) {
      this.label = label;
    }

    /** In words. */
    public String label() {
      return label;
    }
  }

  /**
   * Of the two legs.
   *
   * @param right of the right leg [standing-bound contacts]
   * @param left of the left leg [standing-bound contacts]
   */
  public record Legs(double right, double left) {
    /** Of a part. */
    public double of(Part part) {
      return switch (part) {
        case TOGETHER -> right + left;
        case RIGHT -> right;
        case LEFT -> left;
      };
    }
  }

  /**
   * A week of the athlete's own; both legs together may have had their largest week at another time than each.
   *
   * @param together both legs [standing-bound contacts]
   * @param right the right leg [standing-bound contacts]
   * @param left the left leg [standing-bound contacts]
   */
  public record Before(double together, double right, double left) {
    /** Of a part. */
    public double of(Part part) {
      return switch (part) {
        case TOGETHER -> together;
        case RIGHT -> right;
        case LEFT -> left;
      };
    }
  }

  private static final int FIRST = 7;
  private static final int LAST_WEEK = 13;
  private static final int LAST = 34;

  /**
   * The six days before {@code day} and the weeks before those.
   *
   * @param power 4 to 9
   */
  public static OwnWeeks of(History history, LocalDate day, ContactWeights weights, double power) {
    return of(history, day, weights, List.of(power)).get(0);
  }

  /** As {@link #of(History, LocalDate, ContactWeights, double)}, with each of some powers in their order. */
  public static List<OwnWeeks> of(History history, LocalDate day, ContactWeights weights, List<Double> powers) {
    History past = history.before(day);
    List<List<LegLoad>> byDay = past.days().stream().map(d -> weights.of(d, powers)).toList();
    List<OwnWeeks> out = new ArrayList<>();
    for (int i = 0; i < powers.size(); i++) {
      int power = i;
      out.add(of(past, byDay.stream().map(d -> d.get(power)).toList(), day));
    }
    return List.copyOf(out);
  }

  private static OwnWeeks of(History past, List<LegLoad> loads, LocalDate day) {
    Legs week = legs(foot -> sum(past, loads, day, FIRST, LAST_WEEK, foot) + said(past, day, FIRST, LAST_WEEK));
    Legs month = legs(foot -> sum(past, loads, day, FIRST, LAST, foot) + said(past, day, FIRST, LAST));
    return new OwnWeeks(
        legs(foot -> sum(past, loads, day, 1, FIRST - 1, foot)),
        new Before(before(week, month, Part.TOGETHER), before(week, month, Part.RIGHT), before(week, month, Part.LEFT)));
  }

  private static Legs legs(ToDoubleFunction<Foot> of) {
    return new Legs(of.applyAsDouble(Foot.RIGHT), of.applyAsDouble(Foot.LEFT));
  }

  private static double before(Legs week, Legs month, Part part) {
    return Math.max(week.of(part), month.of(part) / 4);
  }

  private static double sum(History past, List<LegLoad> loads, LocalDate day, int from, int to, Foot foot) {
    double sum = 0;
    for (int i = 0; i < loads.size(); i++) {
      long ago = ChronoUnit.DAYS.between(past.days().get(i).date(), day);
      if (ago >= from && ago <= to) {
        sum += loads.get(i).units(foot);
      }
    }
    return sum;
  }

  /** What the coach said of the days without a log, for one leg; weighed as from standing, the careful reading. */
  private static double said(History past, LocalDate day, int from, int to) {
    LastWeek word = past.lastWeek();
    if (word == null) {
      return 0;
    }
    LocalDate end = end(word, past.first());
    long days = 0;
    for (int ago = from; ago <= to; ago++) {
      days += day.minusDays(ago).isBefore(end) ? 1 : 0;
    }
    return word.contacts() / 7.0 / 2 * days;
  }

  /** The first day that the word no longer speaks of. */
  private static LocalDate end(LastWeek word, @Nullable LocalDate first) {
    return first != null && first.isBefore(word.said()) ? first : word.said();
  }
}
