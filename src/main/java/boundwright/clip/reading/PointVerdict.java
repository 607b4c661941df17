package boundwright.clip.reading;

import boundwright.quantity.LengthUnit;
import boundwright.technique.FootContact;
import boundwright.technique.TeachingPoint;
import java.util.List;

/**
 * One teaching point at one contact, in words.
 *
 * @param point which
 * @param contact number of the contact in the sequence, from 1
 * @param finding what was seen
 * @param words value, limit and what it means, with {0}, {1} where lengths stand
 * @param lengths_m these lengths [m]
 * @param taught how the foot is taught to meet the ground
 */
public record PointVerdict(TeachingPoint point, int contact, Finding finding, String words, List<Double> lengths_m, FootContact taught) {
  /** Copies the lengths. */
  public PointVerdict {
    lengths_m = List.copyOf(lengths_m);
  }

  /** What was looked for, as taught. */
  public String lookFor() {
    return point.lookFor(taught);
  }

  /** What is ticked when it was not there, as taught. */
  public String wentWrong() {
    return point.wentWrong(taught);
  }

  /** Value, limit and what it means, lengths in metres. */
  public String sentence() {
    return sentence(LengthUnit.METRES);
  }

  /** The same with lengths in the coach's unit. */
  public String sentence(LengthUnit unit) {
    String out = words;
    for (int i = 0; i < lengths_m.size(); i++) {
      out = out.replace("{" + i + "}", unit.write(lengths_m.get(i)));
    }
    return out;
  }

  /** What was seen. */
  public enum Finding {
    /** As taught. */
    GOOD,
    /** Too near the limit for the error of the measurement. */
    UNSURE,
    /** Not as taught. */
    FAULT
  }

  /** How a rep keeps it: the point's key and the contact. */
  public String faultKey() {
    return point.key() + "@" + contact;
  }
}
