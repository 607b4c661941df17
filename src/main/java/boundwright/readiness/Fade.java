package boundwright.readiness;

import java.util.Collection;
import java.util.List;

/**
 * Whether landings shrink over the reps of a day: one slope for all days, each day about its own mean, by least squares.
 *
 * @param overTenReps relative change of the landing over ten reps, negative when it shrinks
 * @param landings how many measured landings stand behind it
 * @param days over how many days
 */
record Fade(double overTenReps, int landings, int days) {
  private static final int FEWEST = 6;

  /** Whether enough landings were measured to speak of it. */
  boolean known() {
    return landings >= FEWEST;
  }

  static Fade of(Collection<List<GateRep>> byDay) {
    double above = 0;
    double below = 0;
    int landings = 0;
    int days = 0;
    for (List<GateRep> day : byDay) {
      int n = 0;
      double meanPlace = 0;
      double meanLength = 0;
      for (int i = 0; i < day.size(); i++) {
        if (!Double.isNaN(day.get(i).length())) {
          n++;
          meanPlace += i;
          meanLength += day.get(i).length();
        }
      }
      if (n < 3) {
        continue;
      }
      meanPlace /= n;
      meanLength /= n;
      landings += n;
      days++;
      for (int i = 0; i < day.size(); i++) {
        double length = day.get(i).length();
        if (!Double.isNaN(length)) {
          above += (i - meanPlace) * (length - meanLength);
          below += (i - meanPlace) * (i - meanPlace);
        }
      }
    }
    return new Fade(below == 0 ? 0 : 10 * above / below, below == 0 ? 0 : landings, days);
  }
}
