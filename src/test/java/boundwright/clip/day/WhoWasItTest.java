package boundwright.clip.day;

import static org.assertj.core.api.Assertions.assertThat;

import boundwright.clip.day.WhoWasIt.Known;
import boundwright.clip.session.Clothes;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/** Who it may have been: from the tap, the clothes of those who were named, and the turn. */
class WhoWasItTest {
  private static final List<Long> ORDER = List.of(11L, 12L, 13L, 14L);

  private static Clothes worn(int shirt, Random random) {
    double[] share = new double[Clothes.BINS];
    share[shirt] = 0.8 + 0.1 * random.nextDouble();
    share[(shirt + 1) % 12] = 1 - share[shirt];
    share[16 + 12] = 1;
    return Clothes.of(share);
  }

  private static Known known(Clothes clothes, @Nullable Long named) {
    return new Known(clothes, named, null, 0);
  }

  @Test
  void clothesOfThoseWhoWereNamedOutweighTheTurn() {
    Random random = new Random(1);
    List<Known> reps = new ArrayList<>();
    for (int i = 0; i < 4; i++) {
      reps.add(known(worn(2 * i, random), ORDER.get(i)));
    }
    // the second one jumps the queue
    reps.add(known(worn(2, random), null));
    List<WhoWasIt.Proposal> p = WhoWasIt.of(reps, 4, ORDER, 3);
    assertThat(p.get(0).athleteId()).isEqualTo(12L);
    assertThat(p.get(0).sure()).isGreaterThan(0.6);
  }

  @Test
  void withoutClothesTheTurnIsProposedAndNotCalledSure() {
    List<Known> reps = List.of(known(Clothes.UNKNOWN, 12L), known(Clothes.UNKNOWN, null));
    List<WhoWasIt.Proposal> p = WhoWasIt.of(reps, 1, ORDER, 3);
    assertThat(p.get(0).athleteId()).isEqualTo(13L);
    assertThat(p.get(0).sure()).isBetween(0.4, 0.8);
  }

  @Test
  void aSureTapSettlesIt() {
    List<Known> reps = List.of(known(Clothes.UNKNOWN, 12L), new Known(Clothes.UNKNOWN, null, 11L, 0.95));
    List<WhoWasIt.Proposal> p = WhoWasIt.of(reps, 1, ORDER, 3);
    assertThat(p.get(0).athleteId()).isEqualTo(11L);
    assertThat(p.get(0).sure()).isGreaterThan(0.85);
  }

  @Test
  void nothingIsCertain() {
    for (int seed = 0; seed < 50; seed++) {
      Random random = new Random(seed);
      List<Known> reps = new ArrayList<>();
      for (int i = 0; i < 9; i++) {
        reps.add(new Known(worn(random.nextInt(8), random), random.nextBoolean() ? ORDER.get(random.nextInt(4)) : null, null, 0));
      }
      double sum = WhoWasIt.of(reps, random.nextInt(9), ORDER, 9).stream().mapToDouble(WhoWasIt.Proposal::sure).sum();
      assertThat(sum).as("seed %d", seed).isLessThan(1);
    }
  }
}
