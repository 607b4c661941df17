package boundwright.footfall;

import static org.assertj.core.api.Assertions.assertThat;

import boundwright.footfall.LegBalance.Proposal;
import boundwright.footfall.LegBalance.ProposedSet;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** The proposal against all 2^n ways to mirror n sets, tried one by one; and the examples of science section 1. */
class LegBalanceTest {
  private static final long SEED = 19950807L;

  /** What the slow model looks for: legs closest, then fewest mirrored, then the latest mirrored. */
  private record Way(int apart, int mirrored, int earliness) {}

  private static Way best(List<Sequence> sets) {
    int n = sets.size();
    Way best = new Way(Integer.MAX_VALUE, 0, 0);
    for (int mask = 0; mask < 1 << n; mask++) {
      best = better(best, way(sets, mask));
    }
    return best;
  }

  private static Way way(List<Sequence> sets, int mask) {
    int surplus = 0;
    int early = 0;
    for (int k = 0; k < sets.size(); k++) {
      boolean turn = (mask >> k & 1) == 1;
      surplus += turn ? -sets.get(k).surplusRight() : sets.get(k).surplusRight();
      early += turn ? sets.size() - k : 0;
    }
    return new Way(Math.abs(surplus), Integer.bitCount(mask), early);
  }

  private static Way better(Way a, Way b) {
    if (a.apart != b.apart) {
      return a.apart < b.apart ? a : b;
    }
    if (a.mirrored != b.mirrored) {
      return a.mirrored < b.mirrored ? a : b;
    }
    return a.earliness <= b.earliness ? a : b;
  }

  private static Way wayOf(Proposal proposal) {
    int early = 0;
    int mirrored = 0;
    for (int k = 0; k < proposal.sets().size(); k++) {
      if (proposal.sets().get(k).mirrored()) {
        mirrored++;
        early += proposal.sets().size() - k;
      }
    }
    return new Way(proposal.apart(), mirrored, early);
  }

  private static List<Sequence> randomSets(Random random, int most) {
    int n = random.nextInt(most + 1);
    List<Sequence> sets = new ArrayList<>();
    for (int i = 0; i < n; i++) {
      sets.add(SequenceTest.random(random, 12));
    }
    return sets;
  }

  @Test
  void asGoodAsEveryWayTried() {
    Random random = new Random(SEED);
    for (int i = 0; i < 300; i++) {
      List<Sequence> sets = randomSets(random, 10);
      assertThat(wayOf(LegBalance.propose(sets)))
          .as("seed %d, round %d, sets %s", SEED, i, sets.stream().map(Sequence::letters).toList())
          .isEqualTo(best(sets));
    }
  }

  @Test
  void neverWorseThanAsWrittenAndEverySetIsKept() {
    Random random = new Random(SEED);
    for (int i = 0; i < 300; i++) {
      List<Sequence> sets = randomSets(random, 40);
      Proposal proposal = LegBalance.propose(sets);
      String as = "seed " + SEED + ", round " + i;
      assertThat(proposal.apart()).as(as).isLessThanOrEqualTo(
          Math.abs(sets.stream().mapToInt(Sequence::surplusRight).sum()));
      assertThat(proposal.right() + proposal.left()).as(as).isEqualTo(sets.stream().mapToInt(Sequence::size).sum());
      for (int k = 0; k < sets.size(); k++) {
        ProposedSet set = proposal.sets().get(k);
        assertThat(set.mirrored() ? set.sequence().mirrored() : set.sequence()).as(as).isEqualTo(sets.get(k));
      }
      assertThat(proposal.right()).as(as).isEqualTo(
          proposal.sets().stream().mapToInt(s -> s.sequence().count(Foot.RIGHT)).sum());
    }
  }

  /** R R L x3 is 6 and 3, so the next set starts on the other foot (science section 1, worked). */
  @Test
  void theSecondSetOfRightRightLeftIsMirrored() {
    Sequence nine = Sequence.parse("RRL x3");
    Proposal two = LegBalance.propose(List.of(nine, nine));
    assertThat(two.sets()).extracting(ProposedSet::mirrored).containsExactly(false, true);
    assertThat(two.sets().get(1).sequence()).isEqualTo(Sequence.parse("LLR x3"));
    assertThat(two.right()).isEqualTo(9);
    assertThat(two.left()).isEqualTo(9);
  }

  /** R R L L in a set of 10 is 6 and 4 (science section 1, worked). */
  @Test
  void anOddNumberOfSetsStaysOneSetApart() {
    Sequence ten = Sequence.parse("RRLL RRLL RR");
    Proposal three = LegBalance.propose(Collections.nCopies(3, ten));
    assertThat(three.sets()).extracting(ProposedSet::mirrored).containsExactly(false, false, true);
    assertThat(three.right()).isEqualTo(16);
    assertThat(three.left()).isEqualTo(14);
  }

  @Test
  void evenSetsAreLeftAsWritten() {
    assertThat(LegBalance.propose(Collections.nCopies(5, Sequence.parse("RL x5"))).sets())
        .noneMatch(ProposedSet::mirrored);
    assertThat(LegBalance.propose(List.of()).sets()).isEmpty();
    assertThat(LegBalance.propose(List.of(Sequence.parse("R x6"))).sets()).noneMatch(ProposedSet::mirrored);
  }

  /** The most that is promised: 200 sets of the longest one-legged sequence. */
  @Test
  void twoHundredOneLeggedSetsComeOutLevel() {
    Proposal all = LegBalance.propose(Collections.nCopies(200, Sequence.parse("R x60")));
    assertThat(all.apart()).isZero();
    assertThat(all.sets().subList(0, 100)).noneMatch(ProposedSet::mirrored);
    assertThat(all.sets().subList(100, 200)).allMatch(ProposedSet::mirrored);
  }
}
