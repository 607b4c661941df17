package boundwright.clip.contact;

import boundwright.clip.contact.Landings.Landing;
import boundwright.clip.contact.Planted.Stretch;
import boundwright.clip.propose.Course;
import boundwright.clip.propose.Proposal;
import boundwright.clip.track.BodyPoint;
import boundwright.clip.track.Joint;
import boundwright.clip.track.Motion;
import boundwright.clip.track.Track;
import boundwright.footfall.Foot;
import boundwright.quantity.Estimate;
import boundwright.quantity.RefusedException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/**
 * Contacts with their times to a part of a frame: first the coarse course of the rep ({@link Planted}), then each end of
 * each contact from the unsmoothed samples around it ({@link Landings}, {@link Leavings}), then where heel and toe stood.
 */
public final class ContactFinder {
  /** Contacts shorter than this are noise [s]; the shortest measured in the event are near 0.1 (judgement). */
  private static final double SHORTEST_S = 0.06;
  /** A landing on both feet: the two touch down within this time [s] (judgement). */
  private static final double TOGETHER_S = 0.09;
  /** Share of a contact up to which the foot is taken as one stiff piece; later the heel rises and the foot bends (judgement). */
  private static final double FLAT = 0.6;

  /**
   * What stays uncertain of a standing place however well it was seen, standard deviation [m]: feet beside the athlete's
   * plane, the lens, a foot that gives (own output: lengths of made-up clips without any noise are 12 mm off).
   */
  private static final double PLACE_LEAST_M = 0.009;
  /**
   * A touchdown is less certain than its fit believes by so much of the squared time between frames, standard deviation [1/s]: a curve
   * can do anything there, and strays with the square of it. A toe leaves slowly, so a toe-off by a share of that time (own output,
   * made-up clips at 30 and 60 frames a second).
   */
  private static final double BETWEEN_FRAMES = 9;
  private static final double BETWEEN_FRAMES_LEAVING = 0.1;
  /**
   * And by this, standard deviation [s]: no foot stops or leaves as the curves do (own output: without any noise toe-offs are 3 ms late;
   * over force plates touchdowns scatter by 4.5 ms where the points err by 2 mm).
   */
  private static final double CURVE_S = 0.0025;
  private static final double CURVE_LEAVING_S = 0.0012;

  /** Off the middle of its neighbours in time by so much, a foot's point has leapt [m] (judgement: three times the usual noise). */
  private static final double JUMP_M = 0.06;
  /** A foot that stops turns off its course by itself; its acceleration at the most [m/s2] (judgement: 8 m/s within 40 ms). */
  private static final double STOPS = 200;
  /** Leaps so near to an event make it doubtful [s] (judgement). */
  private static final double JUMP_NEAR_S = 0.08;
  /**
   * What one leap adds to the error of an event, several by their root [s] (own output of painted films, where legs hide each
   * other: the stated ranges then hold for about 9 in 10 instead of 4).
   */
  private static final double JUMP_SD_S = 0.02;

  /** Fewest samples that tell where a point stood. */
  private static final int FEWEST_STANDING = 2;
  /** Heel and toe lie about so far apart [m] (judgement). */
  private static final double FOOT_M = 0.25;

  /** How well a heel and the foot's own length tell where its toe stands, standard deviation [m] (own output, made-up clips). */
  private static final double BY_HEEL_M = 0.02;

  /** A place whose standard deviation is larger than this is no place of one foot [m] (judgement: half a foot). */
  private static final double STRAYED_M = 0.12;

  /** How sure the network must be of a clip (judgement; own output: real and painted film 0.85 and more, noise without a body below 0.5). */
  private static final double CERTAIN = 0.6;

  /** No foot is surer than this: where the legs hide each other nobody can be certain (judgement; too few feet go wrong to count). */
  private static final double SUREST = 0.98;

  private final Track metres;
  private final Motion motion;
  private final double step;
  private final double[] sure;
  private final Feet feet;
  private final @Nullable Proposal proposal;
  private final boolean ground;
  /** Sought when it is first asked for: the search over the whole clip is the dearest thing here. */
  private @Nullable List<Course.Stand> course;

  /**
   * A finder for one athlete in one clip.
   *
   * @param metres the athlete in metres, sides put right, not smoothed
   * @param motion the same, smoothed
   * @param sideMargin how sure the sides are in each frame, see {@code Sides}
   */
  public ContactFinder(Track metres, Motion motion, double[] sideMargin) {
    this(metres, motion, sideMargin, null, true);
  }

  /**
   * A finder with what the network proposes.
   *
   * @param proposal null for nothing: then the ground alone decides
   * @param ground whether a standing foot stays where it is
   */
  public ContactFinder(Track metres, Motion motion, double[] sideMargin, @Nullable Proposal proposal, boolean ground) {
    this.proposal = proposal;
    this.ground = ground;
    this.metres = metres;
    this.motion = motion;
    sure = sideMargin;
    step = metres.medianStep();
    feet = new Feet(metres, motion);
  }

  /**
   * A contact whose times are given by hand; where heel and toe stood is read from the points between them.
   *
   * @param foot which
   * @param down when it began, with its error
   * @param up when it ended
   * @param footSure 0.5 to 1
   * @throws RefusedException if its heel and toe were hardly ever seen
   */
  public Contact given(Foot foot, @Nullable Estimate down, @Nullable Estimate up, double footSure) {
    double from = down == null ? motion.time(0) : down.p50();
    double to = up == null ? motion.time(motion.frames() - 1) : up.p50();
    return placed(foot, down, up, from, to, footSure);
  }

  /**
   * The contacts in order.
   *
   * @throws RefusedException if heel and toe of a foot were hardly ever seen
   */
  public List<Contact> find() {
    if (proposal != null) {
      return proposed(proposal);
    }
    List<Stretch> stretches = new ArrayList<>(Planted.stretches(metres, motion));
    stretches.removeIf(s -> motion.time(s.last()) - motion.time(s.first()) + step < SHORTEST_S);
    dropFootThatOnlyStands(stretches);
    List<@Nullable Landing> landing = new Landings(motion, feet, step).all(stretches);
    List<@Nullable EventFit> leaving = new Leavings(motion, feet, step).all(stretches);
    List<Contact> out = new ArrayList<>();
    for (int i = 0; i < stretches.size(); i++) {
      Stretch s = stretches.get(i);
      out.add(contact(s, landing.get(i), leaving.get(i)));
    }
    out.sort(Comparator.comparingDouble(Contact::middle_s));
    return joinLandings(out, TOGETHER_S);
  }

  /**
   * Why no contact is read from a film in which somebody is seen, or null. Contacts that nobody can trust are refused, never invented.
   */
  public @Nullable String refusal() {
    Proposal net = proposal;
    if (net == null) {
      return null;
    }
    if (net.certain() < CERTAIN) {
      return String.format(
          Locale.ROOT,
          "Contacts cannot be told from this film: the program is %.0f %% sure of the feet, at least %.0f %% is needed. Film from the side with both feet in sight, or add contacts by hand.",
          100 * net.certain(), 100 * CERTAIN);
    }
    boolean leaves = course(net).stream().anyMatch(s -> s.last() < motion.frames() - 1);
    boolean lands = course(net).stream().anyMatch(s -> s.first() > 0);
    return leaves && lands ? null : "Nobody takes a step in this film, so there is no contact to read. Film the whole rep from the side, or add contacts by hand.";
  }

  private List<Course.Stand> course(Proposal net) {
    List<Course.Stand> sought = course;
    if (sought == null) {
      sought = Course.of(net, step);
      course = sought;
    }
    return sought;
  }

  private List<Contact> proposed(Proposal net) {
    if (refusal() != null) {
      return List.of();
    }
    List<Agreed> agreed = Agreed.of(course(net), ground ? Planted.stretches(metres, motion) : null, motion, net);
    List<Stretch> stretches = agreed.stream().map(Agreed::stretch).toList();
    List<@Nullable Landing> landing = ground ? new Landings(motion, feet, step).all(stretches) : nothing(stretches);
    List<@Nullable EventFit> leaving = ground ? new Leavings(motion, feet, step).all(stretches) : nothing(stretches);
    List<Contact> out = new ArrayList<>();
    for (int i = 0; i < stretches.size(); i++) {
      Agreed a = agreed.get(i);
      Stretch s = a.stretch();
      EventFit down = a.down().settled(touchdown(landing.get(i), s.foot()));
      EventFit up = a.up().settled(toeOff(leaving.get(i), s.foot()));
      if (down != null && up != null && up.time() - down.time() < a.shortest_s()) {
        // touchdown comes before toe-off: where the fits cross, the network's own course holds
        down = a.down().own();
        up = a.up().own();
      }
      double from = down == null ? motion.time(s.first()) : down.time();
      double to = up == null ? motion.time(s.last()) : up.time();
      out.add(placed(s.foot(), estimate(down), estimate(up), from, to, footSure(a.sure(), margin(s))));
    }
    out.sort(Comparator.comparingDouble(Contact::middle_s));
    return joinLandings(out, Math.max(TOGETHER_S, 0.2 * net.period()));
  }

  private static <T> List<@Nullable T> nothing(List<Stretch> of) {
    return new ArrayList<>(Collections.nCopies(of.size(), null));
  }

  private static @Nullable Estimate estimate(@Nullable EventFit e) {
    return e == null ? null : Estimate.normal(e.time(), e.sd());
  }

  /** By the network and by the sides, whichever is less; the sides' search says nothing of the last frames. Never quite 1 but by hand. */
  private static double footSure(double net, double sides) {
    if (net == 1) {
      return 1;
    }
    return Math.min(SUREST, sides == 0.5 ? net : Math.min(net, sides));
  }

  /** How sure the sides are where a foot stood, as a chance. */
  private double margin(Stretch s) {
    double margin = 0;
    for (int i = s.first(); i <= s.last(); i++) {
      margin = Math.max(margin, sure[i]);
    }
    return 1 / (1 + Math.exp(-margin));
  }

  /** A standing start has both feet down; the foot that leaves last makes the first contact, the other only stood. */
  private static void dropFootThatOnlyStands(List<Stretch> stretches) {
    stretches.removeIf(
        a -> stretches.stream().anyMatch(
            b -> b.foot() != a.foot() && a.overlap(b) > 0.5 * a.frames() && a.first() <= 2 && b.last() > a.last()));
  }

  private Contact contact(Stretch s, @Nullable Landing land, @Nullable EventFit leave) {
    Estimate down = estimate(touchdown(land, s.foot()));
    Estimate up = estimate(toeOff(leave, s.foot()));
    double from = down == null ? motion.time(s.first()) : down.p50();
    double to = up == null ? motion.time(s.last()) : up.p50();
    return placed(s.foot(), down, up, from, to, margin(s));
  }

  private @Nullable EventFit touchdown(@Nullable Landing land, Foot foot) {
    return land == null ? null : fit(land.time(), land.sd(), Math.hypot(CURVE_S, BETWEEN_FRAMES * step * step), foot);
  }

  private @Nullable EventFit toeOff(@Nullable EventFit leave, Foot foot) {
    return leave == null ? null : fit(leave.time(), leave.sd(), Math.hypot(CURVE_LEAVING_S, BETWEEN_FRAMES_LEAVING * step), foot);
  }

  /** An event whose error has in it what is common to all of its kind and what a foot that jumps about near it adds. */
  private EventFit fit(double time, double own, double common, Foot foot) {
    return new EventFit(time, Math.hypot(Math.hypot(own, common), JUMP_SD_S * Math.sqrt(jumps(foot, time))));
  }

  /** How often heel or toe leaps out of its course near a time; no foot can, a finder that loses it among the legs does. */
  private int jumps(Foot foot, double time) {
    int out = 0;
    double most = Math.hypot(JUMP_M, 0.5 * STOPS * step * step);
    for (int i = 1; i + 1 < metres.frames(); i++) {
      if (Math.abs(metres.time(i) - time) <= JUMP_NEAR_S) {
        int frame = i;
        out += List.of(Joint.HEEL, Joint.TOE).stream().anyMatch(j -> bend(BodyPoint.of(j, foot), frame) > most) ? 1 : 0;
      }
    }
    return out;
  }

  /** Distance from the middle between the neighbours in time [m]; 0 where one of the three was not seen. */
  private double bend(BodyPoint p, int i) {
    if (!metres.seen(p, i - 1) || !metres.seen(p, i) || !metres.seen(p, i + 1)) {
      return 0;
    }
    return metres.spot(p, i).to(metres.spot(p, i - 1).towards(metres.spot(p, i + 1), 0.5));
  }

  private Contact placed(Foot foot, @Nullable Estimate down, @Nullable Estimate up, double from, double to, double footSure) {
    double span = Math.max(0.02, to - from);
    double settled = from + Math.min(0.03, 0.3 * span);
    FootPath toeAlone = feet.alone(Joint.TOE, foot);
    Estimate heel = standing(feet.alone(Joint.HEEL, foot), from, from + 0.4 * span);
    Estimate toe = stiffToe(foot, toeAlone, settled, from + FLAT * span);
    double leaves = to - Math.min(0.01, 0.1 * span);
    if (toe == null) {
      toe = place(toeAlone, Double.POSITIVE_INFINITY, settled, leaves);
    }
    double length = feet.length(foot);
    if (heel != null && !Double.isNaN(length) && !strayed(heel) && (toe == null || strayed(toe))) {
      // the toe was out of sight or on the other foot while it stood: the heel and the foot's own length say it better than a path over the
      // gap; of strayed samples the range stays, since the heel may have gone with them
      double sd = toe == null ? Math.hypot(heel.halfWidth() / Estimate.Z95, BY_HEEL_M) : toe.halfWidth() / Estimate.Z95;
      toe = Estimate.normal(heel.p50() + length, sd);
    }
    if (toe == null) {
      toe = standing(toeAlone, settled, leaves);
    }
    Estimate seen = toe == null ? heel : toe;
    if (seen == null) {
      throw new RefusedException(
          "Neither heel nor toe of the " + foot.label() + " foot is seen in 5 frames, so nobody can say where it stood. "
              + "Put its toe in its place in at least 5 frames of the contact, or leave the contact out.");
    }
    return new Contact(foot, down, up, toe == null ? besides(seen) : toe, heel == null ? besides(seen) : heel, false, footSure);
  }

  /** Whether samples spread so far that they are not of one standing foot. */
  private static boolean strayed(Estimate place) {
    return place.halfWidth() > STRAYED_M * Estimate.Z95;
  }

  /** Where the toe stood by the stiff foot while it is flat, from the samples that say more than the toe alone; null if too few. */
  private @Nullable Estimate stiffToe(Foot foot, @Nullable FootPath alone, double from, double flat) {
    return alone == null ? null : place(feet.toe(foot), alone.smooth().noise(), from, flat);
  }

  /** Where a point stood by its own samples, or by its smoothed path where it was out of sight; null if hardly ever seen. */
  private @Nullable Estimate standing(@Nullable FootPath path, double from, double to) {
    Estimate seen = place(path, Double.POSITIVE_INFINITY, from, to);
    if (seen != null || path == null) {
      return seen;
    }
    int mid = motion.frameBefore((from + to) / 2);
    return Estimate.normal(path.smooth().x()[mid], Math.hypot(path.smooth().sd()[mid], PLACE_LEAST_M));
  }

  /** All that is known of a foot's other end where only one was seen. */
  private static Estimate besides(Estimate seen) {
    return Estimate.normal(seen.p50(), Math.hypot(seen.halfWidth() / Estimate.Z95, FOOT_M));
  }

  /** Where a point stood: the mean of the middle half of its samples that err no more than {@code worst} [m]; null with fewer than 2. */
  private @Nullable Estimate place(@Nullable FootPath path, double worst, double from, double to) {
    if (path == null) {
      return null;
    }
    double[] v =
        IntStream.of(path.between(from - 0.5 * step, to + 0.5 * step))
            .filter(i -> path.forward_m()[i] <= worst).mapToDouble(i -> path.x()[i]).sorted().toArray();
    if (v.length < FEWEST_STANDING) {
      return null;
    }
    int cut = v.length / 4;
    double mean = Arrays.stream(v, cut, v.length - cut).average().orElseThrow();
    // a foot that was still coming or already going spreads its samples; at few frames a second that is most of the error
    double spread = Math.sqrt(Arrays.stream(v).map(x -> (x - mean) * (x - mean)).sum() / (v.length - 1));
    // noise that lasts about 0.04 s: so many independent looks, not n; one point's noise, because a network errs alike in all of a foot
    double looks = Math.max(1, Math.min(v.length, 1 + (to - from) / 0.08));
    return Estimate.normal(mean, Math.hypot(Math.max(path.smooth().noise() * 1.4, spread) / Math.sqrt(looks), PLACE_LEAST_M));
  }

  /** Two feet that come down together at the end are the landing of the jump; anywhere else they are not. */
  private static List<Contact> joinLandings(List<Contact> all, double together_s) {
    List<Contact> out = new ArrayList<>(all);
    int i = out.size() - 2;
    if (i < 0) {
      return List.copyOf(out);
    }
    Contact a = out.get(i);
    Contact b = out.get(i + 1);
    Estimate downA = a.touchdown_s();
    Estimate downB = b.touchdown_s();
    if (a.foot() != b.foot() && downA != null && downB != null && Math.abs(downA.p50() - downB.p50()) < together_s) {
      Contact back = a.heel_m().p50() <= b.heel_m().p50() ? a : b;
      Estimate down = downA.p50() <= downB.p50() ? downA : downB;
      out.set(i, new Contact(back.foot(), down, null, back.place_m(), back.heel_m(), true, back.footSure()));
      out.remove(i + 1);
    }
    return List.copyOf(out);
  }
}
