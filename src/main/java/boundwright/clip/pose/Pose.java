package boundwright.clip.pose;

import boundwright.clip.track.BodyPoint;
import boundwright.clip.track.Spot;
import boundwright.clip.track.Track;
import java.util.List;

/** The body points that the network gave for one picture. */
@SuppressWarnings("EnumOrdinal") // the network numbers its points in the order of the enum
public final class Pose {
  private final List<Spot> spots;
  private final double[] sure;
  private final double presence;
  private final Region next;

  Pose(List<Spot> spots, double[] sure, double presence, Region next) {
    this.spots = List.copyOf(spots);
    this.sure = sure.clone();
    this.presence = presence;
    this.next = next;
  }

  /** Where the point is [px of the picture]; it may lie outside, as a guess. */
  public Spot spot(BodyPoint point) {
    return spots.get(point.ordinal());
  }

  /** How sure the network is that the point is to be seen, 0 to 1. */
  public double sure(BodyPoint point) {
    return sure[point.ordinal()];
  }

  /** How sure the network is that there is a body at all, 0 to 1. */
  public double presence() {
    return presence;
  }

  /** Where to look in the next picture. */
  public Region next() {
    return next;
  }

  /** Puts the points that lie in a picture of {@code width} by {@code height} pixels into a frame of a track; the others stay unseen. */
  public void fill(Track.Builder into, int frame, int width, int height) {
    for (BodyPoint p : BodyPoint.values()) {
      Spot s = spot(p);
      if (s.x() >= 0 && s.y() >= 0 && s.x() < width && s.y() < height) {
        into.put(p, frame, s, sure(p));
      }
    }
  }
}
