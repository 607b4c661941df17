package boundwright.season.chance;

import boundwright.athlete.Athlete;
import boundwright.footfall.Foot;
import boundwright.load.account.ContactWeights;
import boundwright.load.account.LegLoad;
import boundwright.load.account.Work;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** What one rep weighs on each leg from each approach, worked out once for all sessions of a season. For one thread while it fills. */
final class RepWeights {
  private final ContactWeights weights;
  private final Map<Rep, double[][]> known = new HashMap<>();

  private record Rep(List<Foot> contacts, Work.Kind kind) {}

  RepWeights(ContactWeights weights) {
    this.weights = weights;
  }

  ContactWeights weights() {
    return weights;
  }

  /** By leg, 0 right and 1 left, and approach steps [1/100 standing-bound contact]. */
  double[][] of(Work w) {
    return w.measured().isEmpty() ? known.computeIfAbsent(new Rep(w.sequence().contacts(), w.kind()), k -> all(w)) : all(w);
  }

  private double[][] all(Work w) {
    double[][] out = new double[2][Athlete.MAX_STEPS + 1];
    for (int s = 0; s <= Athlete.MAX_STEPS; s++) {
      LegLoad one = weights.of(new Work(w.sequence(), 1, s, w.surface(), w.kind(), w.measured()), weights.scale().power());
      out[0][s] = 100 * one.rightUnits();
      out[1][s] = 100 * one.leftUnits();
    }
    return out;
  }
}
