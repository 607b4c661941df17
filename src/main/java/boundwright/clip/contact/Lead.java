package boundwright.clip.contact;

import boundwright.clip.track.Motion;
import java.util.ArrayList;
import java.util.List;

/**
 * How far the hips are ahead of the foot at an event is alike in the contacts of a rep. A foot event seen a little too
 * early or late shows as a lead that is too small or too large, by the speed of the hips; so each time is drawn towards
 * the one that would make its lead the mean, as far as its own error is large against how much the leads really differ
 * (empirical Bayes). The price: a contact that truly differs is shown a little more like the others than it was.
 */
final class Lead {
  /** Contacts needed before anything is shared. */
  private static final int FEWEST = 3;
  /** A lead further from the median than this takes no larger part in the mean [m]. */
  private static final double ODD_M = 0.15;
  /** Over how long the hips' speed is taken [s]. */
  private static final double SPEED_OVER_S = 0.04;

  static final Seen UNSEEN = new Seen(Double.NaN, Double.NaN, Double.NaN);

  private Lead() {}

  /**
   * What was seen at an event.
   *
   * @param lead hips ahead of the foot [m], NaN if unknown
   * @param speed of the hips [m/s]
   * @param sd standard deviation of the event's time [s]
   */
  record Seen(double lead, double speed, double sd) {
    boolean known() {
      return !Double.isNaN(lead) && speed > 1;
    }
  }

  /**
   * By how much to move a time.
   *
   * @param seconds to add [s]
   * @param sd the time's standard deviation afterwards [s]
   */
  record Shift(double seconds, double sd) {}

  static Seen of(Motion motion, double time, double sd, double foot_m) {
    double now = Hips.at(motion, time);
    return new Seen(
        now - foot_m, (Hips.at(motion, time + SPEED_OVER_S / 2) - Hips.at(motion, time - SPEED_OVER_S / 2)) / SPEED_OVER_S, sd);
  }

  /** The shifts; {@code least_m} is how much leads differ at the least, standard deviation [m]. */
  static List<Shift> shifts(List<Seen> all, double least_m) {
    List<Seen> known = all.stream().filter(Seen::known).toList();
    List<Shift> out = new ArrayList<>();
    if (known.size() < FEWEST) {
      all.forEach(s -> out.add(new Shift(0, s.sd)));
      return out;
    }
    double middle = Pool.median(known.stream().mapToDouble(Seen::lead).sorted().toArray());
    double mean =
        known.stream().mapToDouble(s -> Math.max(middle - ODD_M, Math.min(middle + ODD_M, s.lead))).average().orElse(middle);
    double spread = known.stream().mapToDouble(s -> sq(s.lead - mean)).sum() / (known.size() - 1);
    double noise = known.stream().mapToDouble(s -> sq(s.speed * s.sd)).average().orElse(0);
    double own = Math.max(sq(least_m), spread - noise);
    for (Seen s : all) {
      if (!s.known()) {
        out.add(new Shift(0, s.sd));
        continue;
      }
      double pull = sq(s.speed * s.sd) / (sq(s.speed * s.sd) + own);
      double sd = s.sd * Math.sqrt(1 - pull + pull * pull / known.size());
      out.add(new Shift(-pull * (s.lead - mean) / s.speed, sd));
    }
    return out;
  }

  private static double sq(double v) {
    return v * v;
  }
}
