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
      return x.stream().mapToDouble(v -> v).average().orElse(0);
    }

    private static double squares(List<Double> x) {
      double mean = mean(x);
      return x.stream().mapToDouble(v -> (v - mean) * (v - mean)).sum();
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

  /** Flights up to the farthest point that was measured; 0 if none was. */
  private static int measuredFlights(Rep r) {
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
    int here = blocks.stream().mapToInt(b -> b.here().size()).sum();
    int below = blocks.stream().mapToInt(b -> b.below().size()).sum();
    List<LocalDate> days = blocks.stream().map(Block::date).distinct().toList();
    boolean used = false;
    for (int k = FEWEST_DAYS; k <= days.size() && !used; k++) {
      LocalDate end = days.get(k - 1);
      used = longer(blocks.stream().filter(b -> !b.date().isAfter(end)).toList(), k);
    }
    // loss wins: what was used once may have been lost
    Told told = notWorth(days.size()) ? Told.NOT_USED : used ? Told.USED : Told.NOT_KNOWN;
    return new SpeedUse(told, gain(blocks), days.size(), here, below);
  }

  private boolean enough(List<Block> some, int days) {
    return days >= FEWEST_DAYS && some.stream().mapToInt(b -> b.here().size()).sum() >= FEWEST_REPS
        && some.stream().mapToInt(b -> b.below().size()).sum() >= FEWEST_REPS;
  }

  private double look(int days) {
    return rules.error() / LOOKS * Math.min(1, FULL / days);
  }

  private boolean longer(List<Block> some, int days) {
    int df = freedom(some);
    return enough(some, days) && mean(some) > -error(some) * new TDistribution(df).inverseCumulativeProbability(look(days));
  }

  /** Whether the flights lie below those from two steps less with the least worthwhile gain added. */
  private boolean notWorth(int days) {
    if (!enough(blocks, days)) {
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
    return above / Math.sqrt(variance) <= new NormalDistribution().inverseCumulativeProbability(look(days));
  }

  private static double mean(List<Block> some) {
    double sum = 0;
    double weights = 0;
    for (Block b : some) {
      sum += b.weight() * b.difference();
      weights += b.weight();
    }
    return sum / weights;
  }

  private static int freedom(List<Block> some) {
    return Math.max(1, some.stream().mapToInt(b -> b.here().size() + b.below().size() - 2).sum());
  }

  private static double error(List<Block> some) {
    double squares = some.stream().mapToDouble(Block::squares).sum();
    double weights = some.stream().mapToDouble(Block::weight).sum();
    return Math.sqrt(squares / freedom(some) / weights);
  }

  /** The gain with its 90 % interval; NaN at both ends where the scatter cannot be told from single reps. */
  private static Estimate gain(List<Block> some) {
    double mean = mean(some);
    boolean single = some.stream().allMatch(b -> b.here().size() + b.below().size() == 2);
    double half = single ? Rep.MAX_FLIGHT_M : error(some) * new TDistribution(freedom(some)).inverseCumulativeProbability(0.95);
    return new Estimate(mean - half, mean, mean + half);
  }
}
