package boundwright.jump.takeoff;

import boundwright.athlete.Athlete;
import boundwright.footfall.Foot;
import boundwright.jump.Event;
import boundwright.jump.JumpLimits;
import boundwright.quantity.Notes;
import boundwright.quantity.RefusedException;
import java.time.LocalDate;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/**
 * A measured long jump of an athlete as it is kept, from the full run-up or a pop-up from a short one.
 *
 * @param id number in the store, 0 before it is stored
 * @param athleteId whose
 * @param date the day
 * @param foot it took off from
 * @param steps of the run-up, 0 to 26, or null when not noted
 * @param distance_m from the take-off line to the nearest break in the sand [m], 1 to 10
 * @param gap_m toe to take-off line [m], + behind the line, -0.60 to +2.00; null when not measured
 * @param takeOff its speeds, or null when only the distance was measured
 * @param note the coach's words, at most 200 characters; may be empty
 */
public record LongJump(
    long id,
    long athleteId,
    LocalDate date,
    Foot foot,
    @Nullable Integer steps,
    double distance_m,
    @Nullable Double gap_m,
    @Nullable TakeOff takeOff,
    String note) {
  private static final double LEAST_GROUND_M = -0.5;
  private static final double MOST_GROUND_M = 2.5;

  /** Refuses what cannot be, and speeds that do not make such a jump. */
  public LongJump {
    if (steps != null) {
      Athlete.checkSteps(steps);
    }
    Event.LONG_JUMP.jump(Event.LONG_JUMP.label(), distance_m);
    if (gap_m != null) {
      JumpLimits.gap(gap_m);
    }
    if (takeOff != null) {
      double flight = takeOff.flight().distance();
      double ground = distance_m + (gap_m == null ? 0 : gap_m) - flight;
      if (ground < LEAST_GROUND_M || ground > MOST_GROUND_M) {
        throw new RefusedException(
            String.format(
                Locale.ROOT,
                "With these speeds and heights the flight alone is %.2f m, and the jump is %.2f m: take-off and landing would make %.2f m, and %.1f to %.1f m"
                    + " is taken. Check the speeds and the distance.",
                flight, distance_m, ground, LEAST_GROUND_M, MOST_GROUND_M));
      }
    }
    note = Notes.checked(note);
  }

  /** The same with the number the store gave. */
  public LongJump withId(long stored) {
    return new LongJump(stored, athleteId, date, foot, steps, distance_m, gap_m, takeOff, note);
  }

  /** From the toe to the mark in the sand [m], or null when the gap was not measured. */
  public @Nullable Double effective_m() {
    return gap_m == null ? null : Double.valueOf(distance_m + gap_m);
  }

  /** Where its metres are, or null when something of it was not measured. */
  public @Nullable Parts parts() {
    Double effective = effective_m();
    if (effective == null || takeOff == null || takeOff.ahead_m() == null) {
      return null;
    }
    double flight = takeOff.flight().distance();
    return new Parts(takeOff.ahead_m(), flight, effective - takeOff.ahead_m() - flight, effective - distance_m);
  }

  /**
   * Where the metres of a jump are; the official distance is the first three less the last.
   *
   * @param takeOff_m centre of mass ahead of the toe at take-off [m]
   * @param flight_m of the centre of mass [m]
   * @param landing_m from the centre of mass at landing to the mark in the sand [m]: what is left of the jump
   * @param given_m given away at the board [m]
   */
  public record Parts(double takeOff_m, double flight_m, double landing_m, double given_m) {}
}
