package boundwright.clip;

import boundwright.clip.track.BodyPoint;
import boundwright.clip.track.Spot;
import boundwright.clip.track.Track;
import boundwright.clip.truth.Noise;
import java.util.Locale;

/**
 * How often a finder puts both feet on one leg: the true ankles are apart by at least a foot's length, the found ones by less than a third of that.
 * Counted in frames, and in clumps with their length.
 */
final class MergedLegs {
  private static final double SHARE = 1.0 / 3;

  private int apart;
  private int merged;
  private int frames;
  private int clumps;
  private double clumps_s;
  private int near;

  void count(Track truth, Track found, double unit) {
    boolean before = false;
    for (int i = 0; i < found.frames(); i++) {
      Spot a = truth.spot(BodyPoint.LEFT_ANKLE, i);
      Spot b = truth.spot(BodyPoint.RIGHT_ANKLE, i);
      Spot p = found.spot(BodyPoint.LEFT_ANKLE, i);
      Spot q = found.spot(BodyPoint.RIGHT_ANKLE, i);
      if (!a.known() || !b.known() || !p.known() || !q.known()) {
        before = false;
        continue;
      }
      frames++;
      boolean far = a.to(b) > Noise.APART_M * unit;
      boolean one = far && p.to(q) < SHARE * a.to(b);
      apart += far ? 1 : 0;
      merged += one ? 1 : 0;
      near += one && a.to(b) < 2 * Noise.APART_M * unit ? 1 : 0;
      clumps += one && !before ? 1 : 0;
      clumps_s += one ? found.medianStep() : 0;
      before = one;
    }
  }

  String said() {
    return String.format(
        Locale.ROOT,
        "both feet on one leg: %d of %d frames (%.1f %%; feet apart in %d), %d clumps of %.0f ms in the mean, %.0f %% of them where the ankles are within %.2f m",
        merged, frames, 100.0 * merged / Math.max(1, frames), apart, clumps, 1000 * clumps_s / Math.max(1, clumps), 100.0 * near / Math.max(1, merged),
        2 * Noise.APART_M);
  }
}
