package boundwright.season.conflict;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;

/**
 * Outside check of the exact search: every choice of every day tried, with the rules of {@code season.year} (worked). QuickXplain is
 * Junker 2004, AAAI (memory, high).
 */
class ConflictsTest {
  private static final long SEED = 20261129;

  @Test
  void theSearchSaysWhatTryingEveryChoiceSays() {
    Random random = new Random(SEED);
    int[] seen = new int[2];
    for (int round = 0; round < 120; round++) {
      TinySeason tiny = new TinySeason(SEED + round);
      Feasibility check = new Feasibility(tiny.input, tiny.field, 1_000_000);
      List<Demand> some = new ArrayList<>(tiny.demands);
      int keep = 30 + random.nextInt(71);
      some.removeIf(d -> random.nextInt(100) >= keep);
      Feasibility.Found found = check.search(some);
      boolean feasible = tiny.feasible(some);
      assertThat(found.answer()).as("seed %d", SEED + round).isEqualTo(feasible ? Answer.FEASIBLE : Answer.INFEASIBLE);
      if (feasible) {
        assertThat(tiny.kept(tiny.lines(found.choices()), some)).as("what was found, seed %d", SEED + round).isTrue();
      }
      seen[feasible ? 1 : 0]++;
    }
    assertThat(seen[0]).as("infeasible cases").isGreaterThan(20);
    assertThat(seen[1]).as("feasible cases").isGreaterThan(20);
  }

  @Test
  void noMemberOfAClashIsThereInVain() {
    int clashes = 0;
    Set<Demand.Kind> kinds = EnumSet.noneOf(Demand.Kind.class);
    for (int round = 0; round < 100; round++) {
      TinySeason tiny = new TinySeason(SEED + 1000 + round);
      Feasibility check = new Feasibility(tiny.input, tiny.field, 1_000_000);
      if (check.of(tiny.demands) != Answer.INFEASIBLE) {
        continue;
      }
      clashes++;
      Irreducible.Core<Demand> core = new Irreducible<>(check).of(tiny.demands);
      assertThat(core.unproven()).isZero();
      assertThat(tiny.feasible(core.members())).as("seed %d: %s", SEED + 1000 + round, core).isFalse();
      for (Demand d : core.members()) {
        List<Demand> rest = new ArrayList<>(core.members());
        rest.remove(d);
        assertThat(check.of(rest)).as("seed %d without %s", SEED + 1000 + round, d).isEqualTo(Answer.FEASIBLE);
        assertThat(tiny.feasible(rest)).as("seed %d without %s, by trying", SEED + 1000 + round, d).isTrue();
        kinds.add(d.kind());
      }
    }
    assertThat(clashes).isGreaterThan(20);
    assertThat(kinds).as("kinds of members met").containsExactlyInAnyOrder(Demand.Kind.values());
  }

  @Test
  void anUndecidedCheckIsNeverReadAsFeasible() {
    // 1 clashes with 2; without 2 nothing is ever decided
    Check<Integer> check = of -> of.contains(1) && of.contains(2) ? Answer.INFEASIBLE : of.contains(2) ? Answer.FEASIBLE : Answer.UNDECIDED;
    Irreducible.Core<Integer> core = new Irreducible<>(check).of(List.of(1, 2, 3, 4));
    assertThat(core.members()).containsExactlyInAnyOrder(1, 2);
    assertThat(core.unproven()).as("2 may not be needed").isEqualTo(1);
  }
}
