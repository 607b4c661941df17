package boundwright.clip.day;

import boundwright.clip.session.Clothes;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * Proposes who it was, and how sure that is: by the tap at that time, by the clothes of those who were named in this film, and by whose
 * turn it was. Only those who are here are proposed.
 */
final class WhoWasIt {
  /** Clothes of one athlete differ by about this much from rep to rep (judgement). */
  private static final double ALIKE = 0.22;
  /** How well clothes that nobody named wears fit anybody who was not named. */
  private static final double NEW = 0.25;
  /** How often a turn goes to the next one in the order, and how often to whoever (judgement). */
  private static final double IN_TURN = 0.6;
  /** What is left for somebody who is not on the list. */
  private static final double ELSE = 0.03;

  private WhoWasIt() {}

  /**
   * Somebody who may have been it.
   *
   * @param athleteId who
   * @param sure how sure, 0 to 1
   */
  record Proposal(long athleteId, double sure) {}

  /**
   * A rep of the film as far as is known.
   *
   * @param clothes worn, or unknown
   * @param named who it was, or null
   * @param tapped whose the tap at that time was, or null
   * @param tapSure how sure the tap is this rep, 0 to 1
   */
  record Known(Clothes clothes, @Nullable Long named, @Nullable Long tapped, double tapSure) {}

  /**
   * Proposals for one rep, the likeliest first, at most {@code most}.
   *
   * @param reps all of the film in order, without those set aside
   * @param at which of them
   * @param order who is here, in the day's order
   */
  static List<Proposal> of(List<Known> reps, int at, List<Long> order, int most) {
    Known rep = reps.get(at);
    Map<Long, Double> weight = new HashMap<>();
    double sum = ELSE;
    for (long who : order) {
      double w = turn(reps, at, order, who) * clothes(reps, at, who) * tap(rep, who);
      weight.put(who, w);
      sum += w;
    }
    double all = sum;
    List<Proposal> out = new ArrayList<>();
    weight.forEach((who, w) -> out.add(new Proposal(who, w / all)));
    out.sort(Comparator.comparingDouble(Proposal::sure).reversed().thenComparingLong(Proposal::athleteId));
    return out.size() > most ? List.copyOf(out.subList(0, most)) : List.copyOf(out);
  }

  private static double tap(Known rep, long who) {
    return rep.tapped == null ? 1 : rep.tapped == who ? 1 + 60 * rep.tapSure * rep.tapSure : 1 - 0.9 * rep.tapSure;
  }

  /** How well the clothes fit this athlete, about 1 for the same and near 0 for others. */
  private static double clothes(List<Known> reps, int at, long who) {
    Known rep = reps.get(at);
    if (!rep.clothes.known()) {
      return 1;
    }
    double own = -1;
    for (int i = 0; i < reps.size(); i++) {
      Known k = reps.get(i);
      if (i != at && k.named != null && k.named == who && k.clothes.known()) {
        own = Math.max(own, Math.exp(-0.5 * Math.pow(rep.clothes.unlike(k.clothes) / ALIKE, 2)));
      }
    }
    return own < 0 ? NEW : 0.01 + own;
  }

  /** By the turn: counted from the nearest rep before, or after, whose athlete is known. */
  private static double turn(List<Known> reps, int at, List<Long> order, long who) {
    int n = order.size();
    double even = 1.0 / n;
    for (int back = 1; back <= n; back++) {
      for (int k : new int[] {at - back, at + back}) {
        Long known = k < 0 || k >= reps.size() ? null : sureOf(reps.get(k));
        int place = known == null ? -1 : order.indexOf(known);
        if (place >= 0) {
          long expected = order.get(Math.floorMod(place + at - k, n));
          double held = IN_TURN / back;
          return held * (expected == who ? 1 : 0) + (1 - held) * even;
        }
      }
    }
    return order.get(at % n) == who ? even * 1.5 : even;
  }

  private static @Nullable Long sureOf(Known k) {
    return k.named != null ? k.named : k.tapSure > 0.7 ? k.tapped : null;
  }
}
