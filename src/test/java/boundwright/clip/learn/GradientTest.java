package boundwright.clip.learn;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import boundwright.clip.propose.ContactNet;
import boundwright.clip.propose.StepFeatures;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Objects;
import java.util.Random;
import org.junit.jupiter.api.Test;

/**
 * The backward pass and the steps, against the training framework's own in double precision ({@code training/contacts/further.py} wrote
 * {@code learn-step.txt}; own output of a reference library), and against differences of the loss.
 */
class GradientTest {
  private static final int SAMPLES = 70;

  /** The inputs of {@code further.py}, by its formulas. */
  private static float[][] input() {
    float[][] x = new float[StepFeatures.COUNT][SAMPLES];
    for (int c = 0; c < x.length; c++) {
      for (int i = 0; i < SAMPLES; i++) {
        x[c][i] = (float) (1.2 * Math.sin(0.37 * c + 0.11 * i + 0.013 * c * i));
      }
    }
    return x;
  }

  private static float[][] goal() {
    float[][] goal = new float[3][SAMPLES];
    for (int k = 0; k < 3; k++) {
      for (int i = 0; i < SAMPLES; i++) {
        goal[k][i] = (float) (0.5 + 0.5 * Math.sin(0.2 * i + k));
      }
    }
    return goal;
  }

  private static float[] worth() {
    float[] out = new float[SAMPLES];
    for (int i = 0; i < SAMPLES; i++) {
      out[i] = (float) (0.5 + 0.5 * Math.cos(0.05 * i));
    }
    return out;
  }

  private static float[] legs() {
    float[] out = new float[SAMPLES];
    for (int i = 0; i < SAMPLES; i++) {
      out[i] = i % 3 > 0 ? 1 : 0;
    }
    return out;
  }

  private static double[] numbers(String line, int from) {
    String[] words = line.split(" ");
    double[] out = new double[words.length - from];
    for (int i = 0; i < out.length; i++) {
      out[i] = Double.parseDouble(words[from + i]);
    }
    return out;
  }

  /** Sum, sum of sizes, and three of the numbers. */
  private static double[] digest(float[] a) {
    double sum = 0;
    double size = 0;
    for (float v : a) {
      sum += v;
      size += Math.abs(v);
    }
    return new double[] {sum, size, a[0], a[a.length / 3], a[a.length - 1]};
  }

  @Test
  void threeStepsAreTheFrameworks() throws IOException {
    List<String> lines;
    try (InputStream in = Objects.requireNonNull(GradientTest.class.getResourceAsStream("/clip/learn-step.txt"))) {
      lines = new String(in.readAllBytes(), StandardCharsets.UTF_8).lines().toList();
    }
    float[][] begin = ContactNet.shipped().arrays();
    float[][] weights = ContactNet.shipped().arrays();
    Gradient net = new Gradient(weights);
    Adam adam = new Adam(weights, begin, 0.5);
    int at = 0;
    assertThat(lines.get(at++)).isEqualTo("recipe " + ContactNet.RECIPE);
    double[] logits = numbers(lines.get(at++), 1);
    for (int turn = 0; turn < 3; turn++) {
      float[][] odds = net.forward(input());
      float[][] slope = new float[3][SAMPLES];
      double loss = Lesson.loss(odds, goal(), worth(), legs(), slope);
      float[][] gradient = Adam.like(weights);
      net.backward(slope, gradient);
      if (turn == 0) {
        for (int k = 0; k < 12; k++) {
          assertThat((double) odds[k / 4][k % 4 * 23]).isCloseTo(logits[k], within(1e-4));
        }
        for (int a = 0; a < weights.length; a++) {
          double[] expected = numbers(lines.get(at++), 2);
          double[] got = digest(gradient[a]);
          double size = expected[1] / weights[a].length;
          for (int v = 0; v < 5; v++) {
            double tolerance = v < 2 ? 2e-4 * expected[1] : 2e-3 * Math.max(size, Math.abs(expected[v]));
            assertThat(got[v]).as("array %d, number %d", a, v).isCloseTo(expected[v], within(tolerance));
          }
        }
      }
      String[] said = lines.get(at++).split(" ");
      assertThat(loss).isCloseTo(Double.parseDouble(said[1]), within(1e-4));
      assertThat(Adam.length(gradient)).isCloseTo(Double.parseDouble(said[3]), within(1e-3 * Double.parseDouble(said[3])));
      adam.step(gradient, 1e-3);
    }
    for (int a = 0; a < weights.length; a++) {
      double[] expected = numbers(lines.get(at++), 2);
      float[] moved = new float[weights[a].length];
      for (int i = 0; i < moved.length; i++) {
        moved[i] = weights[a][i] - begin[a][i];
      }
      double[] got = digest(moved);
      // a gradient of nearly 0 may turn its sign in single precision, and Adam then walks the other way
      assertThat(got[0]).as("array %d, sum", a).isCloseTo(expected[0], within(0.02 * expected[1] + 2e-3));
      assertThat(got[1]).as("array %d, size", a).isCloseTo(expected[1], within(0.02 * expected[1]));
    }
    assertThat(at).isEqualTo(lines.size());
  }

  /** One weight, the same slope of 1 twice: each step of Adam is then the rate, and the second is pulled back by rate x pull of the way (worked). */
  @Test
  void theWeightsArePulledBackToWhereTheyBegan() {
    float[][] weight = {{3}};
    Adam adam = new Adam(weight, new float[][] {{3}}, 2);
    adam.step(new float[][] {{1}}, 0.1);
    assertThat((double) weight[0][0]).isCloseTo(2.9, within(1e-5));
    adam.step(new float[][] {{1}}, 0.1);
    assertThat((double) weight[0][0]).isCloseTo(2.9 - 0.1 + 0.1 * 2 * 0.1, within(1e-5));
  }

  /** Along random directions in every array: a wrong slope anywhere in an array shows. */
  @Test
  void theSlopeIsWhatSmallStepsOfTheLossAre() {
    long seed = 20261129;
    Random random = new Random(seed);
    float[][] weights = ContactNet.shipped().arrays();
    Gradient net = new Gradient(weights);
    float[][] slope = new float[3][SAMPLES];
    Lesson.loss(net.forward(input()), goal(), worth(), legs(), slope);
    float[][] gradient = Adam.like(weights);
    net.backward(slope, gradient);
    for (int a = 0; a < weights.length; a++) {
      double along = 0;
      double norm = Adam.length(new float[][] {gradient[a]});
      float[] way = new float[weights[a].length];
      for (int i = 0; i < way.length; i++) {
        // half along the gradient, so that the difference is not lost in rounding, half anywhere
        way[i] = (float) (gradient[a][i] / norm + random.nextGaussian() / Math.sqrt(way.length));
        along += (double) way[i] * gradient[a][i];
      }
      double step = Math.min(2e-3, 2e-3 / norm);
      double difference = (lossAt(net, weights, a, way, step) - lossAt(net, weights, a, way, -step)) / (2 * step);
      assertThat(difference).as("array %d, seed %d", a, seed).isCloseTo(along, within(0.02 * norm));
    }
  }

  private static double lossAt(Gradient net, float[][] weights, int a, float[] way, double step) {
    float[] kept = weights[a].clone();
    for (int i = 0; i < way.length; i++) {
      weights[a][i] += (float) (step * way[i]);
    }
    double loss = Lesson.loss(net.forward(input()), goal(), worth(), legs(), null);
    System.arraycopy(kept, 0, weights[a], 0, kept.length);
    return loss;
  }
}
