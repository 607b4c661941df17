package boundwright.web.jump;

import boundwright.approach.aim.AimAnswer;
import boundwright.approach.aim.AimPlan;
import boundwright.approach.aim.AimPolicy;
import boundwright.approach.aim.Goal;
import boundwright.approach.board.BoardSeen;
import boundwright.approach.board.GapEntry;
import boundwright.athlete.Athlete;
import boundwright.jump.CombinedTable;
import boundwright.jump.Event;
import boundwright.picture.AimPicture;
import boundwright.quantity.LengthUnit;
import boundwright.web.athlete.Asked;
import boundwright.web.page.Figures;
import boundwright.web.page.Sent;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/**
 * Where an athlete should aim.
 *
 * @param athlete who
 * @param event which jump
 * @param unit the coach's unit
 * @param asked what the attempts are for, as written
 * @param answer the aim, or what is missing
 * @param picture the aim curve, or null when the data cannot tell or the attempts are for points
 * @param kept take-offs in training, oldest first
 * @param refused why the goal was not taken, or empty; the answer is then for the longest best
 * @param sent a refused form, or nothing
 * @param token makes a double tap one entry
 * @param said what was just done, or empty
 * @param undo number of the entry just kept, or 0
 * @param today the day, for the date field
 */
public record AimView(
    Athlete athlete,
    Event event,
    LengthUnit unit,
    Asked asked,
    AimAnswer answer,
    @Nullable AimPicture picture,
    List<GapEntry> kept,
    String refused,
    Sent sent,
    String token,
    String said,
    long undo,
    String today) {

  /**
   * What the address asks.
   *
   * @param goal longest, target, eight or rival; of a long jump also decathlon or heptathlon
   * @param attempts as written
   * @param target as written
   * @param rivals marks as written, semicolons between
   * @param left attempts that each rival has left, as written
   */
  public record Asked(String goal, String attempts, String target, String rivals, String left) {
    static final Asked USUAL = new Asked("longest", "", "", "", "");
  }

  /**
   * A goal to choose.
   *
   * @param name in the address
   * @param label in words
   */
  public record Choice(String name, String label) {}

  /** The goals to choose from. */
  public List<Choice> goals() {
    List<Choice> out =
        new ArrayList<>(
            List.of(
                new Choice("longest", "the longest"),
                new Choice("target", "a target"),
                new Choice("eight", "top eight"),
                new Choice("rival", "a rival")));
    if (event == Event.LONG_JUMP) {
      for (CombinedTable t : CombinedTable.values()) {
        out.add(new Choice(t.label(), t.label()));
      }
    }
    return out;
  }

  /** The combined event that a goal is for, or null. */
  static @Nullable CombinedTable table(String goal) {
    for (CombinedTable t : CombinedTable.values()) {
      if (t.label().equals(goal)) {
        return t;
      }
    }
    return null;
  }

  /** Where the page is, and its forms are sent. */
  static String address(Athlete athlete, Event event) {
    return "/athlete/" + athlete.id() + (event == Event.LONG_JUMP ? "/long-jump/aim" : "/aim");
  }

  /** Where the forms are sent. */
  public String action() {
    return address(athlete, event);
  }

  /** How many attempts there are where none are written. */
  public String usualAttempts() {
    return asked.goal().equals("eight") || table(asked.goal()) != null ? "3" : "6";
  }

  /** Gaps that can be logged with one tap, as they are sent. */
  public List<String> keys() {
    return unit == LengthUnit.METRES
        ? List.of("0", "2", "4", "6", "8", "10", "12", "15", "18", "22", "26", "30")
        : List.of("0", "1", "2", "3", "4", "5", "6", "7", "8", "9", "10", "12");
  }

  /** The unit of the keys. */
  public String keyUnit() {
    return unit == LengthUnit.METRES ? "cm" : "in";
  }

  /** The newest attempts at the board, newest first. */
  public List<BoardSeen> newestSeen() {
    List<BoardSeen> out = new ArrayList<>(answer.seen());
    Collections.reverse(out);
    return out.subList(0, Math.min(out.size(), 12));
  }

  /** The kept entries, newest first. */
  public List<GapEntry> newestFirst() {
    List<GapEntry> out = new ArrayList<>(kept);
    Collections.reverse(out);
    return out;
  }

  /** An attempt at the board in words. */
  public String told(@Nullable Double gap, boolean foul, @Nullable Double distance, double shift) {
    StringBuilder out = new StringBuilder();
    if (gap == null) {
      out.append(foul ? "foul" : "gap not measured");
    } else {
      out.append(foul ? "foul, " + unit.writeSmall(gap) + " over" : unit.writeSmall(gap));
    }
    if (distance != null) {
      out.append(", ").append(unit.write(distance));
    }
    if (Math.abs(shift) > 1e-9) {
      out.append(", start ").append(unit.writeSmall(shift)).append(shift > 0 ? " back" : " forward");
    }
    return out.toString();
  }

  /** What the goal's worth is called. */
  public String worthName() {
    AimPlan plan = answer.plan();
    Goal goal = plan == null ? null : plan.goal();
    return goal instanceof Goal.Target ? "chance of the target" : goal instanceof Goal.Place ? "chance of the place" : goal instanceof Goal.Points ? "expected points" : "expected best";
  }

  /** A worth as a figure. */
  public String worth(double worth) {
    AimPlan plan = answer.plan();
    if (plan != null && plan.goal() instanceof Goal.Points) {
      return String.format(Locale.ROOT, "%.0f", worth);
    }
    return plan == null || plan.goal() instanceof Goal.Longest ? unit.write(worth) : Figures.odds(worth);
  }

  /** What changing the aim from attempt to attempt is worth over the aim that is kept. */
  public String gain(double gain) {
    AimPlan plan = answer.plan();
    if (plan != null && plan.goal() instanceof Goal.Points) {
      return gain < 1 ? "less than a point" : String.format(Locale.ROOT, "%.0f points", gain);
    }
    return plan == null || plan.goal() instanceof Goal.Longest
        ? gain < 0.005 ? "less than " + unit.writeSmall(0.01) : unit.writeSmall(gain)
        : gain < 0.001 ? "less than 0.1 points of a hundred" : String.format(Locale.ROOT, "%.1f points of a hundred", 100 * gain);
  }

  /** A cell of the policy. */
  public String cell(AimPolicy.Advice advice) {
    return advice.worthwhile() ? unit.writeSmall(advice.aim_m()).replace(' ', '\u00a0') : "\u2013";
  }

  /** The attempts of the policy, 1 to n. */
  public List<Integer> attempts() {
    List<Integer> out = new ArrayList<>();
    AimPlan plan = answer.plan();
    for (int i = 1; plan != null && i <= plan.attempts(); i++) {
      out.add(i);
    }
    return out;
  }
}
