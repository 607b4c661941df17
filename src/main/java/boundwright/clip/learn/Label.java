package boundwright.clip.learn;

import boundwright.clip.FoundClip;
import boundwright.clip.contact.Contact;
import boundwright.clip.reading.ClipReading;
import boundwright.clip.reading.Correction;
import boundwright.clip.reading.ReadContact;
import boundwright.clip.track.Track;
import boundwright.footfall.Foot;
import boundwright.quantity.Estimate;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A clip whose contacts a coach looked at and agreed to, one by one and all of them, with the body points they were read from.
 * It is <i>put right</i> where a hand set a foot, a touchdown or a toe-off, added or took out a contact or exchanged the legs, and
 * <i>only accepted</i> where nothing had to be changed. Between {@code from_s} and {@code to_s} there are these contacts and no others.
 *
 * @param agreed the day
 * @param slowed how many times slower the film plays; all times here have that taken out
 * @param putRight whether a hand changed a contact
 * @param from_s where the stretch begins that was agreed to [s]
 * @param to_s where it ends [s]
 * @param stands in order of their middles
 * @param exchanged for each frame, whether the legs are exchanged in the points as found
 * @param points as found; enough to train again when the film was dropped
 */
@SuppressWarnings("ArrayRecordComponent") // one flag a frame, never compared
public record Label(
    LocalDate agreed, double slowed, boolean putRight, double from_s, double to_s, List<Stand> stands, boolean[] exchanged, FoundClip points) {

  /** What is known beside the first and the last contact, as a share of a step: half a flight or less (judgement). */
  private static final double BESIDE_STEPS = 0.25;
  /** The step where fewer than two touchdowns tell it [s] (judgement). */
  private static final double STEP_S = 0.4;
  /** Touchdowns nearer than this are not a step [s], as in {@code training/contacts/film.py}. */
  private static final double LEAST_STEP_S = 0.12;

  /**
   * One end of a contact.
   *
   * @param time_s when; NaN where the clip does not show it
   * @param sd_s its error, standard deviation
   * @param byHand whether a hand set it
   */
  public record End(double time_s, double sd_s, boolean byHand) {
    /** Not shown. */
    public static final End OPEN = new End(Double.NaN, Double.NaN, false);

    /** Whether the clip shows it. */
    public boolean known() {
      return !Double.isNaN(time_s);
    }
  }

  /**
   * A foot on the ground.
   *
   * @param foot which
   * @param bothFeet whether both feet landed, then it has no end
   */
  public record Stand(Foot foot, boolean bothFeet, End down, End up) {
    double first_s(double from_s) {
      return down.known() ? down.time_s : from_s;
    }

    double last_s(double to_s) {
      return up.known() ? up.time_s : to_s;
    }

    boolean of(Foot f) {
      return bothFeet || foot == f;
    }
  }

  /** Copies the list. */
  public Label {
    stands = List.copyOf(stands);
  }

  /**
   * What a coach agreed to.
   *
   * @param corrections that the reading was made with
   * @return null where the clip shows no whole contact, so that there is nothing to learn from it
   */
  public static @Nullable Label of(FoundClip points, double slowed, List<Correction> corrections, ClipReading reading, LocalDate day) {
    List<Stand> stands = new ArrayList<>();
    for (ReadContact r : reading.contacts()) {
      Contact c = r.contact();
      stands.add(new Stand(c.foot(), c.bothFeet(), end(c.touchdown_s(), corrections), c.bothFeet() ? End.OPEN : end(c.toeOff_s(), corrections)));
    }
    if (stands.stream().noneMatch(s -> s.down.known())) {
      return null;
    }
    double beside = BESIDE_STEPS * period(stands);
    Track track = reading.athlete().pixels();
    Stand first = stands.get(0);
    Stand last = stands.get(stands.size() - 1);
    // a contact whose beginning is not shown may have had the other foot beside it, at a standing start: little is known of it
    double from = first.down.known() ? first.down.time_s - beside : first.up.known() ? first.up.time_s - beside : track.time(0);
    double to = last.up.known() ? last.up.time_s + beside : last.down.known() ? last.down.time_s + beside : track.time(track.frames() - 1);
    boolean putRight = corrections.stream().anyMatch(c -> !(c instanceof Correction.MovePoint));
    return new Label(
        day, slowed, putRight, Math.max(track.time(0), from), Math.min(track.time(track.frames() - 1), to), stands,
        reading.athlete().sides().legsExchanged().clone(), points);
  }

  private static End end(@Nullable Estimate time, List<Correction> corrections) {
    if (time == null) {
      return End.OPEN;
    }
    double t = time.p50();
    boolean byHand =
        corrections.stream().anyMatch(
            c ->
                (c instanceof Correction.Touchdown d && d.touchdown_s() == t)
                    || (c instanceof Correction.ToeOff o && o.toeOff_s() == t)
                    || (c instanceof Correction.AddContact a && (a.touchdown_s() == t || a.toeOff_s() == t)));
    return new End(t, time.halfWidth() / Estimate.Z95, byHand);
  }

  /** From one touchdown to the next, in the middle of all [s]. */
  public double period_s() {
    return period(stands);
  }

  private static double period(List<Stand> stands) {
    double[] down = stands.stream().filter(s -> s.down.known()).mapToDouble(s -> s.down.time_s).sorted().toArray();
    double[] gaps = new double[Math.max(0, down.length - 1)];
    Arrays.setAll(gaps, i -> down[i + 1] - down[i]);
    gaps = Arrays.stream(gaps).filter(g -> g > LEAST_STEP_S).sorted().toArray();
    return gaps.length == 0 ? STEP_S : gaps[gaps.length / 2];
  }

  /** The points with slowing taken out of their times. */
  public Track track() {
    Track t = points.track();
    return slowed == 1 ? t : t.atTimes(Arrays.stream(t.times()).map(v -> v / slowed).toArray());
  }

  /** Touchdowns on one foot that the clip shows. */
  public int touchdowns() {
    return (int) stands.stream().filter(s -> !s.bothFeet && s.down.known()).count();
  }
}
