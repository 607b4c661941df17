package boundwright.clip.reading;

import boundwright.clip.Coherent;
import boundwright.clip.FoundClip;
import boundwright.clip.body.FreeFlight;
import boundwright.clip.body.Posture;
import boundwright.clip.body.Strike;
import boundwright.clip.camera.CameraPath;
import boundwright.clip.contact.Contact;
import boundwright.clip.contact.ContactFinder;
import boundwright.clip.propose.Proposer;
import boundwright.clip.scale.PlaneMap;
import boundwright.clip.track.BodyPoint;
import boundwright.clip.track.Joint;
import boundwright.clip.track.Motion;
import boundwright.clip.track.Spot;
import boundwright.clip.track.Track;
import boundwright.footfall.Foot;
import boundwright.footfall.Sequence;
import boundwright.quantity.Estimate;
import boundwright.technique.FootContact;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/**
 * Reads a clip from its raw body points. Pure: the same points, setup and corrections give the same reading, on the page,
 * on the command line and years later.
 */
public final class ClipReader {
  /** A flight is fitted from this long after toe-off to this long before touchdown [s]. */
  private static final double CLEAR_S = 0.015;
  /** Free fall outside this share of g makes the heights doubtful. */
  private static final double G_DOUBT = 0.15;
  /** How far back before a touchdown the beginning of the strike is sought [s]. */
  private static final double STRIKE_S = 0.25;
  /**
   * A longer flight is doubted [s]: landing at the height it left, the centre of mass would rise g t^2/8 = 0.6 m, more than
   * anybody's from one leg (judgement). Into sand the body falls further than it rose.
   */
  private static final double LONGEST_S = 0.7;
  private static final double LONGEST_TO_SAND_S = 0.95;

  private final Coherent athlete;
  private final Motion motion;
  private final Posture posture;

  private final CameraError camera;

  private ClipReader(Coherent athlete, Setup setup, CameraError camera) {
    this.athlete = athlete;
    this.camera = camera;
    this.motion = athlete.motion();
    this.posture = new Posture(motion, setup.model());
  }

  /**
   * Reads a clip.
   *
   * @param clip raw body points
   * @param setup marks and scale
   * @param corrections in the order in which they were made
   * @param asked the sequence of the card, or null
   * @throws boundwright.quantity.RefusedException if marks or corrections cannot hold, or no leg was seen
   */
  public static ClipReading read(FoundClip clip, Setup setup, List<Correction> corrections, @Nullable Sequence asked) {
    return read(clip, setup, corrections, asked, FootContact.HEEL_ROLLS);
  }

  /** The same where the foot is taught to meet the ground so. */
  public static ClipReading read(FoundClip clip, Setup setup, List<Correction> corrections, @Nullable Sequence asked, FootContact taught) {
    return read(clip, setup, corrections, asked, taught, Proposer.shipped());
  }

  /** The same where somebody else says which foot stands. */
  public static ClipReading read(
      FoundClip clip, Setup marked, List<Correction> corrections, @Nullable Sequence asked, FootContact taught, Proposer net) {
    // where the ground was not followed marks say nothing: feet, times and angles only, and the reason
    Setup setup = clip.camera().noLengths().isPresent() ? marked.unmarked() : marked;
    Track found = clip.track();
    if (setup.slowed() != 1) {
      found = found.atTimes(Arrays.stream(found.times()).map(t -> t / setup.slowed()).toArray());
    }
    ByHand hand = new ByHand(corrections);
    PlaneMap plane = setup.plane(clip);
    Coherent athlete = Coherent.of(found, net, (frame, spot) -> plane.toPlane(clip.camera().carry(frame, spot)), stays(clip.camera()), hand::sides, hand::points);
    if (setup.scaled()) {
      athlete.refuseBackwards();
    }
    boolean slides = stays(clip.camera()) && !athlete.stays();
    List<String> said = before(clip, setup);
    if (!net.said().isEmpty()) {
      said.add(net.said());
    }
    if (slides) {
      said.add(FilmDoubts.SLIDES);
    }
    Setup known = slides ? setup.unmarked() : setup;
    return new ClipReader(athlete, known, new CameraError(clip, known, plane)).read(hand, known, asked, taught, said, slides || clip.camera().noLengths().isPresent());
  }

  /** Whether a standing foot stays where it is; a plain background shows no movement, and the fits are checked against the network. */
  private static boolean stays(CameraPath camera) {
    return camera.followed() || camera.kind() == CameraPath.Kind.PLAIN;
  }

  /** What is to be said before anything is read: remarks of the film, and of the camera. */
  private static List<String> before(FoundClip clip, Setup setup) {
    List<String> out = new ArrayList<>(clip.remarks());
    clip.camera().remark().ifPresent(out::add);
    if (setup.scaled() && clip.camera().carries() && !setup.markedFarApart(clip) && clip.camera().turned_deg() > 15) {
      out.add(
          String.format(
              Locale.ROOT,
              "The camera turned by %.0f degrees and was followed. With marks in one frame lengths may be off by 1 to 4 cm over 20 m; two marks in each of two far frames bring it below 2 cm.",
              clip.camera().turned_deg()));
    }
    return out;
  }

  private ClipReading read(ByHand hand, Setup setup, @Nullable Sequence asked, FootContact taught, List<String> before, boolean noLengths) {
    ContactFinder finder = athlete.finder();
    List<ByHand.Marked> marked = hand.contacts(finder, athlete.metres());
    @Nullable String refused = marked.isEmpty() ? finder.refusal() : null;
    List<ReadFlight> flights = new ArrayList<>();
    for (int i = 0; i + 1 < marked.size(); i++) {
      flights.add(flight(marked.get(i).contact(), marked.get(i + 1).contact(), setup.scaled()));
    }
    List<ReadContact> contacts = new ArrayList<>();
    for (int i = 0; i < marked.size(); i++) {
      double in = i > 0 ? flights.get(i - 1).speed_ms() : Double.NaN;
      double out = i < flights.size() ? flights.get(i).speed_ms() : Double.NaN;
      @Nullable Contact next = i + 1 < marked.size() ? marked.get(i + 1).contact() : null;
      contacts.add(contact(marked.get(i), next, in, out));
    }
    @Nullable SequenceMatch match = match(contacts, flights, asked);
    List<String> remarks = new ArrayList<>(before);
    if (contacts.isEmpty()) {
      remarks.remove(FilmDoubts.SLIDES);
      remarks.add(refused == null ? "No contact was found. Film the feet from the side, or add contacts by hand." : refused);
    }
    remarks.addAll(FilmDoubts.of(contacts, flights, setup, athlete.stays()));
    remark(remarks, setup, contacts, flights, match, asked, noLengths);
    List<PointVerdict> verdicts = match == null ? List.of() : Judge.all(contacts, match, setup, taught);
    return new ClipReading(athlete, contacts, flights, match, verdicts, setup.scaled(), posture.modelLabel(), remarks);
  }

  private ReadFlight flight(Contact from, Contact to, boolean scaled) {
    Estimate up = from.toeOff_s();
    Estimate down = to.touchdown_s();
    // a walker has the next foot down before the last is up: there is no flight
    @Nullable Estimate time = up == null || down == null || down.p50() <= up.p50() ? null : Contact.between(up, down);
    @Nullable Estimate length =
        scaled ? camera.grown(Contact.between(from.place_m(), to.bothFeet() ? to.heel_m() : to.place_m()), from, to) : null;
    double begin = up == null ? motion.time(0) : up.p50() + CLEAR_S;
    double end = down == null ? motion.time(motion.frames() - 1) : down.p50() - CLEAR_S;
    FreeFlight free = free(begin, end);
    if (free == null) {
      return new ReadFlight(time, length, Double.NaN, Double.NaN, Double.NaN, Double.NaN, Double.NaN, Double.NaN);
    }
    double off = up == null ? Double.NaN : up.p50();
    // at an unknown time all of these are NaN
    return new ReadFlight(
        time, length, free.vx(), free.vyAt(off), free.freeG(), free.yAt(off), free.yAt(down == null ? Double.NaN : down.p50()), free.xAt(off) - from.place_m().p50());
  }

  private @Nullable FreeFlight free(double begin, double end) {
    List<double[]> seen = new ArrayList<>();
    for (int i = 0; i < motion.frames(); i++) {
      double t = motion.time(i);
      if (t >= begin && t <= end) {
        Spot c = posture.centreOfMass(t);
        if (c.known()) {
          seen.add(new double[] {t, c.x(), c.y()});
        }
      }
    }
    if (seen.size() < 4) {
      return null;
    }
    return FreeFlight.fit(column(seen, 0), column(seen, 1), column(seen, 2));
  }

  private static double[] column(List<double[]> rows, int k) {
    return rows.stream().mapToDouble(r -> r[k]).toArray();
  }

  private ReadContact contact(ByHand.Marked marked, @Nullable Contact next, double in, double out) {
    Contact c = marked.contact();
    Estimate down = c.touchdown_s();
    if (down == null || c.bothFeet()) {
      double none = Double.NaN;
      return new ReadContact(c, marked.fromHand(), null, none, none, null, none, none, none, none, none, in, out);
    }
    double t = down.p50();
    @Nullable Estimate ahead = TouchdownDistance.of(c, posture);
    double flat = flatAngle(c);
    double strike = footAngle(c.foot(), t) - flat;
    double until = next != null && next.touchdown_s() != null ? next.touchdown_s().p50() : t + 0.4;
    double thigh = Double.NaN;
    double heel = Double.NaN;
    for (int i = 0; i < motion.frames(); i++) {
      double at = motion.time(i);
      if (at >= t && at <= until) {
        thigh = max(thigh, posture.thighDeg(c.foot().other(), at));
        double h = posture.heelToHip(c.foot().other(), at);
        heel = Double.isNaN(heel) || h < heel ? h : heel;
      }
    }
    return new ReadContact(
        c, marked.fromHand(), ahead, posture.trunkLeanDeg(t), strike, Double.isNaN(strike) ? null : Strike.of(strike), thigh, heel,
        posture.ankleDeg(c.foot(), t - 0.03), strikeFrom(c.foot(), t), footSpeed(c.foot(), t - 0.012), in, out);
  }

  /** Heel-to-toe line against the ground [degrees], toe up positive. */
  private double footAngle(Foot foot, double t) {
    Spot heel = motion.at(BodyPoint.of(Joint.HEEL, foot), t);
    Spot toe = motion.at(BodyPoint.of(Joint.TOE, foot), t);
    return Math.toDegrees(Math.atan2(toe.y() - heel.y(), toe.x() - heel.x()));
  }

  /** The same while the foot stood: the median of the middle half of the contact. */
  private double flatAngle(Contact c) {
    Estimate down = c.touchdown_s();
    double from = down == null ? motion.time(0) : down.p50();
    double to = c.toeOff_s() == null ? from + 0.15 : c.toeOff_s().p50();
    List<Double> seen = new ArrayList<>();
    for (int i = 0; i < motion.frames(); i++) {
      double t = motion.time(i);
      double a = footAngle(c.foot(), t);
      if (t >= from + 0.25 * (to - from) && t <= from + 0.6 * (to - from) && !Double.isNaN(a)) {
        seen.add(a);
      }
    }
    seen.sort(null);
    return seen.isEmpty() ? Double.NaN : seen.get(seen.size() / 2);
  }

  private Spot footMiddle(Foot foot, double t) {
    return motion.at(BodyPoint.of(Joint.HEEL, foot), t).towards(motion.at(BodyPoint.of(Joint.TOE, foot), t), 0.5);
  }

  private double footSpeed(Foot foot, double t) {
    return (motion.speed(BodyPoint.of(Joint.HEEL, foot), t).x() + motion.speed(BodyPoint.of(Joint.TOE, foot), t).x()) / 2;
  }

  private double hipSpeed(double t) {
    return (motion.speed(BodyPoint.LEFT_HIP, t).x() + motion.speed(BodyPoint.RIGHT_HIP, t).x()) / 2;
  }

  /** Where, going back from touchdown, the foot last moved forward against the hips: its height above its standing height. */
  private double strikeFrom(Foot foot, double touchdown) {
    double standing = footMiddle(foot, touchdown + 0.04).y();
    for (int i = motion.frameBefore(touchdown); i >= 0 && motion.time(i) > touchdown - STRIKE_S; i--) {
      double t = motion.time(i);
      double against = footSpeed(foot, t) - hipSpeed(t);
      if (Double.isNaN(against)) {
        return Double.NaN;
      }
      if (against > 0) {
        return footMiddle(foot, t).y() - standing;
      }
    }
    return Double.NaN;
  }

  private static @Nullable SequenceMatch match(List<ReadContact> contacts, List<ReadFlight> flights, @Nullable Sequence asked) {
    List<Foot> feet = new ArrayList<>();
    boolean landed = false;
    for (ReadContact c : contacts) {
      if (c.contact().bothFeet()) {
        landed = true;
        break;
      }
      feet.add(c.contact().foot());
    }
    if (feet.isEmpty()) {
      return null;
    }
    double[] time = new double[feet.size()];
    Arrays.fill(time, Double.NaN);
    for (int i = 0; i < Math.min(time.length, flights.size()); i++) {
      Estimate t = flights.get(i).time_s();
      time[i] = t == null ? Double.NaN : t.p50();
    }
    return SequenceMatch.of(feet, time, landed, asked);
  }

  private static void remark(
      List<String> out, Setup setup, List<ReadContact> contacts, List<ReadFlight> flights, @Nullable SequenceMatch match,
      @Nullable Sequence asked, boolean noLengths) {
    if (!setup.scaled() && !noLengths) {
      out.add("No marks were set, so there are feet, times and angles but no lengths. Mark two places on the runway.");
    } else if (setup.scaled() && !setup.scaledUpwards()) {
      out.add("Heights are taken from the ground's scale: right for a level camera. Mark something upright of known height to be sure.");
    }
    missed(out, contacts, flights);
    double[] fallen = flights.stream().mapToDouble(ReadFlight::fallen_ms2).filter(g -> !Double.isNaN(g)).sorted().toArray();
    if (fallen.length >= 2 && setup.scaled()) {
      double g = fallen[fallen.length / 2];
      if (Math.abs(g / 9.81 - 1) > G_DOUBT) {
        out.add(
            String.format(
                Locale.ROOT,
                "In flight the body falls with %.1f m/s2 instead of 9.8: the scale or the film's speed is not what was set. A film slowed 8 times would show 64 times less; check marks and slowing.",
                g));
      }
    }
    if (match != null && asked != null && !match.complete()) {
      out.add(
          String.format(
              Locale.ROOT, "Of the %d contacts of %s the clip shows %d. Film from further away or further along, or add what is missing by hand.",
              asked.size(), asked.text(), match.sequence().size()));
    }
    if (match != null && asked != null && match.wrongFeet() > 0) {
      out.add(
          String.format(
              Locale.ROOT, "Asked was %s, seen was %s: %d contacts on the other foot.", asked.text(), match.sequence().letters(),
              match.wrongFeet()));
    }
    if (match != null && !match.sure()) {
      out.add("Which contact is the first from the mark is not certain: check it against the clip.");
    }
  }

  private static void missed(List<String> out, List<ReadContact> contacts, List<ReadFlight> flights) {
    for (int i = 0; i < flights.size(); i++) {
      @Nullable Estimate up = contacts.get(i).contact().toeOff_s();
      @Nullable Estimate down = contacts.get(i + 1).contact().touchdown_s();
      double most = contacts.get(i + 1).contact().bothFeet() ? LONGEST_TO_SAND_S : LONGEST_S;
      if (up != null && down != null && down.p50() - up.p50() > most) {
        out.add(
            String.format(
                Locale.ROOT,
                "From %.2f s to %.2f s nobody touches the ground, %.2f s in all; %.1f s is the most a flight takes. A contact was missed there, or the film plays slower than it was filmed. Step through it and say where the contact begins, or set how many times slower it plays.",
                up.p50(), down.p50(), down.p50() - up.p50(), most));
      }
    }
  }

  private static double max(double a, double b) {
    return Double.isNaN(a) || b > a ? b : a;
  }
}
