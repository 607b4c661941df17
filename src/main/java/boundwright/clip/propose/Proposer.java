package boundwright.clip.propose;

import boundwright.clip.track.Track;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Asks the network about a clip. The network looks at 40 samples a step, so the step's period is sought first: by trying
 * the one at which the legs repeat, else several, and taking the one that its own answer agrees with best. The answer is the
 * mean over two periods beside it.
 */
public final class Proposer {
  /** The shortest step tried [s], and the least frames of one. */
  private static final double SHORTEST_S = 0.2;
  private static final double FEWEST_FRAMES = 4;
  /** Ratio of one period tried to the next; the network bears errors of a third. */
  private static final double NEXT = 1.5;
  /** The answer's steps may differ by so much from those asked with, as a log, before it counts as one doubt. */
  private static final double OFF = 0.35;
  /** Periods beside the best over which the answer is averaged. */
  private static final double[] BESIDE = {0.9, 1.12};
  /** So small a doubt about the first guess needs no other (own output). */
  private static final double GOOD = 2;
  /** Fewer samples than this say nothing. */
  private static final int FEWEST_SAMPLES = 12;

  private static final Proposer SHIPPED = new Proposer(ContactNet.shipped(), "");

  private final ContactNet net;
  private final String said;

  /**
   * Asks a network.
   *
   * @param said a sentence for the coach about its weights, or empty for those of the program
   */
  public Proposer(ContactNet net, String said) {
    this.net = net;
    this.said = said;
  }

  /** Asks the network as shipped. */
  public static Proposer shipped() {
    return SHIPPED;
  }

  /** What is to be said of the weights, or empty. */
  public String said() {
    return said;
  }

  /** What the network says; null where too little of a body was seen. */
  public @Nullable Proposal propose(Track track) {
    int[] range = StepSamples.range(track);
    double span = track.time(range[1]) - track.time(range[0]);
    if (range[1] - range[0] < 2 * FEWEST_FRAMES) {
      return null;
    }
    double period = period(track, span);
    double[][] sum = new double[3][track.frames()];
    for (double by : BESIDE) {
      StepSamples samples = StepSamples.of(track, period * by);
      float[][] odds = net.logOdds(samples);
      for (int k = 0; k < 3; k++) {
        for (int i = 0; i < track.frames(); i++) {
          sum[k][i] += at(samples, odds[k], track.time(i)) / BESIDE.length;
        }
      }
    }
    double worth = track.medianStep() / (period / StepSamples.PER_STEP) / Proposal.SAMPLES_A_LOOK;
    return new Proposal(sum[0], sum[1], sum[2], period, worth);
  }

  /** The step period that the network's own answer agrees with best [s]. */
  private double period(Track track, double span) {
    double guess = StepPeriod.of(track);
    if (!Double.isNaN(guess)) {
      Answer a = answer(track, guess);
      if (a.cost < GOOD) {
        return Math.sqrt(guess * a.period);
      }
    }
    double best = Math.max(SHORTEST_S, FEWEST_FRAMES * track.medianStep());
    double least = Double.POSITIVE_INFINITY;
    for (double p = best; p < 0.9 * span; p *= NEXT) {
      Answer a = answer(track, p);
      if (a.cost < least) {
        least = a.cost;
        best = a.period;
      }
    }
    Answer again = answer(track, best);
    return Double.isInfinite(again.cost) ? best : Math.sqrt(best * again.period);
  }

  private record Answer(double period, double cost) {}

  private Answer answer(Track track, double period) {
    StepSamples samples = StepSamples.of(track, period);
    if (samples.size() < FEWEST_SAMPLES) {
      return new Answer(period, Double.POSITIVE_INFINITY);
    }
    float[][] odds = net.pass(StepFeatures.of(samples));
    List<Integer> down = new ArrayList<>();
    double doubt = 0;
    for (int k = 0; k < 2; k++) {
      for (int i = 0; i < samples.size(); i++) {
        doubt += 1 / (1 + Math.exp(Math.abs(odds[k][i]))) / (2.0 * samples.size());
        if (i > 0 && odds[k][i] > 0 && odds[k][i - 1] <= 0) {
          down.add(i);
        }
      }
    }
    down.sort(null);
    double[] gaps = new double[Math.max(0, down.size() - 1)];
    Arrays.setAll(gaps, i -> down.get(i + 1) - down.get(i));
    gaps = Arrays.stream(gaps).filter(g -> g > StepSamples.PER_STEP / 8.0).sorted().toArray();
    if (gaps.length == 0) {
      return new Answer(period, 10 + doubt);
    }
    double found = period * gaps[gaps.length / 2] / StepSamples.PER_STEP;
    double off = Math.log(found / period) / OFF;
    return new Answer(Math.max(period / NEXT, Math.min(period * NEXT, found)), off * off + 20 * doubt);
  }

  private static double at(StepSamples s, float[] odds, double time) {
    double step = s.size() < 2 ? 1 : s.times()[1] - s.times()[0];
    double u = (time - s.times()[0]) / step;
    if (u < -1 || u > s.size()) {
      return -6; // nobody in the picture stands on nothing
    }
    int i = (int) Math.max(0, Math.min(s.size() - 2.0, Math.floor(u)));
    double w = Math.max(0, Math.min(1, u - i));
    return s.size() < 2 ? odds[0] : (1 - w) * odds[i] + w * odds[i + 1];
  }
}
