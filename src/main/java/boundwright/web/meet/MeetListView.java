package boundwright.web.meet;

import boundwright.athlete.Athlete;
import boundwright.meet.BoardDistance;
import boundwright.meet.MeetRules;
import boundwright.meet.MeetSheet;
import boundwright.quantity.LengthUnit;
import boundwright.web.page.Sent;
import java.util.List;

/**
 * All meets, and the form for a new one.
 *
 * @param meets newest day first
 * @param squad to put on the list
 * @param rules of a new meet
 * @param unit the coach's unit
 * @param sent a refused form, or nothing
 * @param token makes a double tap one meet
 * @param today the day, for the date field
 */
public record MeetListView(
    List<MeetSheet> meets, List<Athlete> squad, MeetRules rules, LengthUnit unit, Sent sent, String token, String today) {
  /** The fields of the new meet. */
  public MeetRulesForm form() {
    BoardDistance usual = BoardDistance.ALL.get(1);
    return new MeetRulesForm("", today, usual.label(), usual.distance_m(), null, rules, sent, unit);
  }

  /** A meet in a line. */
  public String told(MeetSheet meet) {
    int list = meet.entrants().size();
    int attempts = meet.attempts().size();
    return meet.competition() + ", " + list + (list == 1 ? " athlete" : " athletes") + ", " + attempts + (attempts == 1 ? " attempt" : " attempts");
  }
}
