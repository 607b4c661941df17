package boundwright.clip.reading;

import boundwright.technique.TeachingPoint;

/**
 * One teaching point at one contact, in words.
 *
 * @param point which
 * @param contact number of the contact in the sequence, from 1
 * @param finding what was seen
 * @param sentence value, limit and what it means
 */
public record PointVerdict(TeachingPoint point, int contact, Finding finding, String sentence) {
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
