package boundwright.season.conflict;

import static org.assertj.core.api.Assertions.assertThat;

import boundwright.season.Away;
import boundwright.season.Done;
import boundwright.season.MadeUpSeason;
import boundwright.season.Meet;
import boundwright.season.Member;
import boundwright.season.SeasonInput;
import boundwright.season.Span;
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
    for (int round = 0; round < 80; round++) {
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
    for (int round = 0; round < 60; round++) {
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

  private static Verdict find(SeasonInput input, Set<Insisted> insisted) {
    return new Conflicts(input, MadeUpSeason.climbs(input, 4), Done.nothing(input), insisted).find();
  }

  @Test
  void aMeetOnAHeldDayClashesWithTheHoldAndNothingElse() {
    SeasonInput input = MadeUpSeason.of(2, 6, 4);
    Meet last = input.meets().get(input.meets().size() - 1);
    Away held = new Away(new Span(last.date().minusDays(3), last.date()), Away.Why.HELD);
    assertThat(find(MadeUpSeason.with(input, 0, List.of()), Set.of()).clashes()).noneMatch(c -> c.parts().stream().anyMatch(p -> p.said().equals("held")));
    Verdict found = find(MadeUpSeason.with(input, 0, List.of(held)), Set.of());
    assertThat(found.clashes())
        .anySatisfy(c -> {
          assertThat(c.unproven()).isZero();
          assertThat(c.parts()).extracting(Clash.Part::said).containsExactly("jumps at " + last.name(), "held");
          assertThat(c.parts().get(1).wayOut()).startsWith("none: a hold stands");
        });
  }

  @Test
  void whereNothingClashesAPlanOfAllIsFound() {
    SeasonInput made = MadeUpSeason.of(2, 6, 4);
    SeasonInput input = MadeUpSeason.with(MadeUpSeason.with(made, 0, List.of()), 1, List.of());
    input = new SeasonInput(input.name(), input.first(), input.last(), input.periods(), List.of(), input.venues(), input.squad().stream().map(ConflictsTest::atNoMeet).toList(), input.rules());
    Verdict found = find(input, Set.of(Insisted.WISHES));
    assertThat(found.clashes()).isEmpty();
    assertThat(found.undecided()).isEmpty();
    assertThat(found.together()).isTrue();
  }

  private static Member atNoMeet(Member m) {
    return new Member(
        m.athlete(), m.growing(), m.firstSession(), m.steps(), m.fullSteps(), m.days(), m.peakWeek(), m.joins(), m.away(), List.of(), m.wishes(), m.past());
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
