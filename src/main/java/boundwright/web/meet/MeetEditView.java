package boundwright.web.meet;

import boundwright.athlete.Athlete;
import boundwright.meet.Entrant;
import boundwright.meet.KeptAttempt;
import boundwright.meet.MeetSheet;
import boundwright.quantity.LengthUnit;
import boundwright.web.page.Sent;
import boundwright.web.page.TwoHands;
import java.util.ArrayList;
import java.util.List;

/**
 * A meet's rules and list, to be changed.
 *
 * @param sheet as kept
 * @param squad everybody of the squad
 * @param unit the coach's unit
 * @param refusedForm which form was refused: {@code meet}, {@code list}, {@code remove}, or empty
 * @param sent the refused form, or nothing
 * @param said what was just done, or empty
 * @param today the day
 */
public record MeetEditView(
    MeetSheet sheet, List<Athlete> squad, LengthUnit unit, String refusedForm, Sent sent, String said, String today) {
  /** The fields of the meet. */
  public MeetRulesForm form() {
    return MeetRulesForm.of(sheet, refusedForm.equals("meet") ? sent : Sent.NOTHING, unit);
  }

  /** What the form of the meet is made from. */
  public String was() {
    return TwoHands.was(form().fields());
  }

  /** The sentence beside a form, or empty. */
  public String refusal(String form) {
    return refusedForm.equals(form) ? sent.refused() : "";
  }

  /** What was written in a form that was refused. */
  public String written(String form, String field) {
    return refusedForm.equals(form) ? sent.field(field) : "";
  }

  /** Where the forms are sent. */
  public String address() {
    return "/meet/" + sheet.id();
  }

  /** Those of the squad who are not on the list. */
  public List<Athlete> others() {
    List<Athlete> out = new ArrayList<>(squad);
    out.removeIf(a -> sheet.entrantOf(a.id()).isPresent());
    return out;
  }

  /** Whether somebody has jumped, and so stays on the list. */
  public boolean hasJumped(Entrant entrant) {
    return sheet.attempts().stream().anyMatch(a -> a.entrantId() == entrant.id());
  }

  /** An attempt in words. */
  public String told(KeptAttempt kept) {
    return MeetView.told(kept, unit, sheet.rules().measure());
  }
}
