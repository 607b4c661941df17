package boundwright.season.order;

import static org.assertj.core.api.Assertions.assertThat;

import boundwright.athlete.Surface;
import boundwright.footfall.Sequence;
import boundwright.quantity.LengthUnit;
import boundwright.season.order.Drop.Kind;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;

/**
 * What is left out first, on sessions small enough to work out by hand. From standing RLRL takes 2 s and rests 60 s, so a start every 62 s, and
 * keeps the lane 27 s; from 12 steps 6 s, a start every 306 s, 31 s (worked from the settings' seconds).
 */
class DropsTest {
  private static SessionDrill drill(String letters, int sets, int reps, boolean watched) {
    return new SessionDrill(Sequence.parse(letters), true, sets, reps, watched, false);
  }

  private record Who(String name, int steps, Set<Integer> fresh) {
    Who(String name, int steps) {
      this(name, steps, Set.of());
    }
  }

  private static RunningOrder plan(int minutes, List<SessionDrill> drills, Who... who) {
    return OrderPlanner.brisk(1).plan(ask(minutes, drills, who));
  }

  private static SessionAsk ask(int minutes, List<SessionDrill> drills, Who... who) {
    List<OrderAthlete> athletes = new ArrayList<>();
    for (Who w : who) {
      List<OrderAthlete.Part> parts = new ArrayList<>();
      for (int d = 0; d < drills.size(); d++) {
        parts.add(new OrderAthlete.Part(w.steps, 0, null, w.fresh.contains(d)));
      }
      athletes.add(new OrderAthlete(athletes.size() + 1, w.name, parts));
    }
    return new SessionAsk(
        athletes, drills, List.of(new Place("Pit", true, false, 4, Surface.TRACK, null)), 4, List.of(), minutes, List.of(), LengthUnit.METRES,
        OrderSettings.DEFAULT);
  }

  private static Drop only(RunningOrder order) {
    assertThat(order.drops()).hasSize(1);
    assertThat(order.fits()).isTrue();
    return order.drops().get(0);
  }

  @Test
  void whatFitsIsLeftAlone() {
    // 3 starts every 62 s and a lane of 27 s: 213 s of 240
    RunningOrder order = plan(4, List.of(drill("RLRL", 2, 2, false)), new Who("Otis", 0));
    assertThat(order.finish_s()).isEqualTo(3 * 62 + 27);
    assertThat(order.drops()).isEmpty();
    assertThat(order.proven()).isTrue();
  }

  @Test
  void aSetAfterTheFirstBeforeARep() {
    // 213 s of 180: one rep has to go, and the second set of the earlier drill is less wanted than a rep of the later one's only set
    Drop drop = only(plan(3, List.of(drill("RLRL", 2, 1, false), drill("RLRL", 1, 2, false)), new Who("Otis", 0)));
    assertThat(drop.kind()).isEqualTo(Kind.SET);
    assertThat(drop.drill()).isZero();
    assertThat(drop.set()).isEqualTo(2);
  }

  @Test
  void unwatchedBeforeWatchedAndTheLaterBeforeTheEarlier() {
    assertThat(only(plan(3, List.of(drill("RLRL", 2, 1, false), drill("RLRL", 2, 1, true)), new Who("Otis", 0))).drill()).isZero();
    assertThat(only(plan(3, List.of(drill("RLRL", 2, 1, true), drill("RLRL", 2, 1, true)), new Who("Otis", 0))).drill()).isEqualTo(1);
  }

  @Test
  void aKnownDrillBeforeANewOneAlsoWhereItIsEarlier() {
    Drop known = only(plan(1, List.of(drill("RLRL", 1, 1, false), drill("RRLL", 1, 1, false)), new Who("Otis", 0, Set.of(1))));
    assertThat(known.kind()).isEqualTo(Kind.DRILL);
    assertThat(known.drill()).isZero();
  }

  @Test
  void onlyForThoseWhomItHelps() {
    // from 12 steps 2 x 306 + 31 = 643 s, from standing 151 s, of 600
    SessionAsk ask = ask(10, List.of(drill("RLRL", 3, 1, false)), new Who("Otis", 12), new Who("Mara", 0), new Who("Piet", 12), new Who("Zoe", 0));
    RunningOrder order = OrderPlanner.brisk(1).plan(ask);
    assertThat(only(order).athletes()).containsExactly(0, 2);
    assertThat(new OrderWords(ask, order, LocalTime.of(17, 0)).drops()).containsExactly("Drop the third set of RLRL for the two from 12 steps.");
    assertThat(new OrderWords(ask, order, LocalTime.of(17, 0)).ends()).isEqualTo("Ends 17:06. No order ends sooner.");
  }

  @Test
  void aMirrorGoesWithItsOther() {
    RunningOrder order = plan(3, List.of(drill("RRL", 2, 1, false), drill("LLR", 2, 1, false)), new Who("Otis", 0));
    assertThat(order.drops()).extracting(Drop::drill).containsExactlyInAnyOrder(0, 1);
    assertThat(order.level()).isTrue();
    assertThat(order.goes()).hasSize(2);
  }

  @Test
  void whatTurnsOutNotToBeNeededIsPutBack() {
    // A twice from standing, B twice from 12 steps: 62 + 62 + 306 + 31 = 461 s of 300. A's second set goes first, does not do, then a rep of
    // B: 62 + 31 = 93 s; with A's second set again 155 s
    SessionAsk plain = ask(5, List.of(drill("RLRL", 2, 1, false), drill("RLRL", 1, 2, false)), new Who("Otis", 0));
    OrderAthlete otis = new OrderAthlete(1, "Otis", List.of(new OrderAthlete.Part(0, 0, null, false), new OrderAthlete.Part(12, 0, null, false)));
    RunningOrder order =
        OrderPlanner.brisk(1)
            .plan(
                new SessionAsk(
                    List.of(otis), plain.drills(), plain.places(), 4, List.of(), 5, List.of(), LengthUnit.METRES, OrderSettings.DEFAULT));
    Drop drop = only(order);
    assertThat(drop.kind()).isEqualTo(Kind.REP);
    assertThat(drop.drill()).isEqualTo(1);
    assertThat(order.finish_s()).isEqualTo(62 + 62 + 31);
  }

  @Test
  void aWarmUpAndARestAreNeverGivenUp() {
    List<SessionDrill> drills = List.of(new SessionDrill(Sequence.parse("RLRL"), true, 1, 3, false, true), drill("RLRL", 1, 2, false));
    RunningOrder order = plan(2, drills, new Who("Otis", 0));
    // three of the warm-up alone take 151 s of 120: it is said, and nothing is squeezed
    assertThat(order.fits()).isFalse();
    assertThat(order.finish_s()).isGreaterThanOrEqualTo(2 * 62 + 27);
    assertThat(order.goes().stream().filter(g -> g.drill() == 0)).hasSize(3);
    SessionAsk ask = ask(2, drills, new Who("Otis", 0));
    assertThat(new OrderWords(ask, order, LocalTime.of(17, 0)).ends()).contains("too late").contains("nothing more can be left out");
  }
}
