package boundwright.runway;

import boundwright.quantity.LengthUnit;
import boundwright.runway.Tapes.Tape;
import boundwright.runway.Tapes.Wish;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;

/**
 * The fewest tapes so that every open window holds one ({@link TapeGroups}). The windows at which a tape had to be laid are given as the
 * proof.
 *
 * <p>Who has no history yet is served like the others: their window is the marks from which a rep lands in the sand about as often as
 * from where they begin ({@link Beginning}).
 *
 * <p>A tape may then slide: each group keeps its number, every wish goes to the tape that serves it best, and each
 * tape is laid where the least lucky of its wishes has its best chance that the rep counts.
 */
final class TapePlanner {
  private static final int HALVINGS = 30;

  private final LengthUnit unit;
  private final TapeMemory memory;

  private TapePlanner(LengthUnit unit, TapeMemory memory) {
    this.unit = unit;
    this.memory = memory;
  }

  static Tapes fewest(List<Wish> wishes, LengthUnit unit) {
    return fewest(wishes, unit, new TapeMemory());
  }

  /** As {@link #fewest(List, LengthUnit)}, with what was worked out before. */
  static Tapes fewest(List<Wish> wishes, LengthUnit unit, TapeMemory memory) {
    return new TapePlanner(unit, memory).fewest(wishes);
  }

  private Tapes fewest(List<Wish> wishes) {
    List<Wish> without = wishes.stream().filter(w -> !w.served()).toList();
    List<List<Wish>> groups = TapeGroups.fewest(wishes.stream().filter(Wish::served).toList(), TapePlanner::window);
    List<Wish> open = groups.stream().flatMap(List::stream).toList();
    List<Wish> proof = groups.stream().map(g -> g.get(0)).toList();
    List<Double> places = groups.stream().map(this::best).toList();
    Map<Integer, List<Wish>> served = new LinkedHashMap<>();
    for (int i = 0; i < places.size(); i++) {
      served.put(i, new ArrayList<>());
    }
    for (Wish w : open) {
      MarkChances chances = chances(w);
      int to = -1;
      for (int i = 0; i < places.size(); i++) {
        if (window(w).holds(places.get(i)) && (to < 0 || chances.counts(places.get(i)) > chances.counts(places.get(to)))) {
          to = i;
        }
      }
      Objects.requireNonNull(served.get(to)).add(w);
    }
    List<Tape> tapes = new ArrayList<>();
    served.forEach((i, list) -> {
      if (!list.isEmpty()) {
        tapes.add(new Tape(best(list), list));
      }
    });
    tapes.sort(Comparator.comparingDouble(Tape::markToSand_m));
    return new Tapes(tapes, proof, without);
  }

  /**
   * Where in the common part of the windows the smallest of the chances that a rep counts is largest, on the unit's step if one
   * fits. Each chance has one peak, so the smallest one grows in the direction in which it does itself: found by halving.
   */
  private double best(List<Wish> group) {
    return memory.place(group, unit, () -> workedOut(group));
  }

  private double workedOut(List<Wish> group) {
    double from = group.stream().mapToDouble(w -> window(w).min_m()).max().orElseThrow();
    double to = group.stream().mapToDouble(w -> window(w).max_m()).min().orElseThrow();
    List<MarkChances> chances = group.stream().map(this::chances).toList();
    double near = from;
    double far = to;
    for (int i = 0; i < HALVINGS; i++) {
      double at = (near + far) / 2;
      if (least(chances, at).rises(at)) {
        near = at;
      } else {
        far = at;
      }
    }
    double best = (near + far) / 2;
    double rounded = unit.round(best);
    return rounded >= from && rounded <= to ? rounded : best;
  }

  /** The first of those with the smallest chance there. */
  private static MarkChances least(List<MarkChances> chances, double at) {
    MarkChances least = chances.get(0);
    double smallest = least.counts(at);
    for (MarkChances c : chances.subList(1, chances.size())) {
      double own = c.counts(at);
      if (own < smallest) {
        least = c;
        smallest = own;
      }
    }
    return least;
  }

  private MarkChances chances(Wish w) {
    return memory.chances(w.advice(), () -> asked(w));
  }

  private static MarkChances asked(Wish w) {
    MarkChances counts = MarkChances.of(w.advice().forecast(), w.advice().settings());
    return w.advice().beginning() == null ? counts : counts.withoutMargins();
  }

  private static Window window(Wish w) {
    return Objects.requireNonNull(w.advice().works());
  }
}
