package boundwright.clip.reading;

import boundwright.clip.Coherent;
import boundwright.clip.contact.Contact;
import boundwright.clip.track.Track;
import boundwright.flight.Projectile;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * A clip as read.
 *
 * @param athlete the coherent athlete behind it
 * @param contacts all contacts on one foot, and the landing last if it was seen
 * @param flights one fewer than contacts
 * @param match where the sequence begins, or null without a contact
 * @param verdicts the teaching points, contact by contact
 * @param scaled whether lengths stand
 * @param model name of the model behind the centre of mass
 * @param remarks sentences for the coach
 */
public record ClipReading(
    Coherent athlete,
    List<ReadContact> contacts,
    List<ReadFlight> flights,
    @Nullable SequenceMatch match,
    List<PointVerdict> verdicts,
    boolean scaled,
    String model,
    List<String> remarks) {
  /** How far the fall in a flight may be from free fall so that it is taken as one (judgement; beside it the fit's own error). */
  private static final double FREE = 0.05;

  /** Copies the lists. */
  public ClipReading {
    contacts = List.copyOf(contacts);
    flights = List.copyOf(flights);
    verdicts = List.copyOf(verdicts);
    remarks = List.copyOf(remarks);
  }

  /** The frame of the track shown nearest to a time [s]. */
  public int frameAt(double time_s) {
    return athlete.pixels().nearest(time_s);
  }

  /** Time of a frame of the track [s], slowing taken out. */
  public double time(int frame) {
    return athlete.pixels().time(frame);
  }

  /** The contact that holds a time [s], or the one nearest to it; -1 where there is no contact. */
  public int contactAt(double time_s) {
    int best = -1;
    double nearest = Double.POSITIVE_INFINITY;
    for (int i = 0; i < contacts.size(); i++) {
      double off = Math.max(0, Math.max(begin(i) - time_s, time_s - end(i)));
      if (off < nearest) {
        nearest = off;
        best = i;
      }
    }
    return best;
  }

  /** When a contact begins, or the middle of what was seen of it [s]. */
  public double begin(int contact) {
    Contact c = contacts.get(contact).contact();
    return c.touchdown_s() == null ? c.middle_s() : c.touchdown_s().p50();
  }

  /** When a contact ends, or the middle of what was seen of it [s]. */
  public double end(int contact) {
    Contact c = contacts.get(contact).contact();
    return c.toeOff_s() == null ? c.middle_s() : c.toeOff_s().p50();
  }

  /** From the touchdown of a contact to a time, negative before it [s]; NaN where the touchdown was not seen. */
  public double sinceTouchdown(int contact, double time_s) {
    Contact c = contacts.get(contact).contact();
    return c.touchdown_s() == null ? Double.NaN : time_s - c.touchdown_s().p50();
  }

  /** From the toe-off of a contact to a time, negative before it [s]; NaN where the toe-off was not seen. */
  public double sinceToeOff(int contact, double time_s) {
    Contact c = contacts.get(contact).contact();
    return c.toeOff_s() == null ? Double.NaN : time_s - c.toeOff_s().p50();
  }

  /** Number of a contact in the sequence, from 1; 0 for the run-up and for the landing. */
  public int number(int contact) {
    SequenceMatch m = match;
    if (m == null || contact < m.first() || contact >= m.first() + m.sequence().size()) {
      return 0;
    }
    return contact - m.first() + 1;
  }

  /** Whether a contact follows the last one of the sequence. */
  public boolean isAfter(int contact) {
    SequenceMatch m = match;
    return m != null && contact >= m.first() + m.sequence().size();
  }

  /** The contact with this number in the sequence, from 0; -1 if it was not seen. */
  public int withNumber(int number) {
    SequenceMatch m = match;
    return m == null || number < 1 || number > m.sequence().size() ? -1 : m.first() + number - 1;
  }

  /**
   * The take-off into the flight before the first landing on both feet; empty without a scale, such a landing, or all of its speeds and
   * heights, or where the body does not fall freely in that flight (to 5 %): then a time of it or the scale is wrong.
   */
  public Optional<LastTakeOff> lastTakeOff() {
    for (int i = 0; scaled && i + 1 < contacts.size(); i++) {
      if (contacts.get(i + 1).contact().bothFeet()) {
        ReadContact c = contacts.get(i);
        ReadFlight f = flights.get(i);
        double all = f.speed_ms() + f.upSpeed_ms() + f.height_m() + f.landingHeight_m() + f.ahead_m();
        boolean free = Math.abs(f.fallen_ms2() - Projectile.G) <= FREE * Projectile.G;
        return c.contact().bothFeet() || Double.isNaN(all) || !free
            ? Optional.empty()
            : Optional.of(
                new LastTakeOff(
                    c.contact().foot(), Double.isNaN(c.speedIn_ms()) ? null : (Double) c.speedIn_ms(), c.touchdownDistance_m(), f.speed_ms(), f.upSpeed_ms(), f.height_m(),
                    f.landingHeight_m(), f.ahead_m()));
      }
    }
    return Optional.empty();
  }

  /** What the teaching points say of a contact. */
  public List<PointVerdict> verdicts(int contact) {
    int n = number(contact);
    return verdicts.stream().filter(v -> n > 0 && v.contact() == n).toList();
  }

  /** The legs exchanged from the middle of the flight before a contact to the middle of the flight after it. */
  public Correction.ExchangeLegs exchangeLegs(int contact) {
    Track t = athlete.pixels();
    double from = contact == 0 ? t.time(0) : (end(contact - 1) + begin(contact)) / 2;
    double to = contact + 1 == contacts.size() ? t.time(t.frames() - 1) : (end(contact) + begin(contact + 1)) / 2;
    return new Correction.ExchangeLegs(from, to);
  }
}
