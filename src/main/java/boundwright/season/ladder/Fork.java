package boundwright.season.ladder;

import boundwright.athlete.Athlete;
import boundwright.quantity.Notes;
import boundwright.readiness.DrillFamily;
import boundwright.season.Climb;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.Locale;

/**
 * A decision with its two branches.
 *
 * @param family of drills
 * @param day when, and where it leads
 * @param chanceNext if they are not ready on that day, the chance that they are at the next look, 0 to 1
 * @param stays of this squad from which the chance was learned
 * @param ownStays those of the athlete among them
 */
public record Fork(DrillFamily family, Climb.DecisionDay day, double chanceNext, int stays, int ownStays) {
  private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("d MMMM", Locale.ENGLISH);

  /** What happens if they are ready. */
  public String ifReady() {
    return "If ready by " + day(day.date()) + ": " + Athlete.fromSteps(day.goesTo()) + ".";
  }

  /** What happens if they are not. */
  public String ifNot() {
    return "Else stay, and look again on " + day(day.nextLook()) + ".";
  }

  /** How sure it is, and from what. */
  public String howSure() {
    String from = stays == 0 ? "no stay of this squad known yet" : Notes.counted(stays, "stay") + " of this squad";
    return String.format(Locale.ROOT, "Chance %.1f (%s).", Math.min(0.9, Math.max(0.1, day.chance())), from);
  }

  /** Both branches, and how sure. */
  public String sentence() {
    return ifReady() + " " + ifNot() + " " + howSure();
  }

  private static String day(LocalDate d) {
    return DAY.format(d);
  }
}
