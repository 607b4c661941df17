package boundwright.web.jump;

import boundwright.approach.ApproachAnswer;
import boundwright.approach.run.RunThrough;
import boundwright.approach.run.RunThroughEntry;
import boundwright.athlete.Athlete;
import boundwright.footfall.Foot;
import boundwright.jump.Event;
import boundwright.picture.RunUpPicture;
import boundwright.quantity.LengthUnit;
import boundwright.web.page.Figures;
import boundwright.web.page.Sent;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/**
 * The full run-up of an athlete.
 *
 * @param athlete who
 * @param event for which jump
 * @param unit the coach's unit
 * @param answer marks and advice, or null when refused
 * @param wide the picture for a desk, or null when refused
 * @param narrow the picture for a phone, or null when refused
 * @param kept run-throughs, oldest first
 * @param steps as asked, or empty
 * @param speed as asked [m/s], or empty
 * @param aim as asked, or empty
 * @param refused why there are no marks, or empty
 * @param sent a refused form, or nothing
 * @param token makes a double tap one entry
 * @param said what was just done, or empty
 * @param undo number of the run-through just kept, or 0
 * @param today the day, for the date field
 */
public record RunUpView(
    Athlete athlete,
    Event event,
    LengthUnit unit,
    @Nullable ApproachAnswer answer,
    @Nullable RunUpPicture wide,
    @Nullable RunUpPicture narrow,
    List<RunThroughEntry> kept,
    String steps,
    String speed,
    String aim,
    String refused,
    Sent sent,
    String token,
    String said,
    long undo,
    String today) {

  /** Where the page is, and its forms are sent. */
  static String address(Athlete athlete, Event event) {
    return "/athlete/" + athlete.id() + (event == Event.LONG_JUMP ? "/long-jump/run-up" : "/run-up");
  }

  /** Where the forms are sent. */
  public String action() {
    return address(athlete, event);
  }

  /** Steps of the form: those of a refused form, or those of the marks, or as asked. */
  public String formSteps() {
    return sent.field("steps", answer == null ? steps : String.valueOf(answer.plan().steps()));
  }

  /** How many fields for places of steps the form has; 0 when its steps cannot be read. */
  public int fields() {
    String n = formSteps();
    return n.matches("\\d{1,2}") && Integer.parseInt(n) <= Athlete.MAX_STEPS ? Integer.parseInt(n) : 0;
  }

  /** Where the run-up started: as in the last run-through of as many steps, else at the advised mark. */
  public String startField() {
    String last = "";
    for (RunThroughEntry e : kept) {
      if (String.valueOf(e.run().steps()).equals(formSteps())) {
        last = Figures.bare(unit, e.run().startMark_m());
      }
    }
    String otherwise = last.isEmpty() && answer != null ? Figures.bare(unit, answer.plan().startMark_m().p50()) : last;
    return sent.field("start", otherwise);
  }

  /** Which foot a step of the form falls on, the last being the take-off. */
  public boolean isRight(int step) {
    return (fields() - step) % 2 == 0 == (athlete.takeOffFoot() == Foot.RIGHT);
  }

  /** The kept run-throughs, newest first. */
  public List<RunThroughEntry> newestFirst() {
    List<RunThroughEntry> out = new ArrayList<>(kept);
    Collections.reverse(out);
    return out;
  }

  /** A run-through in a line. */
  public String told(RunThroughEntry e) {
    RunThrough r = e.run();
    String gap =
        Double.isNaN(r.gap_m()) ? "gap not seen" : unit.writeSmall(r.gap_m()) + (r.gap_m() < 0 ? " over the line" : " behind the line");
    return r.steps() + " steps from " + unit.write(r.startMark_m()) + ": " + gap;
  }

  /** What else is kept of it, or empty. */
  public String more(RunThroughEntry e) {
    RunThrough r = e.run();
    List<String> out = new ArrayList<>();
    long seen = r.toBoard_m().stream().filter(p -> !p.isNaN()).count();
    if (seen > 1) {
      out.add(seen + " steps measured");
    }
    Double wind = r.wind();
    if (wind != null) {
      out.add("wind " + Figures.wind(wind));
    }
    Double tired = r.tiredness();
    if (tired != null) {
      out.add(String.format(Locale.ROOT, "tiredness %.0f", tired));
    }
    if (!e.note().isEmpty()) {
      out.add(e.note());
    }
    return String.join(", ", out);
  }
}
