package boundwright.web.clips;

import boundwright.clip.contact.Contact;
import boundwright.clip.desk.ClipRecord;
import boundwright.clip.reading.ClipReading;
import boundwright.clip.reading.PointVerdict;
import boundwright.clip.reading.ReadContact;
import boundwright.picture.BodyPicture;
import boundwright.quantity.Estimate;
import boundwright.quantity.LengthUnit;
import boundwright.web.page.Frame;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * One frame of a clip, large, with what can be put right at it.
 *
 * @param clip what is kept
 * @param reading the clip as it reads now
 * @param picture the frame
 * @param stillsKept frames of the track, from 0, whose pictures are there, of this one and its neighbours
 * @param contact the contact that holds the frame or is nearest, from 0; -1 without contacts
 * @param begin frame of the track at which the coach began a contact, from 0; -1 if none
 * @param whole whether all of the film's picture is shown
 * @param unit the coach's unit
 */
public record ClipStage(
    ClipRecord clip, ClipReading reading, BodyPicture picture, Set<Integer> stillsKept, int contact, int begin, boolean whole,
    LengthUnit unit) {

  /** The clip's page. */
  public String address() {
    return "/clips/" + clip.id();
  }

  /** Number of the frame as it is shown, from 1. */
  public int frame() {
    return picture.frame() + 1;
  }

  /** How many frames there are. */
  public int frames() {
    return reading.athlete().pixels().frames();
  }

  /** Address of another frame, counted from 1, with the rest as it is. */
  public String at(int frame) {
    return at(frame, begin, whole);
  }

  private String at(int frame, int beginning, boolean all) {
    return address() + "?frame=" + frame + (beginning < 0 ? "" : "&begin=" + (beginning + 1)) + (all ? "&view=whole" : "");
  }

  /** Address with the other cut of the picture. */
  public String turned() {
    return at(frame(), begin, !whole);
  }

  /** Address with a contact that begins at this frame. */
  public String beginsHere() {
    return at(frame(), picture.frame(), whole);
  }

  /** Address without a begun contact. */
  public String notBegun() {
    return at(frame(), -1, whole);
  }

  /** Frame before this one, from 1; null at the first. */
  public @Nullable Integer before() {
    return frame() > 1 ? (Integer) (frame() - 1) : null;
  }

  /** Frame after this one, from 1; null at the last. */
  public @Nullable Integer after() {
    return frame() < frames() ? (Integer) (frame() + 1) : null;
  }

  /** Frame at which the contact before begins, from 1; null where there is none. */
  public @Nullable Integer contactBefore() {
    return contact > 0 ? (Integer) (reading.frameAt(reading.begin(contact - 1)) + 1) : null;
  }

  /** Frame at which the contact after begins, from 1; null where there is none. */
  public @Nullable Integer contactAfter() {
    return contact >= 0 && contact + 1 < reading.contacts().size() ? (Integer) (reading.frameAt(reading.begin(contact + 1)) + 1) : null;
  }

  /** Address of the picture. */
  public String still() {
    return still(clip, picture);
  }

  static String still(ClipRecord clip, BodyPicture picture) {
    return still(clip, String.valueOf(picture.still()));
  }

  /** Address of the picture of a film's frame, from 0; with when the clip came in, so that a number used twice is another address. */
  static String still(ClipRecord clip, String filmFrame) {
    return "/clips/" + clip.id() + "/still/" + filmFrame + ".jpg?v=" + clip.added().toEpochMilli();
  }

  /** Whether the frame's picture is there. */
  public boolean stillKept() {
    return stillsKept.contains(picture.frame());
  }

  /** Address of a neighbour's picture, for the browser to have at hand; null where there is none. */
  public @Nullable String stillAt(int frame) {
    return !stillsKept.contains(frame - 1) ? null : still(clip, String.valueOf(picture.still() - frame() + frame));
  }

  /** When the frame was filmed [ms]. */
  public String ms() {
    return String.format(Locale.ROOT, "%.1f", 1000 * picture.time_s());
  }

  /** When the frame was filmed. */
  public String time() {
    return seconds(picture.time_s());
  }

  /** When the begun contact begins. */
  public String begun() {
    return "frame " + (begin + 1) + ", " + seconds(reading.time(begin));
  }

  static String seconds(double s) {
    return String.format(Locale.ROOT, "%.3f s", s);
  }

  /** Where the frame lies against the contact: {@code 4 ms before touchdown}, {@code on the ground for 30 ms}. */
  public String place() {
    if (contact < 0) {
      return "";
    }
    double down = reading.sinceTouchdown(contact, picture.time_s());
    if (Double.isNaN(down)) {
      return "";
    }
    double up = reading.sinceToeOff(contact, picture.time_s());
    if (Math.round(1000 * down) == 0) {
      return "at touchdown";
    }
    if (down < 0) {
      return String.format(Locale.ROOT, "%.0f ms before touchdown", -1000 * down);
    }
    return up > 0
        ? String.format(Locale.ROOT, "%.0f ms after toe-off", 1000 * up)
        : String.format(Locale.ROOT, "%.0f ms after touchdown", 1000 * down);
  }

  /** The contact, or null without one. */
  public @Nullable ReadContact chosen() {
    return contact < 0 ? null : reading.contacts().get(contact);
  }

  /** Name of the contact. */
  public String name() {
    return contact < 0 ? "No contact" : name(reading, contact);
  }

  static String name(ClipReading reading, int contact) {
    Contact c = reading.contacts().get(contact).contact();
    int n = reading.number(contact);
    boolean later = reading.isAfter(contact);
    return c.bothFeet() ? "Landing" : (n > 0 ? "Contact " + n + ", " : later ? "After it, " : "Run-up, ") + c.foot().label();
  }

  /** Touchdown, toe-off and time on the ground with their errors. */
  public String times() {
    ReadContact c = chosen();
    if (c == null) {
      return "";
    }
    return "touchdown " + instant(c.contact().touchdown_s()) + ", toe-off " + instant(c.contact().toeOff_s()) + ", on the ground "
        + length(c.contact().duration_s());
  }

  static String instant(@Nullable Estimate time) {
    return time == null ? "not seen" : seconds(time.p50());
  }

  static String length(@Nullable Estimate time) {
    return time == null ? "not seen" : String.format(Locale.ROOT, "%.3f \u00b1 %.3f s", time.p50(), time.halfWidth());
  }

  /** What the teaching points say. */
  public List<PointVerdict> verdicts() {
    return contact < 0 ? List.of() : reading.verdicts(contact);
  }

  /** Trunk, foot and speeds in words. */
  public List<String> posture() {
    ReadContact c = chosen();
    return c == null ? List.of() : c.posture(reading.scaled(), unit);
  }
}
