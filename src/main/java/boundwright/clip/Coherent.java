package boundwright.clip;

import boundwright.clip.contact.ContactFinder;
import boundwright.clip.contact.StandingFoot;
import boundwright.clip.contact.StandingGround;
import boundwright.clip.propose.Proposal;
import boundwright.clip.propose.Proposer;
import boundwright.clip.scale.GroundMarks;
import boundwright.clip.scale.PlaneMap;
import boundwright.clip.track.BodyPoint;
import boundwright.clip.track.Facing;
import boundwright.clip.track.Motion;
import boundwright.clip.track.Outliers;
import boundwright.clip.track.Sides;
import boundwright.clip.track.Track;
import java.util.Arrays;
import java.util.List;
import java.util.function.UnaryOperator;
import org.jspecify.annotations.Nullable;

/**
 * One coherent athlete in metres: sides put right, wild points out, pixels turned into metres, smoothed.
 *
 * @param sides the sides as decided
 * @param pixels the athlete in the picture, sides right, wild points out
 * @param metres the same in the athlete's plane, not smoothed
 * @param motion the same, smoothed, gaps filled
 * @param proposal what the network says of the clip; null where it saw too little
 * @param stays whether a standing foot stays where it is: the camera stood still, or was followed
 */
public record Coherent(
    Sides.Resolved sides, Track pixels, Track metres, Motion motion, @Nullable Proposal proposal, boolean stays) {

  /**
   * From points as found to one athlete.
   *
   * @param found body points in pixels
   * @param plane the athlete's plane
   * @throws boundwright.quantity.RefusedException if no leg was seen
   */
  public static Coherent of(Track found, PlaneMap plane) {
    return of(found, Proposer.shipped(), (frame, spot) -> plane.toPlane(spot), true, UnaryOperator.identity(), UnaryOperator.identity());
  }

  /**
   * The same where the camera turned, with what a hand put right. The network sees the points as they are in the film's own pictures.
   *
   * @param net who says which foot stands
   * @param ground from a point of a frame to the athlete's plane
   * @param stays whether a standing foot stays where it is in that plane: the camera stood, or was followed
   * @param sidesByHand changes the sides after they were decided
   * @param pointsByHand changes points after wild ones were taken out; what a hand placed is not doubted
   */
  public static Coherent of(
      Track found, Proposer net, Track.EachFrame ground, boolean stays, UnaryOperator<Sides.Resolved> sidesByHand,
      UnaryOperator<Track> pointsByHand) {
    @Nullable Proposal proposal = net.propose(found);
    Sides.Resolved first = Sides.resolve(found, proposal == null ? null : proposal.exchangedWeighed());
    boolean still = stays && (proposal == null || StandingGround.stays(Outliers.clean(first.track()).track().map(ground), proposal));
    Sides.Resolved own = still ? settled(first, ground) : first;
    Sides.Resolved sides = sidesByHand.apply(own);
    boolean[] turned = new boolean[found.frames()];
    for (int i = 0; i < turned.length; i++) {
      turned[i] = own.legsExchanged()[i] != sides.legsExchanged()[i];
    }
    Track pixels = pointsByHand.apply(Outliers.clean(sides.track()).track());
    Track metres = pixels.map(ground);
    return new Coherent(sides, pixels, metres, Motion.of(metres), proposal == null ? null : proposal.turnedByHand(turned), still);
  }

  /**
   * Refuses marks that count against the run. Who runs through and walks back ends behind where they began; only marks against the way
   * the toes point are wrong.
   *
   * @throws boundwright.quantity.RefusedException if they do
   */
  public void refuseBackwards() {
    if (Facing.toes(metres) <= 0) {
      GroundMarks.refuseBackwards(travel(metres));
    }
  }

  /** Who finds this athlete's contacts. */
  public ContactFinder finder() {
    return new ContactFinder(metres, motion, sides.legMargin(), proposal, stays);
  }

  /** The sides once more, by what the ground knows. */
  private static Sides.Resolved settled(Sides.Resolved sides, Track.EachFrame ground) {
    Track cleaned = Outliers.clean(sides.track()).track().map(ground);
    return sides.exchangedLegs(StandingFoot.exchanges(sides.track().map(ground), cleaned));
  }

  /** How far the hips went, by the median of the first and of the last tenth of the frames that show them [m]. */
  private static double travel(Track metres) {
    double[] x = new double[2 * metres.frames()];
    int n = 0;
    for (int i = 0; i < metres.frames(); i++) {
      for (BodyPoint p : List.of(BodyPoint.LEFT_HIP, BodyPoint.RIGHT_HIP)) {
        if (metres.seen(p, i)) {
          x[n++] = metres.spot(p, i).x();
        }
      }
    }
    int tenth = Math.max(1, n / 10);
    return n == 0 ? 0 : median(x, n - tenth, n) - median(x, 0, tenth);
  }

  private static double median(double[] x, int from, int to) {
    double[] part = Arrays.copyOfRange(x, from, to);
    Arrays.sort(part);
    return part[part.length / 2];
  }
}
