package boundwright.clip.contact;

import boundwright.clip.contact.Planted.Stretch;
import boundwright.clip.propose.Course;
import boundwright.clip.propose.Proposal;
import boundwright.clip.track.Motion;
import boundwright.footfall.Foot;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A contact on which the network's course and the ground agree. The course says that there is one and of which foot; where the
 * planted foot begins and ends near the course's own ends, those are taken, because they are finer.
 *
 * @param stretch the frames
 * @param down where it begins by the network
 * @param up where it ends
 * @param sure chance that it is this foot, 0.5 to 1
 * @param shortest_s no contact of this clip is shorter [s]
 */
record Agreed(Stretch stretch, End down, End up, double sure, double shortest_s) {
  /** The course and the ground tell the same end if they are no further apart than this share of a step, or so many frames. */
  private static final double SAME_STEPS = 0.12;
  /** The same in time, where the period of a step is found too short [s] (judgement). */
  private static final double SAME_S = 0.045;
  private static final double SAME_FRAMES = 2.5;
  /**
   * The ground may see an end later than the network by this share of a step: on bounds the network is early, by up to 80 ms where a
   * foot comes down steeply or leaves slowly (own output, made-up clips). No more in time: in a walk a later end is a slip.
   */
  private static final double LATER_STEPS = 0.18;
  private static final double LATER_S = 0.085;
  /** How far off the network's own ends are, standard deviation as a share of a step (own output, made-up and real film). */
  private static final double OWN_STEPS = 0.045;
  private static final double OWN_LEAVING_STEPS = 0.07;
  /** So far apart the network and a fit usually are (own output: the network's bias). */
  private static final double USUAL_STEPS = 0.06;
  /** What the beginning of the clip cuts to less than this share of a step is only believed when it is this sure (judgement). */
  private static final double SHORT_STEPS = 0.15;
  private static final double SURE = 0.95;
  /** No contact is shorter than this share of a step (judgement). */
  private static final double SHORTEST_STEPS = 0.1;

  /**
   * One end of a contact.
   *
   * @param time by the network [s]; NaN where the clip does not show it
   * @param sd of that time [s]
   * @param usual how far a fit may be from it before it is doubted [s]
   * @param most how far before it is not believed [s]
   * @param mostLater the same where the fit is later than the network [s]
   * @param open whether the ground is known: then a fit without an answer means that the point was out of sight, and it stays open
   */
  record End(double time, double sd, double usual, double most, double mostLater, boolean open) {
    /** The network's own time, or null. */
    @Nullable EventFit own() {
      return Double.isNaN(time) ? null : new EventFit(time, sd);
    }

    /** The fit where both agree, wider where they do less; else the network's own time. */
    @Nullable EventFit settled(@Nullable EventFit fit) {
      if (Double.isNaN(time)) {
        return null;
      }
      if (fit == null) {
        return open ? null : own();
      }
      double off = Math.abs(fit.time() - time);
      if (off > (fit.time() > time ? mostLater : most)) {
        return new EventFit(time, Math.hypot(sd, 0.3 * off));
      }
      return new EventFit(fit.time(), Math.hypot(fit.sd(), 0.7 * Math.max(0, off - usual)));
    }
  }

  /**
   * The contacts of a course.
   *
   * @param ground the planted stretches; null where a standing foot does not stay, and the network's times stand alone
   */
  static List<Agreed> of(List<Course.Stand> course, @Nullable List<Stretch> ground, Motion motion, Proposal net) {
    List<Stretch> planted = ground == null ? List.of() : ground;
    boolean open = ground != null;
    double step = motion.frames() < 2 ? 0 : (motion.time(motion.frames() - 1) - motion.time(0)) / (motion.frames() - 1);
    double same = Math.max(SAME_S, Math.max(SAME_FRAMES * step, SAME_STEPS * net.period()));
    double later = Math.max(same, Math.min(LATER_S, LATER_STEPS * net.period()));
    List<Agreed> out = new ArrayList<>();
    for (Course.Stand s : course) {
      if (s.start() && course.stream().anyMatch(o -> o.start() && o.foot() != s.foot() && later(o, s))) {
        // a standing start: the foot that leaves last makes the first contact, the other only stood
        continue;
      }
      if (s.first() == 0 && (s.last() + 1) * step < SHORT_STEPS * net.period() && s.sure() < SURE) {
        // a few frames at the clip's beginning tell nothing: neither touchdown nor place
        continue;
      }
      Stretch own = new Stretch(s.foot(), s.first(), s.last());
      int first = s.first();
      int last = s.last();
      boolean begins = false;
      boolean ends = false;
      for (Stretch g : planted) {
        if (g.foot() == s.foot() && g.overlap(own) > 0) {
          if (agree(motion.time(g.first()) - motion.time(s.first()), same, later)) {
            first = begins ? Math.min(first, g.first()) : g.first();
            begins = true;
          }
          if (agree(motion.time(g.last()) - motion.time(s.last()), same, later)) {
            last = ends ? Math.max(last, g.last()) : g.last();
            ends = true;
          }
        }
      }
      if (first >= last) {
        first = s.first();
        last = s.last();
      }
      double sd = Math.hypot(OWN_STEPS * net.period(), 0.3 * step);
      double sdUp = Math.hypot(OWN_LEAVING_STEPS * net.period(), 0.3 * step);
      double down = s.first() == 0 ? Double.NaN : crossing(net, s.foot(), s.first(), motion);
      double up = s.last() == motion.frames() - 1 ? Double.NaN : crossing(net, s.foot(), s.last() + 1, motion);
      out.add(
          new Agreed(
              new Stretch(s.foot(), first, last), new End(down, sd, USUAL_STEPS * net.period(), same, later, open),
              new End(up, sdUp, USUAL_STEPS * net.period(), same, later, open), s.sure(), SHORTEST_STEPS * net.period()));
    }
    return out;
  }

  /** Whether the ground's end is so much after the network's that both are the same one [s]. */
  private static boolean agree(double after, double same, double later) {
    return after >= -same && after <= later;
  }

  private static boolean later(Course.Stand a, Course.Stand b) {
    return a.last() > b.last() || (a.last() == b.last() && a.foot() == Foot.RIGHT);
  }

  /** When the log-odds pass zero between a frame and the one before it [s]. */
  private static double crossing(Proposal net, Foot foot, int frame, Motion motion) {
    double[] odds = foot == Foot.LEFT ? net.left() : net.right();
    double a = odds[frame - 1];
    double b = odds[frame];
    double share = a * b < 0 ? a / (a - b) : 0.5;
    return motion.time(frame - 1) + share * (motion.time(frame) - motion.time(frame - 1));
  }
}
