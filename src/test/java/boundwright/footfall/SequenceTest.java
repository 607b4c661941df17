package boundwright.footfall;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import boundwright.quantity.RefusedException;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Laws of sequences on seeded random ones; the seed stands in every failure. */
class SequenceTest {
  private static final long SEED = 20260101L;

  static Sequence random(Random random, int most) {
    int n = 1 + random.nextInt(most);
    List<Foot> feet = new ArrayList<>();
    for (int i = 0; i < n; i++) {
      feet.add(random.nextBoolean() ? Foot.RIGHT : Foot.LEFT);
    }
    return Sequence.of(feet);
  }

  private static String seeded(Sequence s) {
    return "seed " + SEED + ", sequence " + s.letters();
  }

  @Test
  void mirroringTwiceIsTheIdentity() {
    Random random = new Random(SEED);
    for (int i = 0; i < 500; i++) {
      Sequence s = random(random, Sequence.MAX_CONTACTS);
      assertThat(s.mirrored().mirrored()).as(seeded(s)).isEqualTo(s);
      assertThat(s.mirrored().surplusRight()).as(seeded(s)).isEqualTo(-s.surplusRight());
    }
    Sequence written = Sequence.parse("RRL x2, R (LR)x2");
    assertThat(written.mirrored().mirrored()).isEqualTo(written);
    assertThat(Sequence.parse(written.mirrored().text())).isEqualTo(written.mirrored());
  }

  @Test
  void contactsAddUpAndEveryContactHasAFlight() {
    Random random = new Random(SEED);
    for (int i = 0; i < 500; i++) {
      Sequence s = random(random, Sequence.MAX_CONTACTS);
      assertThat(s.count(Foot.RIGHT) + s.count(Foot.LEFT)).as(seeded(s)).isEqualTo(s.size());
      assertThat(s.flights()).as(seeded(s)).hasSize(s.size());
      assertThat(s.flights().stream().filter(f -> f.kind() == FlightKind.JUMP)).as(seeded(s)).hasSize(1);
      assertThat(s.flights().get(s.size() - 1).kind()).as(seeded(s)).isEqualTo(FlightKind.JUMP);
    }
  }

  @Test
  void mirroringKeepsTheKindsOfFlight() {
    Random random = new Random(SEED);
    for (int i = 0; i < 200; i++) {
      Sequence s = random(random, Sequence.MAX_CONTACTS);
      assertThat(s.mirrored().flights().stream().map(Flight::kind).toList())
          .as(seeded(s))
          .isEqualTo(s.flights().stream().map(Flight::kind).toList());
    }
  }

  /** Hop on the same foot, step on the other: World Athletics TR 30 (read in part; science section 7). */
  @Test
  void theEventItselfIsHopStepJump() {
    assertThat(Sequence.parse("RRL").flights())
        .containsExactly(
            new Flight(1, Foot.RIGHT, FlightKind.HOP),
            new Flight(2, Foot.RIGHT, FlightKind.BOUND),
            new Flight(3, Foot.LEFT, FlightKind.JUMP));
  }

  @Test
  void cuttingKeepsEveryContactInOrder() {
    Random random = new Random(SEED);
    for (int i = 0; i < 500; i++) {
      Sequence s = random(random, Sequence.MAX_CONTACTS);
      int most = 1 + random.nextInt(20);
      List<Sequence> sets = s.sets(most);
      assertThat(sets.stream().flatMap(set -> set.contacts().stream()).toList())
          .as(seeded(s) + ", cut at " + most)
          .isEqualTo(s.contacts());
      assertThat(sets).as(seeded(s)).allMatch(set -> set.size() <= most);
      assertThat(sets.subList(0, sets.size() - 1)).as(seeded(s)).allMatch(set -> set.size() == most);
    }
  }

  /** Sets of 10 contacts (common practice; science section 1). */
  @Test
  void twentyThreeContactsAreThreeSets() {
    Sequence s = Sequence.parse("R x23");
    assertThat(s.sets(Sequence.SET_CONTACTS)).extracting(Sequence::size).containsExactly(10, 10, 3);
    assertThat(Sequence.parse("R x10").sets(10)).containsExactly(Sequence.parse("R x10"));
    assertThatThrownBy(() -> s.sets(0)).isInstanceOf(RefusedException.class).hasMessageContaining("at least 1");
  }

  /** R R L in a set of 9 gives 6 and 3; R R L L in a set of 10 gives 6 and 4 (science section 1, worked). */
  @Test
  void theTwoSetsOfTheTradeAreUneven() {
    Sequence nine = Sequence.parse("RRL x3");
    assertThat(nine.count(Foot.RIGHT)).isEqualTo(6);
    assertThat(nine.count(Foot.LEFT)).isEqualTo(3);
    Sequence ten = Sequence.parse("RRLL RRLL RR");
    assertThat(ten.count(Foot.RIGHT)).isEqualTo(6);
    assertThat(ten.count(Foot.LEFT)).isEqualTo(4);
  }

  /** The taught order is common practice (science section 1). */
  @Test
  void theRoutineIsInTheTaughtOrder() {
    assertThat(Routine.values())
        .extracting(r -> r.sequence().letters())
        .containsExactly("RLRLRLRLRL", "RRRRRR", "LLLLLL", "RRLLRRLLRR", "RRLRRL");
    assertThat(Routine.RUNGS).containsExactly(0, 2, 4, 6, 8, 10, 12);
  }

  @Test
  void refusesTooFewAndTooMany() {
    assertThatThrownBy(() -> Sequence.of(List.of())).isInstanceOf(RefusedException.class).hasMessageContaining("has 0");
    assertThatThrownBy(() -> new Sequence(java.util.Collections.nCopies(61, Foot.LEFT), "L"))
        .isInstanceOf(RefusedException.class)
        .hasMessageContaining("has 61");
  }

  @Test
  void theFirstContactsOfASequence() {
    assertThat(Sequence.parse("RRL x3").first(4).letters()).isEqualTo("RRLR");
    assertThat(Sequence.parse("RRL x3").first(9)).isEqualTo(Sequence.parse("RRL x3"));
  }
}
