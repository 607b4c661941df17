package boundwright.clip.truth;

import boundwright.clip.track.BodyPoint;
import boundwright.clip.track.Joint;
import boundwright.clip.track.Spot;
import boundwright.clip.track.Track;
import boundwright.footfall.Foot;
import java.util.List;
import java.util.Random;

/**
 * Errors like those of a body-point finder: jitter of which half (in variance) lasts over frames, larger towards the
 * ankles; left and right exchanged in clumps where the limbs pass; drop-outs; wild points. Sizes are on the body [m], because
 * the finder looks at the body scaled to a fixed size. Judgement, guided by the known weakness of the network.
 *
 * @param scale 1 is usual; multiplies the jitter only
 * @param lasting time over which the lasting half fades to 1/e [s]
 * @param exchanged share of frames with exchanged legs, and as many with exchanged arms
 * @param missing share of points that are missing, in runs
 * @param wild share of points that are anywhere within a metre or so
 * @param merged share of frames in which both feet are put on one leg, in clumps
 */
public record Noise(double scale, double lasting, double exchanged, double missing, double wild, double merged) {
  /** What the issue asks to stand. */
  public static final Noise USUAL = new Noise(1, 0.04, 0.10, 0.04, 0.01, 0);
  /** None at all. */
  public static final Noise NONE = new Noise(0, 0.04, 0, 0, 0, 0);
  /** The usual with both feet on one leg as often as the network does that in painted film (docs/clip-accuracy.md; own output). */
  public static final Noise LIKE_PAINTED = new Noise(1, 0.04, 0.10, 0.04, 0.01, 0.014);
  /** Only where the ankles are further apart than this can both feet on one leg be told [m]. */
  public static final double APART_M = 0.25;
  /** So long both feet stay on one leg, in the mean [s] (the same source as its share). */
  private static final double MERGED_S = 0.017;

  /** Standard deviation of a point's jitter in either direction [m]. */
  public static double metres(BodyPoint p) {
    return switch (p) {
      case LEFT_ANKLE, RIGHT_ANKLE -> 0.016;
      case LEFT_HEEL, RIGHT_HEEL, LEFT_TOE, RIGHT_TOE -> 0.018;
      case LEFT_KNEE, RIGHT_KNEE, LEFT_ELBOW, RIGHT_ELBOW -> 0.013;
      case LEFT_HIP, RIGHT_HIP, LEFT_SHOULDER, RIGHT_SHOULDER -> 0.011;
      case LEFT_WRIST, RIGHT_WRIST, LEFT_PINKY, RIGHT_PINKY, LEFT_INDEX, RIGHT_INDEX, LEFT_THUMB, RIGHT_THUMB -> 0.018;
      default -> 0.008;
    };
  }

  /** The track as a finder would give it. {@code unit} is pixels per metre of body. */
  public Track over(Track truth, double unit, Random random) {
    Track.Builder out = truth.edit();
    int n = truth.frames();
    for (BodyPoint p : BodyPoint.values()) {
      double sd = scale * metres(p) * unit / Math.sqrt(2);
      double lx = sd * random.nextGaussian();
      double ly = sd * random.nextGaussian();
      double gone = -1;
      for (int i = 0; i < n; i++) {
        double dt = i == 0 ? 0 : truth.time(i) - truth.time(i - 1);
        double keep = Math.exp(-dt / lasting);
        double push = sd * Math.sqrt(1 - keep * keep);
        lx = keep * lx + push * random.nextGaussian();
        ly = keep * ly + push * random.nextGaussian();
        double jx = sd * random.nextGaussian();
        double jy = sd * random.nextGaussian();
        double mean = 0.035;
        if (gone < 0 && random.nextDouble() < missing * truth.medianStep() / mean) {
          gone = -mean * Math.log(1 - random.nextDouble());
        }
        boolean isWild = random.nextDouble() < wild;
        double far = unit * (0.25 + 0.9 * random.nextDouble());
        double to = 2 * Math.PI * random.nextDouble();
        Spot s = truth.spot(p, i);
        if (!s.known()) {
          continue;
        }
        if (gone >= 0) {
          gone -= truth.medianStep();
          out.erase(p, i);
          continue;
        }
        Spot at = new Spot(s.x() + lx + jx + (isWild ? far * Math.cos(to) : 0), s.y() + ly + jy + (isWild ? far * Math.sin(to) : 0));
        out.put(p, i, at, isWild ? 0.5 : 0.9);
      }
    }
    exchange(truth, out, random, List.of(Joint.HIP, Joint.KNEE, Joint.ANKLE, Joint.HEEL, Joint.TOE), Joint.KNEE, unit);
    exchange(
        truth, out, random, List.of(Joint.SHOULDER, Joint.ELBOW, Joint.WRIST, Joint.PINKY, Joint.INDEX, Joint.THUMB), Joint.ELBOW, unit);
    if (merged > 0) {
      merge(truth, out, random, unit);
    }
    return out.build();
  }

  /** Clumps of frames in which ankle, heel and toe of one leg are put onto the other; which leg is drawn anew for each clump. */
  private void merge(Track truth, Track.Builder out, Random random, double unit) {
    int n = truth.frames();
    boolean[] apart = new boolean[n];
    int frames = 0;
    for (int i = 0; i < n; i++) {
      apart[i] = truth.spot(BodyPoint.LEFT_ANKLE, i).to(truth.spot(BodyPoint.RIGHT_ANKLE, i)) > APART_M * unit;
      frames += apart[i] ? 1 : 0;
    }
    double step = truth.medianStep();
    double start = frames == 0 ? 0 : Math.min(0.9, merged * n / frames * step / MERGED_S);
    double left = -1;
    Foot onto = Foot.LEFT;
    for (int i = 0; i < n; i++) {
      if (left < 0 && apart[i] && random.nextDouble() < start) {
        left = -MERGED_S * Math.log(1 - random.nextDouble());
        onto = random.nextBoolean() ? Foot.LEFT : Foot.RIGHT;
      }
      if (left >= 0) {
        left -= step;
        for (Joint j : List.of(Joint.ANKLE, Joint.HEEL, Joint.TOE)) {
          Spot there = truth.spot(BodyPoint.of(j, onto), i);
          if (there.known()) {
            double sd = metres(BodyPoint.LEFT_TOE) * unit;
            out.put(
                BodyPoint.of(j, onto.other()), i, new Spot(there.x() + sd * random.nextGaussian(), there.y() + sd * random.nextGaussian()), 0.7);
          }
        }
      }
    }
  }

  /** Clumps of exchanged frames begin where the limbs are close and last a random while. */
  private void exchange(Track truth, Track.Builder out, Random random, List<Joint> joints, Joint tells, double unit) {
    int n = truth.frames();
    boolean[] close = new boolean[n];
    int closeFrames = 0;
    for (int i = 0; i < n; i++) {
      double d = truth.spot(BodyPoint.of(tells, Foot.LEFT), i).to(truth.spot(BodyPoint.of(tells, Foot.RIGHT), i));
      close[i] = d < 0.25 * unit;
      closeFrames += close[i] ? 1 : 0;
    }
    double step = truth.medianStep();
    double mean = 0.04;
    double start = closeFrames == 0 ? 0 : Math.min(0.9, 1.15 * exchanged * n / closeFrames * step / mean);
    double left = -1;
    for (int i = 0; i < n; i++) {
      if (left < 0 && close[i] && random.nextDouble() < start) {
        left = -mean * Math.log(1 - random.nextDouble());
      }
      if (left >= 0) {
        left -= step;
        int frame = i;
        joints.forEach(j -> out.exchange(j, frame));
      }
    }
  }
}
