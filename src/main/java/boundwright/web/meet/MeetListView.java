package boundwright.web.meet;

import boundwright.athlete.Athlete;
import boundwright.jump.Event;
import boundwright.meet.BoardDistance;
import boundwright.meet.Combined;
import boundwright.meet.MeetRules;
import boundwright.meet.MeetSheet;
import boundwright.quantity.LengthUnit;
import boundwright.quantity.Notes;
import boundwright.web.page.Sent;
import java.util.List;

/**
 * All meets, and the form for a new one.
 *
 * @param meets newest day first
 * @param event of the new meet
 * @param squad to put on the list
 * @param rules of a new meet
 * @param unit the coach's unit
 * @param sent a refused form, or nothing
 * @param token makes a double tap one meet
 * @param today the day, for the date field
 */
public record MeetListView(
    List<MeetSheet> meets, Event event, List<Athlete> squad, MeetRules rules, LengthUnit unit, Sent sent, String token, String today) {
  /** The fields of the new meet. */
  public MeetRulesForm form() {
    BoardDistance usual = event == Event.LONG_JUMP ? BoardDistance.of(event).get(0) : BoardDistance.ALL.get(1);
    return new MeetRulesForm(event, "", today, usual.label(), usual.distance_m(), null, rules, sent, unit);
  }

  /** A meet in a line. */
  public String told(MeetSheet meet) {
    int list = meet.entrants().size();
    int attempts = meet.attempts().size();
    Combined part = meet.rules().combined();
    return Notes.capital(meet.event().label()) + (part == null ? "" : " of the " + part.table().label()) + ", "
        + meet.competition().replaceFirst("^" + meet.event().label() + ", ", "board at ") + ", " + list + (list == 1 ? " athlete" : " athletes") + ", " + attempts + (attempts == 1 ? " attempt" : " attempts");
  }
}
