package boundwright.clip.real;

import static org.assertj.core.api.Assertions.assertThat;

import boundwright.clip.learn.Figures;
import boundwright.clip.learn.ScoreProbe;
import boundwright.footfall.Foot;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** The product's own count of right, missed and extra against the one that judges real films here: two writings of one rule. */
class ScoreAgreesTest {
  @Test
  void bothCountTheSameOnMadeUpContacts() {
    long seed = 11;
    Random random = new Random(seed);
    int faults = 0;
    for (int round = 0; round < 300; round++) {
      double fps = new double[] {30, 60, 120}[random.nextInt(3)];
      List<TruthFile.Known> known = new ArrayList<>();
      List<Matching.Found> found = new ArrayList<>();
      double at = 10;
      int n = 2 + random.nextInt(6);
      for (int k = 0; k < n; k++) {
        Foot foot = random.nextBoolean() ? Foot.LEFT : Foot.RIGHT;
        double down = at;
        double up = at + 0.15 * fps;
        at += (0.3 + 0.2 * random.nextDouble()) * fps;
        known.add(new TruthFile.Known(foot, down, up));
        if (random.nextDouble() < 0.9) {
          double off = 0.03 * fps * random.nextGaussian();
          found.add(new Matching.Found(random.nextDouble() < 0.9 ? foot : foot.other(), down + off, up + off, false));
        }
        if (random.nextDouble() < 0.1) {
          found.add(new Matching.Found(foot.other(), up + 0.1 * fps, up + 0.15 * fps, false));
        }
      }
      TruthFile truth = new TruthFile(1, false, null, known, Double.NaN, List.of());
      Matching.Result expected = Matching.of(truth, found, 1 / fps);
      Figures got =
          ScoreProbe.of(
              fps, at, known.stream().map(c -> new ScoreProbe.C(c.foot(), c.down() / fps, c.up() / fps)).toList(),
              found.stream().map(c -> new ScoreProbe.C(c.foot(), c.down() / fps, c.up() / fps)).toList());
      faults += got.faults();
      assertThat(List.of(got.known(), got.right(), got.off(), got.wrongFoot(), got.missed(), got.extra()))
          .as("round %d, seed %d", round, seed)
          .containsExactly(expected.known(), expected.right(), expected.off(), expected.wrongFoot(), expected.missed(), expected.extra());
    }
    assertThat(faults).as("the rounds have faults to count").isGreaterThan(200);
  }
}
