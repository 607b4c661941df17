package boundwright.clip.propose;

import java.util.Arrays;

/**
 * What the network proposes for every frame of a clip. Log-odds; neighbouring frames say nearly the same, see {@link #worth}.
 *
 * @param left that the left foot stands
 * @param right that the right foot stands
 * @param exchanged that the legs are exchanged in the points as found
 * @param period of a step, touchdown to touchdown, as the network sees it [s of the film]
 * @param worth how many looks of their own a frame is worth; 40 samples a step are about 10
 */
@SuppressWarnings("ArrayRecordComponent") // one number a frame, never compared
public record Proposal(double[] left, double[] right, double[] exchanged, double period, double worth) {
  /** Samples a look of its own takes (own output: errors of the network last about a tenth of a step). */
  static final double SAMPLES_A_LOOK = 4;

  /** Log-odds of what a hand said: a chance of exactly 1. */
  private static final double BY_HAND = 80;

  /** The log-odds that the legs are exchanged, each frame weighed by its worth. */
  public double[] exchangedWeighed() {
    return Arrays.stream(exchanged).map(v -> v * worth).toArray();
  }

  /** The same where a hand exchanged the legs in some frames; a hand is sure. */
  public Proposal turnedByHand(boolean[] frames) {
    double[] l = left.clone();
    double[] r = right.clone();
    for (int i = 0; i < frames.length; i++) {
      if (frames[i]) {
        l[i] = Math.signum(right[i]) * BY_HAND;
        r[i] = Math.signum(left[i]) * BY_HAND;
      }
    }
    return new Proposal(l, r, exchanged, period, worth);
  }

  /** How sure the network is of the whole clip: 1 where every foot in every frame is certain, 0 where nothing is known. */
  public double certain() {
    double doubt = 0;
    for (int i = 0; i < left.length; i++) {
      doubt += chance(-Math.abs(left[i])) + chance(-Math.abs(right[i]));
    }
    return 1 - doubt / left.length;
  }

  /** The chance for log-odds. */
  public static double chance(double logOdds) {
    return 1 / (1 + Math.exp(-logOdds));
  }
}
