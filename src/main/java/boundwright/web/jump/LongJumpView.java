package boundwright.web.jump;

import boundwright.athlete.Athlete;
import boundwright.footfall.Foot;
import boundwright.jump.takeoff.LongJump;
import boundwright.jump.takeoff.LongJumpAnswer;
import boundwright.jump.takeoff.LongWorth;
import boundwright.jump.takeoff.TakeOff;
import boundwright.meet.EventsAnswer;
import boundwright.quantity.LengthUnit;
import boundwright.quantity.Notes;
import boundwright.web.page.Figures;
import boundwright.web.page.Sent;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;

/**
 * The long jumps of an athlete.
 *
 * @param athlete who
 * @param unit the coach's unit
 * @param answer what the kept jumps say
 * @param events what was measured in both events and off each leg
 * @param sent a refused form, or nothing
 * @param token makes a double tap one entry
 * @param said what was just done, or empty
 * @param undo number of the jump just kept, or 0
 * @param today the day, for the date field
 */
public record LongJumpView(
    Athlete athlete, LengthUnit unit, LongJumpAnswer answer, EventsAnswer events, Sent sent, String token, String said, long undo, String today) {
  /** Speeds, heights and places, from a clip or a laser. */
  public static final List<JumpView.SpeedField> SPEEDS =
      List.of(
          new JumpView.SpeedField("forward", "forward speed at take-off", "m/s"),
          new JumpView.SpeedField("up", "vertical speed at take-off", "m/s"),
          new JumpView.SpeedField("high", "take-off height", "of the centre of mass"),
          new JumpView.SpeedField("low", "landing height", "of the centre of mass"),
          new JumpView.SpeedField("into", "speed into the board", "m/s, if known"),
          new JumpView.SpeedField("touchdown", "toe ahead at touchdown", "of the centre of mass, if known"),
          new JumpView.SpeedField("ahead", "centre of mass ahead at take-off", "of the toe, if known"));

  /** The fields that an address may fill in: those of a take-off, and its foot. */
  static List<String> filledIn() {
    List<String> out = new ArrayList<>(List.of("foot"));
    SPEEDS.forEach(f -> out.add(f.name()));
    return out;
  }

  /** Where the forms are sent. */
  static String address(Athlete athlete) {
    return "/athlete/" + athlete.id() + "/long-jump";
  }

  /** The label of a field. */
  static String label(String name) {
    return SPEEDS.stream().filter(f -> f.name().equals(name)).map(JumpView.SpeedField::label).findFirst().orElse(name);
  }

  /** Where the forms are sent. */
  public String action() {
    return address(athlete);
  }

  /** The fields of a take-off. */
  public List<JumpView.SpeedField> speedFields() {
    return SPEEDS;
  }

  /** Whether a foot is the one of the form: as sent, else the athlete's own. */
  public boolean isFoot(String name) {
    return sent.field("foot", athlete.takeOffFoot().name()).equals(name);
  }

  /** Right and left. */
  public List<Foot> feet() {
    return List.of(Foot.values());
  }

  /** The kept jumps, newest first. */
  public List<LongJump> newestFirst() {
    List<LongJump> out = new ArrayList<>(answer.jumps());
    Collections.reverse(out);
    return out;
  }

  /** The marks of an event in a line. */
  public String marks(EventsAnswer.Marks m) {
    Integer points = m.points();
    return unit.write(m.best().distance_m()) + " " + m.best().from() + "; best of " + Notes.counted(m.count(), "mark") + " kept" + (events.comparesEvents() && points != null ? ", " + points + " points" : "");
  }

  /** A kept jump in a line. */
  public String told(LongJump jump) {
    return unit.write(jump.distance_m());
  }

  /** What else is kept of a jump, in a line. */
  public String more(LongJump jump) {
    List<String> out = new ArrayList<>();
    Integer steps = jump.steps();
    if (steps != null) {
      out.add(Figures.fromSteps(steps));
    }
    Double gap = jump.gap_m();
    if (gap != null) {
      out.add("toe " + unit.writeSmall(gap) + (gap < 0 ? " over the line" : " behind the line"));
    }
    TakeOff t = jump.takeOff();
    if (t != null) {
      out.add(takeOff(t));
    }
    if (!jump.note().isEmpty()) {
      out.add(jump.note());
    }
    return String.join(", ", out);
  }

  /** A take-off in figures, {@code 9.08 m/s at 20.6 degrees}. */
  public String takeOff(TakeOff t) {
    return String.format(Locale.ROOT, "%.2f m/s at %.1f degrees", t.speed(), t.angle_deg());
  }

  /** What a change is worth, signed, in the small unit. */
  public String worth(double metres) {
    return (metres < -0.0005 ? "\u2212" : "+") + (unit == LengthUnit.METRES ? String.format(Locale.ROOT, "%.0f cm", 100 * Math.abs(metres)) : unit.writeSmall(metres));
  }

  /** The interval of a change's worth. */
  public String interval(LongWorth w) {
    return worth(w.metres().p05()) + " to " + worth(w.metres().p95());
  }
}
