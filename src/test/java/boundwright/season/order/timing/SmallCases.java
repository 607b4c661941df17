package boundwright.season.order.timing;

import boundwright.season.order.timing.Chains.Lanes;
import boundwright.season.order.timing.Chains.Op;
import java.util.ArrayList;
import java.util.List;
import java.util.random.RandomGenerator;

/** Small sessions in small seconds: chains of unlike reps, one or two places, watched or not, some that close. */
final class SmallCases {
  private SmallCases() {}

  static Chains one(RandomGenerator random) {
    int athletes = 2 + random.nextInt(3);
    int drills = 1 + random.nextInt(2);
    int most = athletes == 2 ? 3 : 2;
    boolean[] sand = new boolean[drills];
    boolean[] watched = new boolean[drills];
    for (int d = 0; d < drills; d++) {
      sand[d] = random.nextInt(3) > 0;
      watched[d] = random.nextInt(3) > 0;
    }
    List<List<Op>> ops = new ArrayList<>();
    int left = 8;
    for (int a = 0; a < athletes; a++) {
      List<Op> chain = new ArrayList<>();
      for (int d = 0; d < drills && left > 0; d++) {
        int hold = 1 + random.nextInt(4);
        int eyes = watched[d] ? 1 + random.nextInt(4) : 0;
        Op op = new Op(d, sand[d], hold, eyes, Math.max(Math.max(hold, eyes), hold + random.nextInt(9)));
        for (int k = Math.min(left, 1 + random.nextInt(most)); k > 0; k--) {
          chain.add(op);
          left--;
        }
      }
      ops.add(chain);
    }
    List<Lanes> places = new ArrayList<>();
    places.add(new Lanes(1 + random.nextInt(2), true, random.nextInt(3) == 0, Chains.OPEN));
    if (random.nextInt(2) == 0) {
      places.add(new Lanes(1, true, true, random.nextInt(3) == 0 ? 4 + random.nextInt(8) : Chains.OPEN));
    }
    if (places.stream().noneMatch(p -> p.flat() && p.until() == Chains.OPEN)) {
      places.add(new Lanes(1, false, true, Chains.OPEN));
    }
    return new Chains(ops, places, 1 + random.nextInt(2));
  }
}
