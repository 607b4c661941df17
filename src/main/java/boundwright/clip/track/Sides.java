package boundwright.clip.track;

import boundwright.clip.signal.Step3;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * Which limb is the right one, decided once for the whole clip.
 *
 * <p>The finder exchanges left and right in clumps where the limbs pass each other. The difference d between the two
 * limbs' points moves smoothly; an exchange turns its sign. So the clip is a chain of hidden signs under a smooth motion,
 * and the best chain is sought over all frames at once: Viterbi search with a Kalman filter of d carried along every
 * surviving chain (per-survivor processing), survivors told apart by their last {@value #MEMORY} signs. Moving with a
 * steady jerk is cheap, switching costs, and being exchanged costs a little in every frame, because the finder is right
 * more often than wrong.
 */
@SuppressWarnings("ArrayRecordComponent") // numbers on their way between neighbours, never compared
public final class Sides {
  /** Joints that are exchanged together. */
  private static final List<Joint> LEG = List.of(Joint.HIP, Joint.KNEE, Joint.ANKLE, Joint.HEEL, Joint.TOE);
  private static final List<Joint> ARM =
      List.of(Joint.SHOULDER, Joint.ELBOW, Joint.WRIST, Joint.PINKY, Joint.INDEX, Joint.THUMB);
  /** Joints whose difference tells the sides apart. */
  private static final List<Joint> LEG_TELLS = List.of(Joint.KNEE, Joint.ANKLE, Joint.HEEL, Joint.TOE);
  private static final List<Joint> ARM_TELLS = List.of(Joint.ELBOW, Joint.WRIST);
  private static final int MEMORY = 6;
  private static final int SURVIVORS = 48;
  /** Standard deviation of a difference of two points [m]; judgement, about the size seen in practice. */
  private static final double SIGMA_M = 0.03;
  /** Equivalent cut-off of the motion of a difference [Hz]. */
  private static final double CUT_OFF = 7;
  /** A sample costs at most this much: beyond it is taken as wild. */
  private static final double WORST = 8;
  /** Mean length of a clump of exchanged frames and the time between two [s]; 10 % exchanged (known weakness, read). */
  private static final double CLUMP_S = 0.04;
  private static final double BETWEEN_S = 0.36;

  private Sides() {}

  /**
   * The track with sides put right.
   *
   * @param track the athlete
   * @param legsExchanged frames in which the legs were exchanged
   * @param armsExchanged frames in which the arms were exchanged
   * @param legMargin by how much the chosen chain beats the best one that differs in the frame, in log-likelihood;
   *     large is sure, at most what the surviving chains could tell
   */
  public record Resolved(Track track, boolean[] legsExchanged, boolean[] armsExchanged, double[] legMargin) {}

  /** Puts the sides right. The unit of the track is free; the size of the body is measured first. */
  public static Resolved resolve(Track track) {
    double unit = BodySize.perMetre(track);
    Chain legs = new Chain(track, LEG_TELLS, SIGMA_M * unit);
    boolean[] swapLegs = legs.best();
    boolean[] swapArms = new Chain(track, ARM_TELLS, SIGMA_M * unit).best();
    Track.Builder out = track.edit();
    for (int i = 0; i < track.frames(); i++) {
      int frame = i;
      if (swapLegs[i]) {
        LEG.forEach(j -> out.exchange(j, frame));
      }
      if (swapArms[i]) {
        ARM.forEach(j -> out.exchange(j, frame));
      }
    }
    return new Resolved(out.build(), swapLegs, swapArms, legs.margin());
  }

  /** One survivor: the motion under a chain of signs, and the chain itself as a list linked backwards. */
  private record Survivor(double cost, int recent, double[][] state, boolean exchanged, Survivor[] before) {}

  private static final class Chain {
    private final Track track;
    private final double sigma;
    private final double[][] difference;
    private final double stay;
    private final double leave;
    private final double remain;
    private final double comeBack;
    private final double each;
    private final double[] margin;

    Chain(Track track, List<Joint> joints, double sigma) {
      this.track = track;
      this.sigma = sigma;
      difference = new double[2 * joints.size()][];
      for (int j = 0; j < joints.size(); j++) {
        BodyPoint l = BodyPoint.of(joints.get(j), boundwright.footfall.Foot.LEFT);
        BodyPoint r = BodyPoint.of(joints.get(j), boundwright.footfall.Foot.RIGHT);
        difference[2 * j] = minus(track.xs(l), track.xs(r));
        difference[2 * j + 1] = minus(track.ys(l), track.ys(r));
      }
      double dt = track.medianStep();
      double out = 1 - Math.exp(-dt / BETWEEN_S);
      double in = 1 - Math.exp(-dt / CLUMP_S);
      stay = -Math.log(1 - out);
      leave = -Math.log(out);
      remain = -Math.log(1 - in);
      comeBack = -Math.log(in);
      each = 1.0 * Math.min(1, dt * 120);
      margin = new double[track.frames()];
    }

    private static double[] minus(double[] a, double[] b) {
      double[] out = new double[a.length];
      Arrays.setAll(out, i -> a[i] - b[i]);
      return out;
    }

    boolean[] best() {
      int n = track.frames();
      int k = difference.length;
      double dt0 = track.medianStep();
      double q = Math.pow(2 * Math.PI * CUT_OFF, 6) * sigma * sigma * dt0;
      double[][][] c = new double[k][][];
      Arrays.setAll(c, d -> wide());
      List<Survivor> alive = new ArrayList<>();
      alive.add(new Survivor(0, 0, new double[k][3], false, new Survivor[0]));
      for (int i = 0; i < n; i++) {
        double dt = i == 0 ? 0 : track.time(i) - track.time(i - 1);
        double[] s = new double[k];
        for (int d = 0; d < k; d++) {
          c[d] = Step3.grow(c[d], dt, q);
          s[d] = c[d][0][0] + sigma * sigma;
        }
        Map<Integer, Survivor> next = new HashMap<>();
        for (Survivor v : alive) {
          double[][] moved = new double[k][];
          Arrays.setAll(moved, d -> Step3.move(v.state[d], dt));
          for (boolean exchanged : new boolean[] {false, true}) {
            Survivor w = extend(v, moved, exchanged, i, c, s);
            next.merge(w.recent, w, (a, b) -> a.cost <= b.cost ? a : b);
          }
        }
        for (int d = 0; d < k; d++) {
          if (!Double.isNaN(difference[d][i])) {
            c[d] = Step3.shrink(c[d], s[d]);
          }
        }
        alive = next.values().stream().sorted(Comparator.comparingDouble(Survivor::cost)).limit(SURVIVORS).toList();
        markMargin(alive, i);
      }
      boolean[] out = new boolean[n];
      Survivor at = alive.get(0);
      for (int i = n - 1; i >= 0; i--) {
        out[i] = at.exchanged;
        at = at.before[0];
      }
      return out;
    }

    private Survivor extend(Survivor v, double[][] moved, boolean exchanged, int i, double[][][] c, double[] s) {
      double cost = v.cost + (exchanged ? each : 0);
      if (i > 0) {
        cost += v.exchanged ? (exchanged ? remain : comeBack) : (exchanged ? leave : stay);
      }
      double[][] state = new double[moved.length][];
      for (int d = 0; d < moved.length; d += 2) {
        state[d] = moved[d];
        state[d + 1] = moved[d + 1];
        double zx = difference[d][i];
        double zy = difference[d + 1][i];
        if (Double.isNaN(zx)) {
          continue;
        }
        double ex = (exchanged ? -zx : zx) - moved[d][0];
        double ey = (exchanged ? -zy : zy) - moved[d + 1][0];
        double off = 0.5 * (ex * ex / s[d] + ey * ey / s[d + 1]);
        if (off < WORST) {
          state[d] = Step3.pull(moved[d], c[d], ex / s[d]);
          state[d + 1] = Step3.pull(moved[d + 1], c[d + 1], ey / s[d + 1]);
        }
        cost += Math.min(off, WORST);
      }
      int recent = ((v.recent << 1) | (exchanged ? 1 : 0)) & ((1 << MEMORY) - 1);
      return new Survivor(cost, recent, state, exchanged, new Survivor[] {v});
    }

    /** How far the best survivor leads the best that has the other sign a few frames back. */
    private void markMargin(List<Survivor> alive, int frame) {
      int back = Math.min(MEMORY - 1, frame);
      int sign = (alive.get(0).recent >> back) & 1;
      double lead = Double.POSITIVE_INFINITY;
      for (Survivor v : alive) {
        if (((v.recent >> back) & 1) != sign) {
          lead = v.cost - alive.get(0).cost;
          break;
        }
      }
      margin[frame - back] = Double.isInfinite(lead) ? 50 : lead;
    }

    double[] margin() {
      return margin.clone();
    }

    private double[][] wide() {
      double w = 40 * sigma;
      return new double[][] {{w * w, 0, 0}, {0, 400 * w * w, 0}, {0, 0, 4e5 * w * w}};
    }
  }
}
