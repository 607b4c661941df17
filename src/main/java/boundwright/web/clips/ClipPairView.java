package boundwright.web.clips;

import boundwright.picture.BodyPicture;
import boundwright.picture.StripPaths;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/**
 * Two clips side by side at the same time from the touchdown of the same contact.
 *
 * @param left the first
 * @param right the second
 * @param at number of the contact in the sequence, from 1
 * @param contacts how many contacts both show
 * @param ms time from touchdown [ms]
 * @param step from picture to picture [ms]
 * @param said what differs from what was asked, or empty
 * @param strip every contact that both show, at touchdown, one above the other
 */
public record ClipPairView(
    Half left, Half right, int at, int contacts, double ms, double step, String said, List<Column> strip) {
  /**
   * A contact of both, one above the other.
   *
   * @param number of the contact, from 1
   * @param upper of the first clip, at touchdown
   * @param lower of the second
   */
  public record Column(int number, Half upper, Half lower) {}

  /**
   * One of the two.
   *
   * @param line the clip
   * @param name the contact's name
   * @param right whether it is a right foot
   * @param picture its frame
   * @param stillKept whether the picture is there
   * @param brief time on the ground and the length of the flight, for the strip
   * @param facts time on the ground, flight and foot strike
   * @param turned whether it is shown turned round, so that both run the same way
   * @param touchdown_s of the contact [s]
   */
  public record Half(
      ClipsView.Line line, String name, boolean right, BodyPicture picture, boolean stillKept, String brief, List<String> facts, boolean turned,
      double touchdown_s) {
    /** How the picture is turned round, as SVG writes it; empty where it is not. */
    public String turn() {
      return turned ? "translate(" + StripPaths.number(2 * picture.view().x() + picture.view().width()) + " 0) scale(-1 1)" : "";
    }

    /** The touchdown's time in the clip [ms]. */
    public String zero() {
      return String.format(Locale.ROOT, "%.1f", 1000 * touchdown_s);
    }

    /** Address of the picture. */
    public String still() {
      return ClipStage.still(line.clip(), picture);
    }

    /** Where the frame lies. */
    public String time() {
      return "frame " + (picture.frame() + 1) + ", " + ClipStage.seconds(picture.time_s());
    }
  }

  private String address(int contact, double t) {
    return String.format(
        Locale.ROOT, "/clips/compare?a=%d&b=%d&at=%d&t=%.2f", left.line().clip().id(), right.line().clip().id(), contact, t);
  }

  /** One picture earlier. */
  public String back() {
    return address(at, ms - step);
  }

  /** One picture later. */
  public String on() {
    return address(at, ms + step);
  }

  /** At touchdown. */
  public String touchdown() {
    return address(at, 0);
  }

  /** Another contact. */
  public @Nullable String contact(int n) {
    return n < 1 || n > contacts ? null : address(n, 0);
  }

  /** The two exchanged. */
  public String turned() {
    return String.format(
        Locale.ROOT, "/clips/compare?a=%d&b=%d&at=%d&t=%.2f", right.line().clip().id(), left.line().clip().id(), at, ms);
  }

  /** Time from touchdown [ms]. */
  public String now() {
    return String.format(Locale.ROOT, "%.1f", ms);
  }

  /** Whether one of the two is shown turned round. */
  public boolean turnedRound() {
    return left.turned() || right.turned();
  }

  /** Time from touchdown in words. */
  public String when() {
    long whole = Math.round(ms);
    return whole == 0 ? "at touchdown" : Math.abs(whole) + " ms " + (whole < 0 ? "before" : "after") + " touchdown";
  }
}
