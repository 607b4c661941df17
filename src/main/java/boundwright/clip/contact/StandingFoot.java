package boundwright.clip.contact;

import boundwright.clip.contact.Planted.Stretch;
import boundwright.clip.track.BodyPoint;
import boundwright.clip.track.Joint;
import boundwright.clip.track.Motion;
import boundwright.clip.track.Spot;
import boundwright.clip.track.Track;
import boundwright.footfall.Foot;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;

/**
 * What the ground knows of left and right: a foot that stands somewhere stands there until it leaves. Where one place is given
 * to the one foot and then to the other, mostly while the free leg swings past, the frames of the wrong name are exchanged.
 */
public final class StandingFoot {
  /** Samples so near to the standing place belong to the foot that stands there [m] (judgement). */
  private static final double NEAR_M = 0.08;
  /** The foot's own point must be so far away that the other one is not just beside it [m] (judgement). */
  private static final double FAR_M = 0.10;
  /** Stretches at one place with no more than this between them are one contact [s] (judgement). */
  private static final double BETWEEN_S = 0.06;
  /** A name in the first or last third of a contact counts so many times one in the middle, where the legs pass each other. */
  private static final int AT_ENDS = 3;

  private static final Set<BodyPoint> FEET =
      EnumSet.of(BodyPoint.LEFT_HEEL, BodyPoint.RIGHT_HEEL, BodyPoint.LEFT_TOE, BodyPoint.RIGHT_TOE);

  private final Track raw;
  private final boolean[] exchange;

  private StandingFoot(Track raw) {
    this.raw = raw;
    exchange = new boolean[raw.frames()];
  }

  /**
   * The frames in which the legs should be exchanged.
   *
   * @param raw metres, sides as decided before, wild points not yet taken out: after an exchange they may be right
   * @param cleaned the same without wild points
   */
  public static boolean[] exchanges(Track raw, Track cleaned) {
    StandingFoot out = new StandingFoot(raw);
    for (List<Stretch> contact : out.together(Planted.stretches(cleaned, Motion.of(cleaned, FEET)))) {
      out.settle(contact);
    }
    return out.exchange;
  }

  /** Stretches of either foot that stand at one place and follow each other. */
  private List<List<Stretch>> together(List<Stretch> all) {
    List<List<Stretch>> out = new ArrayList<>();
    for (Stretch s : all) {
      List<Stretch> contact = out.isEmpty() ? null : out.get(out.size() - 1);
      Stretch before = contact == null ? null : contact.get(contact.size() - 1);
      if (contact != null && before != null && raw.time(s.first()) - raw.time(before.last()) < BETWEEN_S
          && place(List.of(before), Joint.TOE).to(place(List.of(s), Joint.TOE)) < NEAR_M) {
        contact.add(s);
      } else {
        out.add(new ArrayList<>(List.of(s)));
      }
    }
    return out;
  }

  private void settle(List<Stretch> contact) {
    int first = contact.stream().mapToInt(Stretch::first).min().orElseThrow();
    int last = contact.stream().mapToInt(Stretch::last).max().orElseThrow();
    Foot foot = name(contact, first, last);
    Spot heel = place(contact, Joint.HEEL);
    Spot toe = place(contact, Joint.TOE);
    for (int i = first; i <= last; i++) {
      exchange[i] |= off(foot.other(), heel, toe, i) < NEAR_M && off(foot, heel, toe, i) > FAR_M;
    }
  }

  private static Foot name(List<Stretch> contact, int first, int last) {
    double third = (last - first + 1) / 3.0;
    int right = 0;
    for (Stretch s : contact) {
      for (int i = s.first(); i <= s.last(); i++) {
        int weight = i < first + third || i > last - third ? AT_ENDS : 1;
        right += s.foot() == Foot.RIGHT ? weight : -weight;
      }
    }
    return right >= 0 ? Foot.RIGHT : Foot.LEFT;
  }

  /** How far heel or toe of a foot, whichever is nearer, lies from where it would stand [m]. */
  private double off(Foot foot, Spot heel, Spot toe, int frame) {
    return Math.min(off(BodyPoint.of(Joint.HEEL, foot), heel, frame), off(BodyPoint.of(Joint.TOE, foot), toe, frame));
  }

  private double off(BodyPoint point, Spot place, int frame) {
    return raw.seen(point, frame) && place.known() ? raw.spot(point, frame).to(place) : Double.POSITIVE_INFINITY;
  }

  /** Median place of a point over the stretches, each under its own name. */
  private Spot place(List<Stretch> of, Joint joint) {
    List<Spot> seen = new ArrayList<>();
    for (Stretch s : of) {
      BodyPoint p = BodyPoint.of(joint, s.foot());
      for (int i = s.first(); i <= s.last(); i++) {
        if (raw.seen(p, i)) {
          seen.add(raw.spot(p, i));
        }
      }
    }
    return Spot.median(seen);
  }
}
