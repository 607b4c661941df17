package boundwright.athlete.growth;

import boundwright.quantity.Decimals;
import boundwright.quantity.Estimate;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.function.BiFunction;

/**
 * One interval of a speed and what it was.
 *
 * @param age on that day [y]
 * @param afterPeak years since the greatest speed of the spurt, before it negative
 * @param speed as told by the heights up to the last one before or on that day [cm/y]
 * @param truth the speed [cm/y]
 */
record Told(double age, double afterPeak, Estimate speed, double truth) {
  /** Phases by years from the peak. */
  enum Phase {
    BEFORE("more than a year before", -99, -1),
    IN("the year before the peak", -1, 0),
    FIRST("first year after", 0, 1),
    SECOND("second", 1, 2),
    THIRD("third", 2, 3),
    ADULT("later", 3, 99);

    final String words;
    private final double from;
    private final double to;

    Phase(String words, double from, double to) {
      this.words = words;
      this.from = from;
      this.to = to;
    }

    List<Told> of(List<Told> all) {
      return all.stream().filter(t -> t.afterPeak >= from && t.afterPeak < to).toList();
    }
  }

  /** On the days with a height, from the third on, each from the heights up to that day; {@code later} days after it. */
  static List<Told> of(Growing who, List<Measurement> all, int later, BiFunction<List<Measurement>, LocalDate, Estimate> tells) {
    List<Told> out = new ArrayList<>();
    double peak = who.peak();
    for (int n = 3; n <= all.size(); n++) {
      LocalDate day = all.get(n - 1).date().plusDays(later);
      double age = Growing.age(day);
      out.add(new Told(age, age - peak, tells.apply(all.subList(0, n), day), who.speed_cm_y(age)));
    }
    return out;
  }

  boolean holds() {
    return speed.p05() <= truth && truth <= speed.p95();
  }

  /** Per cent of these that hold. */
  static double held(List<Told> all) {
    return 100.0 * all.stream().filter(Told::holds).count() / all.size();
  }

  /** Mean of the interval scores, lower is better (Gneiting and Raftery 2007, J Am Stat Assoc 102:359-378; formula from memory): width and 20 times the miss. */
  static double score(List<Told> all) {
    return all.stream().mapToDouble(Told::score).average().orElseThrow();
  }

  static double halfWidth(List<Told> all) {
    return all.stream().mapToDouble(t -> t.speed.halfWidth()).average().orElseThrow();
  }

  private double score() {
    return speed.p95() - speed.p05() + 20 * Math.max(0, speed.p05() - truth) + 20 * Math.max(0, truth - speed.p95());
  }

  static String row(String what, List<Told> of) {
    double below = 100.0 * of.stream().filter(t -> t.truth() < t.speed().p05()).count() / of.size();
    return "| " + what + " | " + of.size() + " | " + Decimals.fixed(held(of), 1) + " % | " + Decimals.fixed(below, 1) + " % | " + Decimals.fixed(halfWidth(of), 1) + " |";
  }
}
