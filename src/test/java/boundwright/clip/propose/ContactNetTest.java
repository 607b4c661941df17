package boundwright.clip.propose;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Objects;
import org.junit.jupiter.api.Test;

/**
 * The network in plain Java against the training framework's own answer for one clip that was set aside. Standing: own
 * output of {@code training/contacts/train.py}; it shows that both work out the same, not that it is right.
 */
class ContactNetTest {
  @Test
  void answersAsTheTrainingFrameworkDid() throws IOException {
    List<String> lines;
    try (InputStream in = Objects.requireNonNull(ContactNetTest.class.getResourceAsStream("/clip/contacts-example.txt"))) {
      lines = new String(in.readAllBytes(), StandardCharsets.UTF_8).lines().toList();
    }
    int n = lines.size() - 1;
    float[][] points = new float[n][StepSamples.WIDTH];
    double[] times = new double[n];
    float[][] expected = new float[3][n];
    for (int i = 0; i < n; i++) {
      String[] words = lines.get(i + 1).split(" ");
      for (int k = 0; k < StepSamples.WIDTH; k++) {
        points[i][k] = Float.parseFloat(words[k]);
      }
      for (int k = 0; k < 3; k++) {
        expected[k][i] = Float.parseFloat(words[StepSamples.WIDTH + k]);
      }
      times[i] = i;
    }
    float[][] got = ContactNet.shipped().raw(new StepSamples(times, points, Double.parseDouble(lines.get(0))));
    double most = 0;
    for (int k = 0; k < 3; k++) {
      for (int i = 0; i < n; i++) {
        most = Math.max(most, Math.abs(got[k][i] - expected[k][i]));
      }
    }
    assertThat(most).as("largest difference of log-odds").isLessThan(0.01);
    assertThat(n).isGreaterThanOrEqualTo(40);
  }
}
