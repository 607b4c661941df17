package boundwright.clip.desk;

import boundwright.clip.contact.Contact;
import boundwright.clip.reading.ClipReading;
import boundwright.clip.reading.ReadContact;
import boundwright.clip.reading.SequenceMatch;
import boundwright.flight.Rep;
import boundwright.footfall.Sequence;
import boundwright.quantity.Estimate;
import boundwright.quantity.RefusedException;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** The rep that a clip shows. */
public final class SeenRep {
  /** Contact times less sure than this are not kept [s] (judgement). */
  private static final double SURE_S = 0.03;

  private SeenRep() {}

  /**
   * The rep that the clip shows. Positions are measured from the toe of the first contact, which is taken to stand on the
   * mark.
   *
   * @param faults as ticked by the coach, {@code key@contact}
   * @throws RefusedException if no contact or no length was read
   */
  public static Rep of(ClipRecord clip, ClipReading reading, List<String> faults) {
    SequenceMatch match = reading.match();
    if (match == null || !reading.scaled()) {
      throw new RefusedException(
          match == null
              ? "The clip shows no contact, so there is no rep to log. Add contacts by hand, or log the rep from the tape."
              : clip.setup().scaled()
              ? "The camera could not be followed, so there are no lengths. Log the rep from the tape."
              : "The clip has no marks and so no lengths. Mark two places on the runway, or log the rep from the tape.");
    }
    int size = clip.sequence() == null ? match.sequence().size() : Math.min(clip.sequence().size(), match.sequence().size());
    double mark = reading.contacts().get(match.first()).contact().place_m().p50();
    List<Double> prints = new ArrayList<>();
    for (int k = 1; k < size; k++) {
      prints.add(round(reading.contacts().get(match.first() + k).contact().place_m().p50() - mark));
    }
    @Nullable Double landing = null;
    int after = match.first() + size;
    boolean whole = clip.sequence() == null || size == clip.sequence().size();
    if (whole && after < reading.contacts().size()) {
      ReadContact next = reading.contacts().get(after);
      Contact c = next.contact();
      landing = round((c.bothFeet() ? c.heel_m() : c.place_m()).p50() - mark);
    }
    Sequence sequence = clip.sequence() == null ? match.sequence() : clip.sequence();
    return new Rep(
        0, clip.athleteId(), clip.date(), sequence, clip.approachSteps(), clip.surface(), prints, landing, null, clip.markToSand_m(), true,
        faults);
  }

  /** How long each contact of the rep was on the ground [s]; NaN where an end was not seen within {@value #SURE_S} s. */
  static List<Double> contactTimes(ClipReading reading, int size) {
    SequenceMatch match = reading.match();
    List<Double> out = new ArrayList<>();
    for (int k = 0; match != null && k < size && match.first() + k < reading.contacts().size(); k++) {
      Estimate time = reading.contacts().get(match.first() + k).contact().duration_s();
      out.add(time == null || time.halfWidth() > SURE_S ? Double.NaN : time.p50());
    }
    return out;
  }

  private static double round(double metres) {
    return Math.rint(metres * 1000) / 1000;
  }
}
