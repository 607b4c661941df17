package boundwright.clip.track;

import boundwright.footfall.Foot;
import java.util.Arrays;
import java.util.List;

/**
 * Takes out points that no athlete could have shown: too far from where the point was just before and after for any
 * human speed, or at the end of a limb that is longer than that limb ever is. Seen from the side a limb can look shorter
 * than it is, never longer.
 */
public final class Outliers {
  /** Fastest that any body point moves [m/s]; a sprinter's foot passes 20 (judgement). */
  private static final double FASTEST = 26;
  /** Noise that is always allowed [m] (judgement). */
  private static final double SLACK_M = 0.12;
  /** A limb longer than this many times its 80 % point is wrong (judgement). */
  private static final double LONGEST = 1.3;
  private static final int REACH = 3;

  private static final List<List<Joint>> LIMBS =
      List.of(
          List.of(Joint.HIP, Joint.KNEE),
          List.of(Joint.KNEE, Joint.ANKLE),
          List.of(Joint.ANKLE, Joint.HEEL),
          List.of(Joint.ANKLE, Joint.TOE),
          List.of(Joint.SHOULDER, Joint.ELBOW),
          List.of(Joint.ELBOW, Joint.WRIST));

  private Outliers() {}

  /**
   * What is left, and how many points went.
   *
   * @param track without the wild points
   * @param bySpeed points taken out because nothing moves so fast
   * @param byLimb points taken out because a limb would be too long
   */
  public record Cleaned(Track track, int bySpeed, int byLimb) {}

  /** Cleans a track whose sides are right. The unit of the track is free. */
  public static Cleaned clean(Track track) {
    double unit = BodySize.perMetre(track);
    Track.Builder out = track.edit();
    int bySpeed = 0;
    for (BodyPoint p : BodyPoint.values()) {
      double[] x = track.xs(p);
      double[] y = track.ys(p);
      for (int i = 0; i < x.length; i++) {
        if (track.seen(p, i)
            && (offCourse(track, p, x, y, i) > SLACK_M * unit + FASTEST * unit * track.medianStep()
                || outOfReach(track, p, x, y, i, unit))) {
          out.erase(p, i);
          bySpeed++;
        }
      }
    }
    Track calm = out.build();
    int byLimb = 0;
    for (List<Joint> limb : LIMBS) {
      for (Foot side : Foot.values()) {
        byLimb += cutLongLimbs(calm, out, BodyPoint.of(limb.get(0), side), BodyPoint.of(limb.get(1), side));
      }
    }
    return new Cleaned(out.build(), bySpeed, byLimb);
  }

  /** Distance from the median of the neighbours in time, after their common drift was taken off; NaN where too few were seen. */
  private static double offCourse(Track track, BodyPoint p, double[] x, double[] y, int i) {
    double[] nx = new double[2 * REACH];
    double[] ny = new double[2 * REACH];
    int n = 0;
    for (int k = 1; k <= REACH; k++) {
      if (i - k >= 0 && i + k < x.length && track.seen(p, i - k) && track.seen(p, i + k)) {
        double share = (track.time(i) - track.time(i - k)) / (track.time(i + k) - track.time(i - k));
        nx[n] = x[i - k] + share * (x[i + k] - x[i - k]);
        ny[n++] = y[i - k] + share * (y[i + k] - y[i - k]);
      }
    }
    return n < 2 ? Double.NaN : Math.hypot(x[i] - median(nx, n), y[i] - median(ny, n));
  }

  /** Distance from the nearest sample in time [the track's unit]; 0 where none is near. */
  private static double fromNearest(Track track, BodyPoint p, double[] x, double[] y, int i) {
    for (int k = 1; k <= REACH; k++) {
      double least = Double.NaN;
      for (int j : new int[] {i - k, i + k}) {
        if (j >= 0 && j < x.length && track.seen(p, j)) {
          double off = Math.hypot(x[i] - x[j], y[i] - y[j]);
          least = Double.isNaN(least) ? off : Math.min(least, off);
        }
      }
      if (!Double.isNaN(least)) {
        return least;
      }
    }
    return 0;
  }

  /** Whether most of the nearest samples, up to two on each side, could not have been reached from here. */
  private static boolean outOfReach(Track track, BodyPoint p, double[] x, double[] y, int i, double unit) {
    int near = 0;
    int reached = 0;
    for (int way = -1; way <= 1; way += 2) {
      int found = 0;
      for (int k = i + way; k >= 0 && k < x.length && found < 2; k += way) {
        double dt = Math.abs(track.time(k) - track.time(i));
        if (dt > 0.1) {
          break;
        }
        if (track.seen(p, k)) {
          found++;
          near++;
          reached += Math.hypot(x[i] - x[k], y[i] - y[k]) <= SLACK_M * unit + FASTEST * unit * dt ? 1 : 0;
        }
      }
    }
    return near >= 2 && 2 * reached < near;
  }

  private static double median(double[] v, int n) {
    double[] s = Arrays.copyOf(v, n);
    Arrays.sort(s);
    return n % 2 == 1 ? s[n / 2] : 0.5 * (s[n / 2 - 1] + s[n / 2]);
  }

  private static int cutLongLimbs(Track track, Track.Builder out, BodyPoint upper, BodyPoint lower) {
    double[] length = new double[track.frames()];
    Arrays.setAll(length, i -> track.spot(upper, i).to(track.spot(lower, i)));
    double[] known = Arrays.stream(length).filter(l -> !Double.isNaN(l)).sorted().toArray();
    if (known.length < 5) {
      return 0;
    }
    double most = LONGEST * known[(int) (0.8 * known.length)];
    double[] ux = track.xs(upper);
    double[] uy = track.ys(upper);
    double[] lx = track.xs(lower);
    double[] ly = track.ys(lower);
    int cut = 0;
    for (int i = 0; i < length.length; i++) {
      if (length[i] > most) {
        double ofUpper = offCourse(track, upper, ux, uy, i);
        double ofLower = offCourse(track, lower, lx, ly, i);
        if (Double.isNaN(ofUpper) || Double.isNaN(ofLower)) {
          // a point that soon goes out of sight has no course: both by one measure, else the seen one pays for the wild one
          ofUpper = fromNearest(track, upper, ux, uy, i);
          ofLower = fromNearest(track, lower, lx, ly, i);
        }
        out.erase(ofUpper > ofLower ? upper : lower, i);
        cut++;
      }
    }
    return cut;
  }
}
