package boundwright.web.jump;

import boundwright.athlete.Athlete;
import boundwright.jump.JumpEntry;
import boundwright.jump.MeasuredContact;
import boundwright.jump.MeasuredJump;
import boundwright.jump.Phase;
import boundwright.jump.PhaseAnswer;
import boundwright.jump.Phases;
import boundwright.jump.Shares;
import boundwright.jump.WhereMetres;
import boundwright.picture.SharesPicture;
import boundwright.quantity.LengthUnit;
import boundwright.web.page.Figures;
import boundwright.web.page.Sent;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;

/**
 * The jump of an athlete.
 *
 * @param athlete who
 * @param unit the coach's unit
 * @param answer what the kept jumps say
 * @param picture the triangle of shares
 * @param sent a refused form, or nothing
 * @param token makes a double tap one entry
 * @param said what was just done, or empty
 * @param undo number of the jump just kept, or 0
 * @param today the day, for the date field
 */
public record JumpView(
    Athlete athlete,
    LengthUnit unit,
    PhaseAnswer answer,
    SharesPicture picture,
    Sent sent,
    String token,
    String said,
    long undo,
    String today) {

  /**
   * A field for each of the three contacts.
   *
   * @param name of the field
   * @param label in words
   * @param hint unit or sign
   */
  public record SpeedField(String name, String label, String hint) {}

  /** Speeds and heights, from a clip or a laser. */
  public static final List<SpeedField> SPEEDS =
      List.of(
          new SpeedField("vxIn", "forward speed in", "m/s"),
          new SpeedField("vxOut", "forward speed out", "m/s"),
          new SpeedField("vyDown", "vertical speed in", "m/s, down is -"),
          new SpeedField("vyUp", "vertical speed out", "m/s"),
          new SpeedField("high", "take-off height", "of the centre of mass"),
          new SpeedField("low", "touchdown height", "after the flight"));

  /** The label of a speed's field. */
  static String speedLabel(String name) {
    return SPEEDS.stream().filter(f -> f.name().equals(name)).map(SpeedField::label).findFirst().orElse(name);
  }

  /** Hop, step, jump. */
  public List<Phase> phases() {
    return Phase.IN_ORDER;
  }

  /** The fields of a contact. */
  public List<SpeedField> speedFields() {
    return SPEEDS;
  }

  /** The kept jumps, newest first. */
  public List<JumpEntry> newestFirst() {
    List<JumpEntry> out = new ArrayList<>(answer.jumps());
    Collections.reverse(out);
    return out;
  }

  /** A share as a figure, {@code 36.4}. */
  public String share(Shares shares, Phase phase) {
    return String.format(Locale.ROOT, "%.1f", 100 * shares.of(phase));
  }

  /** A phase's length of a jump. */
  public String length(Phases phases, Phase phase) {
    return unit.write(phase == Phase.HOP ? phases.hop_m() : phase == Phase.STEP ? phases.step_m() : phases.jump_m());
  }

  /** The class of a jump in words. */
  public String classOf(JumpEntry jump) {
    return jump.phases().shares().classify(answer.threshold()).label();
  }

  /** Official, effective distance and the toe-to-board of a jump in a line. */
  public String distances(Phases p) {
    List<String> out = new ArrayList<>();
    if (p.knowsOfficial()) {
      out.add(unit.write(p.official_m()) + " from the board");
    }
    if (p.knowsEffective()) {
      out.add(unit.write(p.effective_m()) + " from the toe");
    }
    Double toe = p.toeToBoard_m();
    if (toe != null) {
      out.add("toe " + unit.writeSmall(toe) + (toe < 0 ? " over the line" : " behind the line"));
    }
    return String.join(", ", out);
  }

  /** A kept jump in a line. */
  public String told(JumpEntry jump) {
    Phases p = jump.phases();
    return length(p, Phase.HOP) + " / " + length(p, Phase.STEP) + " / " + length(p, Phase.JUMP);
  }

  /** What else is kept of a jump, in a line. */
  public String more(JumpEntry jump) {
    List<String> out = new ArrayList<>();
    out.add(distances(jump.phases()));
    Integer steps = jump.steps();
    if (steps != null) {
      out.add(Figures.fromSteps(steps));
    }
    if (jump.speeds() != null) {
      out.add("with speeds");
    }
    if (!jump.note().isEmpty()) {
      out.add(jump.note());
    }
    return String.join(", ", out);
  }

  /** A contact's forward speed in and out, {@code 9.31 to 8.72 m/s}. */
  public String speeds(MeasuredContact c) {
    return String.format(Locale.ROOT, "%.2f to %.2f m/s", c.vxIn(), c.vxOut());
  }

  /** Of the approach speed, how much is left after a contact, as a figure in percent. */
  public String carried(MeasuredJump jump, int contact) {
    return String.format(Locale.ROOT, "%.0f %%", 100 * jump.carried().get(contact));
  }

  /** What a change is worth, signed, in the small unit. */
  public String worth(double metres) {
    return (metres < -0.0005 ? "\u2212" : "+") + (unit == LengthUnit.METRES ? String.format(Locale.ROOT, "%.0f cm", 100 * Math.abs(metres)) : unit.writeSmall(metres));
  }

  /** The interval of a change's worth. */
  public String interval(WhereMetres.Worth w) {
    return worth(w.metres().p05()) + " to " + worth(w.metres().p95());
  }
}
