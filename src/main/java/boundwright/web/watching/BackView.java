package boundwright.web.watching;

import boundwright.athlete.Athlete;
import boundwright.load.LegCare.MedicalHold;
import boundwright.load.back.BackStep;
import boundwright.load.back.Stages;
import boundwright.picture.Drawn;
import boundwright.picture.back.BackPicture;
import boundwright.quantity.Notes;
import boundwright.readiness.back.BackAsk;
import boundwright.readiness.back.BackLook;
import boundwright.web.page.Figures;
import boundwright.web.page.Written;
import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Legs on their way back.
 *
 * @param athlete whose
 * @param ways those that run, then the newest that ended
 * @param hold that stands, or null
 * @param written what became of the forms
 * @param token makes a double tap one entry
 * @param today the day
 */
public record BackView(Athlete athlete, List<BackLook> ways, @Nullable MedicalHold hold, Written written, String token, LocalDate today) {
  /** Those that run. */
  public List<BackLook> running() {
    return ways.stream().filter(BackLook::runs).toList();
  }

  /** Those that ended. */
  public List<BackLook> ended() {
    return ways.stream().filter(l -> !l.runs()).toList();
  }

  /** What a form of one of them is called: {@code on3}, {@code back3}, {@code end3}. */
  static String form(String what, String number) {
    return what + number;
  }

  /** As {@link #form(String, String)}. */
  public String form(String what, BackLook l) {
    return form(what, String.valueOf(l.way().id()));
  }

  /** Whether the step on can be entered. */
  public boolean offersOn(BackLook l) {
    return l.mayStep();
  }

  /** Whether a step back can be entered. */
  public boolean offersBack(BackLook l) {
    return !l.held() && !l.reached() && l.state().stage() > 0;
  }

  /** Why a form was refused that does not stand on the page any more, or empty. */
  public String elsewhere() {
    boolean beside =
        (hold == null && written.isRefused("begin"))
            || running().stream()
                .anyMatch(
                    l ->
                        written.isRefused(form("end", l))
                            || (offersOn(l) && written.isRefused(form("on", l)))
                            || (offersBack(l) && written.isRefused(form("back", l))));
    return beside ? "" : written.refused();
  }

  /** The path in its two widths. */
  public Drawn<BackPicture> picture(BackLook l) {
    return Drawn.of(form -> BackPicture.of(l, form));
  }

  /** Whether a step on asks for a note: a test that is asked is not there. */
  public boolean needsNote(BackLook l) {
    return l.asks().stream().anyMatch(a -> a.test() && a.met() != BackAsk.Met.YES);
  }

  /** The leg, as a heading begins. */
  public String leg(BackLook l) {
    return Notes.capital(l.way().leg().label());
  }

  /** The share that is begun with [%]. */
  public String start() {
    return String.valueOf(Math.round(100 * Stages.USUAL.startShare()));
  }

  /** The growth a week [%]. */
  public String growth() {
    return String.valueOf(Math.round(100 * Stages.USUAL.growth()));
  }

  /** In whole per cent. */
  public String percent(double share) {
    return Math.round(100 * share) + " %";
  }

  /** In whole standing-bound contacts. */
  public String whole(double units) {
    return Figures.whole(Math.rint(units));
  }

  /** A step in words. */
  public String told(BackStep s) {
    return s.kind().label() + " to stage " + (s.stage() + 1) + ", " + s.by() + (s.note().isEmpty() ? "" : ": " + s.note());
  }

  /** A day as it is read. */
  public String day(LocalDate day) {
    return Figures.day(day, today);
  }
}
