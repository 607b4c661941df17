package boundwright.season.order;

import static org.assertj.core.api.Assertions.assertThat;

import boundwright.footfall.Foot;
import boundwright.runway.Window;
import boundwright.season.order.InventedSessions.Shape;
import boundwright.season.order.RunningOrder.Go;
import boundwright.season.order.RunningOrder.Lay;
import boundwright.season.order.timing.OrderSolver;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.SplittableRandom;
import java.util.TreeSet;
import java.util.random.RandomGenerator;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** What holds of every session's order, on seeded invented squads; looked at from outside, not with the planner's own sums. */
class OrderLawsTest {
  private static final long SEED = 2_026_1129;
  private static final int SESSIONS = 30;
  private static final OrderSolver.Effort LIGHT = new OrderSolver.Effort(60, 4_000_000);

  private static Shape shape(RandomGenerator random) {
    return new Shape(
        2 + random.nextInt(12), 1 + random.nextInt(2), 1 + random.nextInt(2), random.nextInt(3), 1 + random.nextInt(3), 1 + random.nextInt(2),
        random.nextBoolean(), List.of(OrderSettings.Watch.values()).get(random.nextInt(3)));
  }

  @Test
  void everyOrder() {
    SplittableRandom random = new SplittableRandom(SEED);
    for (int i = 0; i < SESSIONS; i++) {
      SessionAsk ask = InventedSessions.of(shape(random), random);
      RunningOrder order = new OrderPlanner(i, LIGHT).plan(ask);
      String as = "seed " + SEED + " session " + i;
      assertThat(order.finish_s()).as(as).isGreaterThanOrEqualTo(order.least_s());
      assertThat(order.least_s()).as(as).isGreaterThanOrEqualTo(order.bound_s());
      if (order.fits() && order.drops().isEmpty()) {
        assertThat(order.goes()).as(as).hasSize(ask.athletes().size() * ask.drills().stream().mapToInt(d -> d.sets() * d.reps()).sum());
      }
      rests(ask, order, as);
      nobodyIsTwice(ask, order, as);
      tapes(ask, order, as);
    }
  }

  /** 1:5 of the work (read), and 1, 2, 3, 5 minutes from standing, 4, 8, 12 steps (the figures; judgement). */
  private static void rests(SessionAsk ask, RunningOrder order, String as) {
    for (OrderAthlete a : ask.athletes()) {
      Go before = null;
      for (Go go : order.goes()) {
        if (go.athleteId() != a.id()) {
          continue;
        }
        if (before != null) {
          int minutes = before.steps() < 4 ? 1 : before.steps() < 8 ? 2 : before.steps() < 12 ? 3 : 5;
          int least = Math.max(minutes * 60, 5 * (before.landing_s() - before.start_s()));
          assertThat(go.start_s() - before.landing_s()).as(as + " " + a.name()).isGreaterThanOrEqualTo(least);
          assertThat(go.drill()).as(as + ": drills in order").isGreaterThanOrEqualTo(before.drill());
        }
        before = go;
      }
    }
  }

  private static void nobodyIsTwice(SessionAsk ask, RunningOrder order, String as) {
    List<Go> goes = order.goes();
    for (int i = 0; i < goes.size(); i++) {
      Go a = goes.get(i);
      int watched = 0;
      for (int j = 0; j < goes.size(); j++) {
        Go b = goes.get(j);
        boolean overlap = a.start_s() < b.clear_s() && b.start_s() < a.clear_s();
        if (i != j && overlap) {
          assertThat(a.place() + a.lane()).as(as + ": one lane").isNotEqualTo(b.place() + b.lane());
          assertThat(a.name()).as(as).isNotEqualTo(b.name());
          assertThat(a.name()).as(as + ": who runs does not measure").isNotEqualTo(b.measures());
          if (a.measures() != null) {
            assertThat(a.measures()).as(as + ": measures at one place").isNotEqualTo(b.measures());
          }
        }
        // the coach is with a rep from its start until the word after it
        watched += b.watched() && b.start_s() <= a.start_s() && a.start_s() < b.landing_s() + ask.settings().say_s() ? 1 : 0;
      }
      assertThat(watched).as(as + ": eyes").isLessThanOrEqualTo(ask.coaches());
      Place place = ask.places().stream().filter(p -> p.name().equals(a.place())).findFirst().orElseThrow();
      assertThat(a.lane()).as(as).isBetween(1, place.lanes());
    }
  }

  private static void tapes(SessionAsk ask, RunningOrder order, String as) {
    for (Place place : ask.places()) {
      List<Go> here = order.goes().stream().filter(g -> g.place().equals(place.name())).toList();
      int sum = 0;
      List<Window> all = new ArrayList<>();
      for (int d = 0; d < ask.drills().size(); d++) {
        int drill = d;
        List<Window> works = here.stream().filter(g -> g.drill() == drill && g.mark_m() != null).map(g -> works(ask, g)).distinct().toList();
        sum += fewest(works);
        all.addAll(works);
      }
      List<Lay> laid = order.tapes().stream().filter(l -> l.place().equals(place.name())).toList();
      assertThat(laid.size()).as(as + ": no more than each drill's own least").isLessThanOrEqualTo(sum);
      assertThat(laid.size()).as(as + ": the least there is").isEqualTo(fewest(all));
      for (Go g : here) {
        if (g.mark_m() != null) {
          assertThat(works(ask, g).holds(g.mark_m())).as(as).isTrue();
          assertThat(lying(laid, g)).as(as + ": its tape lies at " + g).contains(g.mark_m());
        }
      }
      for (Lay l : laid) {
        if (l.from_m() != null) {
          assertThat(here).as(as + ": nobody runs into a hand").noneMatch(g -> g.start_s() <= l.time_s() && l.time_s() < g.landing_s());
        }
      }
    }
  }

  private static Window works(SessionAsk ask, Go go) {
    Window w = ask.athletes().stream().filter(a -> a.id() == go.athleteId()).findFirst().orElseThrow().parts().get(go.drill()).works();
    return Objects.requireNonNull(w);
  }

  private static List<Double> lying(List<Lay> laid, Go go) {
    List<Double> out = new ArrayList<>();
    for (Lay l : laid) {
      if (l.time_s() <= go.start_s()) {
        out.remove(l.from_m());
        out.add(l.to_m());
      }
    }
    return out;
  }

  /** The slow way: every set of far ends, the smallest first. */
  private static int fewest(List<Window> works) {
    List<Double> ends = new ArrayList<>(new TreeSet<>(works.stream().map(Window::max_m).toList()));
    int least = ends.size();
    if (ends.size() > 10) {
      return far(works);
    }
    for (int set = 0; set < 1 << ends.size(); set++) {
      int chosen = set;
      if (Integer.bitCount(set) < least
          && works.stream().allMatch(w -> IntStream.range(0, ends.size()).anyMatch(e -> (chosen >> e & 1) == 1 && w.holds(ends.get(e))))) {
        least = Integer.bitCount(set);
      }
    }
    return works.isEmpty() ? 0 : least;
  }

  /** As many as there are windows that share no mark, taken by their far ends: a lower bound that the greedy reaches. */
  private static int far(List<Window> works) {
    List<Window> apart = new ArrayList<>();
    works.stream()
        .sorted(Comparator.comparingDouble(Window::max_m))
        .filter(w -> apart.stream().allMatch(o -> o.max_m() < w.min_m()))
        .forEach(apart::add);
    return apart.size();
  }

  @Test
  void theFewestTapesAreTheFewest() {
    SplittableRandom random = new SplittableRandom(SEED + 1);
    for (int i = 0; i < 300; i++) {
      List<Window> works = new ArrayList<>();
      for (int k = random.nextInt(11); k > 0; k--) {
        double near = random.nextDouble(5, 12);
        works.add(new Window(near, near + random.nextDouble(0, 2)));
      }
      String as = "seed " + (SEED + 1) + " case " + i + " " + works;
      assertThat(TapeSets.least(works)).as(as).isEqualTo(fewest(works));
      List<Double> marks = TapeSets.marks(works, List.of(6.0, 8.0, 9.5));
      assertThat(marks).as(as).hasSize(fewest(works));
      assertThat(works).as(as).allMatch(w -> marks.stream().anyMatch(w::holds));
    }
  }

  @Test
  void whatIsLeftOut() {
    SplittableRandom random = new SplittableRandom(SEED + 2);
    int dropped = 0;
    for (int i = 0; i < SESSIONS; i++) {
      SessionAsk ask = InventedSessions.of(shape(random), random);
      int full = new OrderPlanner(i, LIGHT).plan(ask).finish_s();
      int minutes = Math.max(1, (int) (full / 60.0 * random.nextDouble(0.4, 1.1)));
      SessionAsk shorter = ask.within(minutes);
      RunningOrder order = new OrderPlanner(i, LIGHT).plan(shorter);
      String as = "seed " + (SEED + 2) + " session " + i + " of " + full + " s in " + minutes + " min: " + order.drops();
      rests(shorter, order, as);
      if (full <= minutes * 60) {
        assertThat(order.drops()).as(as).isEmpty();
        continue;
      }
      dropped++;
      assertThat(order.drops()).as(as).isNotEmpty().noneMatch(d -> shorter.drills().get(d.drill()).warmUp());
      for (int a = 0; a < ask.athletes().size(); a++) {
        OrderAthlete who = ask.athletes().get(a);
        List<Go> own = order.goes().stream().filter(g -> g.athleteId() == who.id()).toList();
        assertThat(own).as(as + ": everybody runs").isNotEmpty();
        int planned = ask.drills().stream().mapToInt(d -> over(d) * d.sets() * d.reps()).sum();
        int left = own.stream().mapToInt(g -> over(ask.drills().get(g.drill()))).sum();
        if (order.level()) {
          assertThat(Math.abs(left)).as(as + ": legs of " + who.name()).isLessThanOrEqualTo(Math.abs(planned));
        }
        for (int d = 0; d < ask.drills().size(); d++) {
          int drill = d;
          long reps = own.stream().filter(g -> g.drill() == drill).count();
          if (ask.drills().get(d).warmUp()) {
            assertThat(reps).as(as + ": the warm-up stays").isEqualTo((long) ask.drills().get(d).sets() * ask.drills().get(d).reps());
          }
        }
      }
      if (order.fits()) {
        assertThat(order.finish_s()).as(as).isLessThanOrEqualTo(minutes * 60);
      } else {
        // only where everybody is at their last rep outside the warm-up
        assertThat(order.goes().stream().filter(g -> !ask.drills().get(g.drill()).warmUp()).count()).as(as).isLessThanOrEqualTo(ask.athletes().size());
      }
    }
    assertThat(dropped).isGreaterThan(SESSIONS / 3);
  }

  private static int over(SessionDrill d) {
    return d.sequence().count(Foot.RIGHT) - d.sequence().count(Foot.LEFT);
  }
}
