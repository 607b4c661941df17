package boundwright.athlete.growth;

import boundwright.quantity.Limits;
import boundwright.quantity.PlainText;
import boundwright.quantity.RefusedException;
import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/**
 * A body measured on a day, without shoes.
 *
 * @param id number in the store, 0 before it is stored
 * @param date when
 * @param height_m standing height [m], {@value #LEAST_M} to {@value #MOST_M}
 * @param sitting_m sitting height [m], 40 to 65 % of the height, or null; it is kept and used nowhere
 * @param mass_kg mass [kg], {@value #LEAST_KG} to {@value #MOST_KG}, or null; it is kept and used nowhere
 * @param by who measured, as a relation or a role and not a name, at most {@value #MOST_BY} characters; empty where it was not noted
 */
public record Measurement(long id, LocalDate date, double height_m, @Nullable Double sitting_m, @Nullable Double mass_kg, String by) {
  /** Least height that is taken [m] (sanity limit; judgement). */
  public static final double LEAST_M = 0.8;
  /** Greatest height that is taken [m] (sanity limit; judgement). */
  public static final double MOST_M = 2.3;
  /** Least mass that is taken [kg] (sanity limit; judgement). */
  public static final double LEAST_KG = 10;
  /** Greatest mass that is taken [kg] (sanity limit; judgement). */
  public static final double MOST_KG = 250;
  /** Most characters of {@code by}. */
  public static final int MOST_BY = 60;

  /** No rod reads finer [m]. */
  private static final double FINEST_M = 1e-4;
  private static final double LEAST_SITTING = 0.40;
  private static final double MOST_SITTING = 0.65;

  /** Refuses a slip of the pen. */
  public Measurement {
    Limits.within("height", height_m, LEAST_M, MOST_M, "m", "Check the unit: 1.62 m or 162 cm.");
    if (sitting_m != null && !(sitting_m >= LEAST_SITTING * height_m && sitting_m <= MOST_SITTING * height_m)) {
      throw new RefusedException(
          "A sitting height of " + sitting_m + " m is " + Math.round(100 * sitting_m / height_m) + " % of the height, " + height_m
              + " m; it is 40 to 65 %. Measure from the seat to the crown, or leave it empty.");
    }
    if (mass_kg != null) {
      Limits.within("mass", mass_kg, LEAST_KG, MOST_KG, "kg", "Leave it empty if it was not taken; nothing needs it.");
    }
    by = PlainText.checked(by.strip().replaceAll("\\s+", " "));
    if (by.length() > MOST_BY) {
      throw new RefusedException(
          "Who measured has at most " + MOST_BY + " characters; this has " + by.length() + ". A role is enough: coach, physiotherapist, mother.");
    }
  }

  /** Whether this is the same height of the same day by the same person. */
  boolean repeats(Measurement other) {
    return date.equals(other.date) && Math.abs(height_m - other.height_m) < FINEST_M / 2 && by.equalsIgnoreCase(other.by);
  }

  /** The same under the number that the store gave. */
  public Measurement withId(long stored) {
    return new Measurement(stored, date, height_m, sitting_m, mass_kg, by);
  }
}
