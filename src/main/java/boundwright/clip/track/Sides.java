package boundwright.clip.track;

import boundwright.clip.signal.Step3;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

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
  private static final int MEMORY = 9;
  private static final int SURVIVORS = 200;
  /** Standard deviation of a difference of two points [m]; judgement, about the size seen in practice. */
  private static final double SIGMA_M = 0.03;
  /** Equivalent cut-off of the motion of a difference [Hz]. */
  private static final double CUT_OFF = 7;
  /**
   * A sample costs at most this much; beyond it is taken as wild, and the motion is not pulled by it. About the log of
   * (2 m)^2 over 2 pi sigma^2, less the log of a chance of one in fifty to be wild.
   */
  private static final double WORST = 10;
  /** Mean length of a clump of exchanged frames and the time between two [s]; 10 % exchanged (known weakness, read). */
  private static final double CLUMP_S = 0.04;
  /** Margin that counts as certain. */
  private static final double SURE = 50;
  private static final double BETWEEN_S = 0.36;
  /**
   * What being exchanged costs, as a rate [1/s]: the finder is right more often than wrong (judgement; own output: with 240 long
   * exchanges were taken for the truth twice as often, with 100 more contacts of painted films went to the wrong foot).
   */
  private static final double EACH_PER_S = 160;
  /** Where the network is heard, so much of that is left (own output of made-up and painted clips). */
  private static final double HEARD = 0.5;
  /**
   * Samples closer together than this say nearly the same, because errors last over frames, so each counts for less of a
   * whole one [s] (judgement, tried on painted films).
   */
  private static final double LASTING_S = 0.005;
  /** The motion's uncertainty grows e-fold in this time of rejected samples, or a wrong turn would lock it out [s]. */
  private static final double OPENS_S = 0.02;

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
  public record Resolved(Track track, boolean[] legsExchanged, boolean[] armsExchanged, double[] legMargin) {
    /** Legs exchanged once more in the frames that are marked; how sure the sides are stays as it was. */
    public Resolved exchangedLegs(boolean[] frames) {
      Track.Builder out = track.edit();
      boolean[] legs = legsExchanged.clone();
      for (int i = 0; i < frames.length; i++) {
        int frame = i;
        if (frames[i]) {
          LEG.forEach(j -> out.exchange(j, frame));
          legs[i] = !legs[i];
        }
      }
      return new Resolved(out.build(), legs, armsExchanged, legMargin);
    }

    /** Legs exchanged once more in the frames from {@code from_s} to {@code to_s}, by a hand that is sure [s]. */
    public Resolved exchangedLegs(double from_s, double to_s) {
      Track.Builder out = track.edit();
      boolean[] legs = legsExchanged.clone();
      double[] margin = legMargin.clone();
      for (int i = 0; i < track.frames(); i++) {
        int frame = i;
        if (track.time(i) >= from_s && track.time(i) <= to_s) {
          LEG.forEach(j -> out.exchange(j, frame));
          legs[i] = !legs[i];
          margin[i] = SURE;
        }
      }
      return new Resolved(out.build(), legs, armsExchanged, margin);
    }
  }

  /** Puts the sides right. The unit of the track is free; the size of the body is measured first. */
  public static Resolved resolve(Track track) {
    return resolve(track, null);
  }

  /**
   * The same with what somebody else says of the legs.
   *
   * @param exchanged for each frame the log-odds that the legs are exchanged, weighed by how many looks of its own a frame is
   *     worth; null for nothing
   */
  public static Resolved resolve(Track track, double @Nullable [] exchanged) {
    double unit = BodySize.perMetre(track);
    Chain legs = new Chain(track, LEG_TELLS, SIGMA_M * unit);
    if (exchanged != null) {
      legs.hear(exchanged);
    }
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
  private record Survivor(double cost, int recent, double[][] state, double[][][] spread, boolean exchanged, Survivor[] before) {}

  private static final class Chain {
    private final Track track;
    private final double sigma;
    private final double[][] difference;
    private final double stay;
    private final double leave;
    private final double remain;
    private final double comeBack;
    private final double each;
    private final double look;
    private final double open;
    private final double[] margin;
    /** What being exchanged costs in each frame. */
    private final double[] cost;

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
      each = EACH_PER_S * dt;
      look = Math.min(1, dt / LASTING_S);
      open = Math.exp(dt / OPENS_S);
      margin = new double[track.frames()];
      cost = new double[track.frames()];
      Arrays.fill(cost, each);
    }

    void hear(double[] exchanged) {
      for (int i = 0; i < cost.length; i++) {
        cost[i] = HEARD * each - exchanged[i];
      }
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
      double[][][] c = new double[k / 2][][];
      double[][] unknown = wide();
      Arrays.fill(c, unknown);
      List<Survivor> alive = new ArrayList<>();
      alive.add(new Survivor(0, 0, new double[k][3], c, false, new Survivor[0]));
      for (int i = 0; i < n; i++) {
        double dt = i == 0 ? 0 : track.time(i) - track.time(i - 1);
        // many survivors took the same samples, so they share their spreads: each is worked out once
        IdentityHashMap<double[][], double[][]> grown = new IdentityHashMap<>();
        IdentityHashMap<double[][], double[][]> shrunk = new IdentityHashMap<>();
        Map<Integer, Survivor> next = new HashMap<>();
        for (Survivor v : alive) {
          double[][] moved = new double[k][];
          Arrays.setAll(moved, d -> Step3.move(v.state[d], dt));
          double[][][] spread = new double[k / 2][][];
          for (int j = 0; j < spread.length; j++) {
            spread[j] = grown.computeIfAbsent(v.spread[j], w -> Step3.grow(w, dt, q));
            if (spread[j][0][0] > unknown[0][0]) {
              // after a gap a limb may be anywhere within reach, but not beyond: begin anew
              spread[j] = unknown;
              moved[2 * j] = new double[3];
              moved[2 * j + 1] = new double[3];
            }
          }
          for (boolean exchanged : new boolean[] {false, true}) {
            Survivor w = extend(v, moved, exchanged, i, spread, shrunk);
            next.merge(w.recent, w, (x, y) -> x.cost <= y.cost ? x : y);
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

    private Survivor extend(
        Survivor v, double[][] moved, boolean exchanged, int i, double[][][] spread, IdentityHashMap<double[][], double[][]> shrunk) {
      double cost = v.cost + (exchanged ? this.cost[i] : 0);
      if (i > 0) {
        cost += v.exchanged ? (exchanged ? remain : comeBack) : (exchanged ? leave : stay);
      }
      double[][] state = moved.clone();
      double[][][] after = spread.clone();
      for (int j = 0; j < spread.length; j++) {
        double zx = difference[2 * j][i];
        double zy = difference[2 * j + 1][i];
        if (Double.isNaN(zx)) {
          continue;
        }
        double[][] c = spread[j];
        double s = c[0][0] + sigma * sigma;
        double ex = (exchanged ? -zx : zx) - moved[2 * j][0];
        double ey = (exchanged ? -zy : zy) - moved[2 * j + 1][0];
        // a wide spread must pay for being wide, or the survivor that took the fewest samples would win
        double off = 0.5 * (ex * ex + ey * ey) / s + Math.log(s / (sigma * sigma));
        if (off < WORST) {
          state[2 * j] = Step3.pull(moved[2 * j], c, ex / s);
          state[2 * j + 1] = Step3.pull(moved[2 * j + 1], c, ey / s);
          after[j] = shrunk.computeIfAbsent(c, w -> Step3.shrink(w, s));
        }
        cost += look * Math.min(off, WORST);
        if (off >= WORST) {
          after[j] = shrunk.computeIfAbsent(c, w -> scaled(w, open));
        }
      }
      int recent = ((v.recent << 1) | (exchanged ? 1 : 0)) & ((1 << MEMORY) - 1);
      return new Survivor(cost, recent, state, after, exchanged, new Survivor[] {v});
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
      margin[frame - back] = Double.isInfinite(lead) ? SURE : lead;
    }

    double[] margin() {
      return margin.clone();
    }

    private static double[][] scaled(double[][] c, double by) {
      double[][] out = new double[3][3];
      for (int i = 0; i < 3; i++) {
        for (int j = 0; j < 3; j++) {
          out[i][j] = by * c[i][j];
        }
      }
      return out;
    }

    private double[][] wide() {
      double w = 40 * sigma;
      return new double[][] {{w * w, 0, 0}, {0, 400 * w * w, 0}, {0, 0, 4e5 * w * w}};
    }
  }
}
