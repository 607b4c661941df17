package boundwright.clip.session;

import boundwright.clip.film.Picture;
import boundwright.clip.pose.Pose;
import boundwright.clip.pose.Region;
import boundwright.clip.track.BodyPoint;
import boundwright.clip.track.Spot;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;

/** Somebody who may be running, looked at with the network from look to look. */
final class Runner {
  /** Looks at clothes are this far apart [s]. */
  private static final double CLOTHES_EVERY_S = 0.25;
  /** Pictures for the page are kept this far apart [s]. */
  private static final double STILL_EVERY_S = 0.12;

  /**
   * One look.
   *
   * @param time_s when
   * @param x of the hips against the ground [px]
   * @param y of the hips against the ground, down [px]
   * @param size trunk and leg together [px]
   * @param pose where the body was in the picture
   */
  record Look(double time_s, double x, double y, double size, Pose pose) {}

  /** A picture for the page. */
  @SuppressWarnings("ArrayRecordComponent") // on its way to a file, never compared
  record Still(double time_s, byte[] jpeg) {}

  private final List<Look> looks = new ArrayList<>();
  private final List<Clothes> clothes = new ArrayList<>();
  private final List<Still> stills = new ArrayList<>();
  private double dressedAt = Double.NEGATIVE_INFINITY;

  void saw(double time_s, Picture picture, Pose pose, double turnedX_px, double turnedY_px, Function<Region, byte[]> still) {
    Spot hips = pose.spot(BodyPoint.LEFT_HIP).towards(pose.spot(BodyPoint.RIGHT_HIP), 0.5);
    looks.add(new Look(time_s, hips.x() - turnedX_px, hips.y() - turnedY_px, size(pose), pose));
    if (time_s - dressedAt >= CLOTHES_EVERY_S) {
      dressedAt = time_s;
      clothes.add(Clothes.worn(picture, pose));
    }
    if (stills.isEmpty() || time_s - stills.get(stills.size() - 1).time_s >= STILL_EVERY_S) {
      stills.add(new Still(time_s, still.apply(new Region(hips.x(), hips.y(), 2.5 * middleSize(), 0))));
    }
  }

  /** Trunk and the longer leg [px]. */
  private static double size(Pose p) {
    Spot hips = p.spot(BodyPoint.LEFT_HIP).towards(p.spot(BodyPoint.RIGHT_HIP), 0.5);
    Spot shoulders = p.spot(BodyPoint.LEFT_SHOULDER).towards(p.spot(BodyPoint.RIGHT_SHOULDER), 0.5);
    double left = p.spot(BodyPoint.LEFT_HIP).to(p.spot(BodyPoint.LEFT_KNEE)) + p.spot(BodyPoint.LEFT_KNEE).to(p.spot(BodyPoint.LEFT_ANKLE));
    double right =
        p.spot(BodyPoint.RIGHT_HIP).to(p.spot(BodyPoint.RIGHT_KNEE)) + p.spot(BodyPoint.RIGHT_KNEE).to(p.spot(BodyPoint.RIGHT_ANKLE));
    return hips.to(shoulders) + Math.max(left, right);
  }

  double middleSize() {
    double[] all = looks.stream().mapToDouble(Look::size).sorted().toArray();
    return all.length == 0 ? 1 : all[all.length >> 1];
  }

  boolean empty() {
    return looks.isEmpty();
  }

  Look last() {
    return looks.get(looks.size() - 1);
  }

  List<Look> looks() {
    return looks;
  }

  List<Still> stills() {
    return stills;
  }

  Clothes clothes() {
    return clothes.isEmpty() ? Clothes.UNKNOWN : Clothes.mean(clothes);
  }
}
