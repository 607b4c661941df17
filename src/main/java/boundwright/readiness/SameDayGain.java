package boundwright.readiness;

import boundwright.evidence.Source;
import boundwright.evidence.Standing;
import boundwright.flight.Rep;
import boundwright.quantity.Estimate;
import boundwright.readiness.SpeedUse.Told;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.hipparchus.distribution.continuous.NormalDistribution;
import org.hipparchus.distribution.continuous.TDistribution;

/**
 * What two steps add to a flight, from measured reps of the log only: no belief about approaches enters. Reps are
 * compared with reps of the same day, drill and surface from two steps less, so that neither the form of the day nor
 * improvement over weeks can fake or hide a gain.
 *
 * <p><em>Used</em> is told when at the end of one of the days the gain so far was above 0 by a one-sided t-test (scatter
 * pooled within day and approach) at a fifth of the error set for the whole stay, less after {@value #FULL} days in
 * proportion; over 24 days the looks together then stay below that error (simulated, {@code docs/gate.md}). <em>Not
 * used</em> is told when the gain is below the least one that is worth the speed, by the rank sums of the days (van
 * Elteren 1960, memory; variance known whatever the scatter) at the same level: there a shorter flight can only count
 * against the athlete.
 */
final class SameDayGain {
  static final Source SOURCE =
      new Source("same-day-gain", "Measured flights from this approach against two steps less on the same day",
          "the reps you logged; t-test and rank sums within days", Standing.OWN_DATA);

  private static final int FEWEST_DAYS = 3;
  private static final int FEWEST_REPS = 9;
  private static final double FULL = 8;
  private static final double LOOKS = 5;

  private final GateRules.Speed rules;
  private final List<Block> blocks;

  private SameDayGain(GateRules.Speed rules, List<Block> blocks) {
    this.rules = rules;
    this.blocks = blocks;
  }

  /** Mean flights [m] of one day, drill and surface from both approaches. */
  private record Block(LocalDate date, List<Double> here, List<Double> below) {
    double weight() {
      return here.size() * (double) below.size() / (here.size() + below.size());
    }

    double difference() {
      return mean(here) - mean(below);
    }

    double squares() {
      return squares(here) + squares(below);
    }

    private static double mean(List<Double> x) {
      double sum = 0;
      for (double v : x) {
        sum += v;
      }
      return sum / x.size();
    }

    private static double squares(List<Double> x) {
      double mean = mean(x);
      double sum = 0;
      for (double v : x) {
        sum += (v - mean) * (v - mean);
      }
      return sum;
    }
  }

  /**
   * From the log.
   *
   * @param reps of one family, from any approach, in the order done
   * @param steps the approach, 2 or more
   */
  static SpeedUse of(List<Rep> reps, int steps, GateRules.Speed rules) {
    Map<String, Block> blocks = new TreeMap<>();
    for (Rep r : reps) {
      double flight = meanFlight(r);
      if (Double.isNaN(flight) || (r.approachSteps() != steps && r.approachSteps() != steps - 2)) {
        continue;
      }
      // the date leads the key, so that blocks come by date
      String key = r.date() + " " + r.sequence().letters() + " " + r.surface() + " " + measuredFlights(r);
      Block b = blocks.computeIfAbsent(key, k -> new Block(r.date(), new ArrayList<>(), new ArrayList<>()));
      (r.approachSteps() == steps ? b.here() : b.below()).add(flight);
    }
    List<Block> telling = blocks.values().stream().filter(b -> !b.here().isEmpty() && !b.below().isEmpty()).toList();
    return new SameDayGain(rules, telling).told();
  }

  /** Flights up to the farthest point that was measured; 0 if none was, or the rep broke off and none of them is a usual one. */
  private static int measuredFlights(Rep r) {
    if (r.abandoned()) {
      return 0;
    }
    if (r.landing_m() != null) {
      return r.sequence().size();
    }
    for (int i = r.footprints_m().size(); i > 0; i--) {
      if (!Double.isNaN(r.footprints_m().get(i - 1))) {
        return i;
      }
    }
    return 0;
  }

  /** Mean flight up to there [m]; NaN if nothing was measured. */
  private static double meanFlight(Rep r) {
    int flights = measuredFlights(r);
    Double landing = r.landing_m();
    return flights == 0 ? Double.NaN : (landing != null ? landing : r.footprints_m().get(flights - 1)) / flights;
  }

  private SpeedUse told() {
    if (blocks.isEmpty()) {
      return SpeedUse.notKnown();
    }
    Sums sums = new Sums();
    boolean used = false;
    for (int i = 0; i < blocks.size(); i++) {
      sums.add(blocks.get(i));
      boolean dayEnds = i + 1 == blocks.size() || !blocks.get(i + 1).date().equals(blocks.get(i).date());
      used |= dayEnds && longer(sums);
    }
    // loss wins: what was used once may have been lost
    Told told = notWorth(sums) ? Told.NOT_USED : used ? Told.USED : Told.NOT_KNOWN;
    return new SpeedUse(told, sums.gain(), sums.days, sums.here, sums.below);
  }

  /** Block after block added up. */
  private static final class Sums {
    private double weights;
    private double differences;
    private double squares;
    private int freedom;
    private int here;
    private int below;
    private int days;
    private LocalDate day = LocalDate.MIN;

    void add(Block b) {
      weights += b.weight();
      differences += b.weight() * b.difference();
      squares += b.squares();
      freedom += b.here().size() + b.below().size() - 2;
      here += b.here().size();
      below += b.below().size();
      days += b.date().equals(day) ? 0 : 1;
      day = b.date();
    }

    boolean enough() {
      return days >= FEWEST_DAYS && here >= FEWEST_REPS && below >= FEWEST_REPS;
    }

    double mean() {
      return differences / weights;
    }

    /** Standard error of the mean, scatter pooled within day and approach [m]. */
    double error() {
      return Math.sqrt(squares / Math.max(1, freedom) / weights);
    }

    /** The gain with its 90 % interval; as wide as can be where single reps show no scatter. */
    Estimate gain() {
      double half = freedom == 0 ? Rep.MAX_FLIGHT_M : error() * new TDistribution(freedom).inverseCumulativeProbability(0.95);
      return new Estimate(mean() - half, mean(), mean() + half);
    }
  }

  private double look(int days) {
    return rules.error() / LOOKS * Math.min(1, FULL / days);
  }

  private boolean longer(Sums s) {
    if (!s.enough() || s.freedom == 0) {
      return false;
    }
    double error = s.error();
    return error == 0 ? s.mean() > 0 : new TDistribution(s.freedom).cumulativeProbability(-s.mean() / error) <= look(s.days);
  }

  /** Whether the flights lie below those from two steps less with the least worthwhile gain added. */
  private boolean notWorth(Sums sums) {
    if (!sums.enough()) {
      return false;
    }
    double above = 0;
    double variance = 0;
    for (Block b : blocks) {
      int m = b.here().size();
      int n = b.below().size();
      double weight = 1.0 / (m + n + 1);
      double wins = 0;
      for (double x : b.here()) {
        for (double y : b.below()) {
          wins += 0.5 + 0.5 * Math.signum(x - y - rules.leastGain());
        }
      }
      above += weight * (wins - m * n / 2.0);
      variance += weight * m * n / 12.0;
    }
    return above / Math.sqrt(variance) <= new NormalDistribution().inverseCumulativeProbability(look(sums.days));
  }
}
