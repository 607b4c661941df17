package boundwright.clip.session;

import boundwright.clip.film.Picture;
import boundwright.clip.pose.Pose;
import boundwright.clip.track.BodyPoint;
import boundwright.clip.track.Spot;
import java.util.List;

/**
 * The colours of trunk and thighs: twelve hues and four greys of each, as shares. They tell shirts apart within one film and are
 * forgotten with it; nothing of a face or a build is in them.
 */
public final class Clothes {
  /** Shares that are kept. */
  public static final int BINS = 32;
  /** Nothing was seen. */
  public static final Clothes UNKNOWN = new Clothes(new double[BINS]);

  private static final int PART = 16;
  private static final int HUES = 12;
  /** Less coloured than this is grey, 0 to 1 (judgement). */
  private static final double GREY = 0.22;

  private final double[] share;

  private Clothes(double[] share) {
    this.share = share;
  }

  /** From shares as {@link #shares} gives them. */
  public static Clothes of(double[] shares) {
    double[] own = new double[BINS];
    System.arraycopy(shares, 0, own, 0, Math.min(BINS, shares.length));
    return new Clothes(own);
  }

  /** A copy of the shares: trunk, then thighs; each sums to one, or to nothing where it was not seen. */
  public double[] shares() {
    return share.clone();
  }

  /** Whether anything was seen. */
  public boolean known() {
    return share[0] >= 0 && sum(0) > 0;
  }

  /** What a body in a picture wears. */
  static Clothes worn(Picture picture, Pose pose) {
    double[] out = new double[BINS];
    Spot hips = middle(pose, BodyPoint.LEFT_HIP, BodyPoint.RIGHT_HIP);
    Spot shoulders = middle(pose, BodyPoint.LEFT_SHOULDER, BodyPoint.RIGHT_SHOULDER);
    double wide = 0.14 * hips.to(shoulders);
    line(picture, hips.towards(shoulders, 0.25), shoulders.towards(hips, 0.12), wide, out, 0);
    for (BodyPoint[] leg : new BodyPoint[][] {{BodyPoint.LEFT_HIP, BodyPoint.LEFT_KNEE}, {BodyPoint.RIGHT_HIP, BodyPoint.RIGHT_KNEE}}) {
      Spot hip = pose.spot(leg[0]);
      Spot knee = pose.spot(leg[1]);
      line(picture, hip.towards(knee, 0.1), hip.towards(knee, 0.45), 0.5 * wide, out, PART);
    }
    return new Clothes(even(out));
  }

  /** The mean of several looks. */
  static Clothes mean(List<Clothes> all) {
    double[] out = new double[BINS];
    for (Clothes c : all) {
      for (int i = 0; i < BINS; i++) {
        out[i] += c.share[i];
      }
    }
    return new Clothes(even(out));
  }

  /** From 0, worn by the same, to 1, nothing in common: Hellinger's distance, shirts twice, since shorts are mostly dark. */
  public double unlike(Clothes other) {
    double all = 0;
    double weight = 0;
    for (int from = 0; from < BINS; from += PART) {
      if (sum(from) > 0 && other.sum(from) > 0) {
        double common = 0;
        for (int i = from; i < from + PART; i++) {
          common += Math.sqrt(share[i] * other.share[i]);
        }
        double w = from == 0 ? 2 : 1;
        all += w * Math.sqrt(Math.max(0, 1 - common));
        weight += w;
      }
    }
    return weight == 0 ? 0.5 : all / weight;
  }

  private double sum(int from) {
    double s = 0;
    for (int i = from; i < from + PART; i++) {
      s += share[i];
    }
    return s;
  }

  private static double[] even(double[] counts) {
    for (int from = 0; from < BINS; from += PART) {
      double s = 0;
      for (int i = from; i < from + PART; i++) {
        s += counts[i];
      }
      for (int i = from; i < from + PART && s > 0; i++) {
        counts[i] /= s;
      }
    }
    return counts;
  }

  private static Spot middle(Pose pose, BodyPoint a, BodyPoint b) {
    return pose.spot(a).towards(pose.spot(b), 0.5);
  }

  private static void line(Picture picture, Spot a, Spot b, double wide, double[] out, int from) {
    double length = Math.max(1, a.to(b));
    double nx = -(b.y() - a.y()) / length;
    double ny = (b.x() - a.x()) / length;
    for (int i = 0; i <= 12; i++) {
      for (int j = -2; j <= 2; j++) {
        int x = (int) (a.x() + (b.x() - a.x()) * i / 12 + nx * wide * j / 2);
        int y = (int) (a.y() + (b.y() - a.y()) * i / 12 + ny * wide * j / 2);
        if (x >= 0 && y >= 0 && x < picture.width() && y < picture.height()) {
          int p = 3 * (y * picture.width() + x);
          out[from + bin(picture.rgb()[p] & 0xff, picture.rgb()[p + 1] & 0xff, picture.rgb()[p + 2] & 0xff)]++;
        }
      }
    }
  }

  private static int bin(int red, int green, int blue) {
    int most = Math.max(red, Math.max(green, blue));
    int least = Math.min(red, Math.min(green, blue));
    if (most == 0 || most - least < GREY * most || most < 40) {
      return HUES + Math.min(3, most >> 6);
    }
    double d = most - least;
    double hue = most == red ? (green - blue) / d : most == green ? 2 + (blue - red) / d : 4 + (red - green) / d;
    return Math.floorMod((int) Math.floor(hue * HUES / 6), HUES);
  }
}
