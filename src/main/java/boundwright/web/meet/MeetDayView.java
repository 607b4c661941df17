package boundwright.web.meet;

import boundwright.meet.day.DaySheet;
import boundwright.meet.day.MeetDay;
import boundwright.quantity.LengthUnit;
import boundwright.web.page.Sent;
import java.util.Locale;

/**
 * The day of a meet.
 *
 * @param day the sheet
 * @param unit the coach's unit
 * @param sent a refused form, or nothing
 * @param said what was just done, or empty
 */
public record MeetDayView(DaySheet day, LengthUnit unit, Sent sent, String said) {
  /** Whether a mark moves; why it stays is said with what it rests on. */
  public boolean moves(DaySheet.Mark mark) {
    return mark.moved_m().p50() != 0;
  }

  /** Where the form is sent. */
  public String address() {
    return "/meet/" + day.sheet().id() + "/day";
  }

  /** What a field of the form holds: as it was sent, as it is kept, or as usual. */
  public String field(String name) {
    MeetDay d = day.day();
    Double wind = d == null ? null : d.wind();
    String kept =
        switch (name) {
          case "starts" -> d == null ? "" : d.starts().toString();
          case "call" -> String.valueOf(d == null ? MeetDay.USUAL_CALL_ROOM_MIN : d.callRoom_min());
          case "warm" -> String.valueOf(d == null ? MeetDay.USUAL_WARM_UP_MIN : d.warmUp_min());
          case "wind" -> wind == null ? "" : String.format(Locale.ROOT, "%+.1f", wind);
          case "give" -> String.format(Locale.ROOT, "%.1f", d == null ? MeetDay.USUAL_GIVE : d.windGive());
          default -> d == null ? "" : d.note();
        };
    return sent.field(name, kept);
  }
}
