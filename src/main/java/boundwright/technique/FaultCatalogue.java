package boundwright.technique;

import boundwright.evidence.Sources;
import boundwright.quantity.RefusedException;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;

/**
 * The faults that can be ticked: one for each {@link TeachingPoint}, then those that the coach added. The advice is common
 * practice in our own words; no measurement stands behind it.
 */
public final class FaultCatalogue {
  private final List<FaultAdvice> all;

  /**
   * The list with the coach's own faults at its end.
   *
   * @throws RefusedException if two of them share a key or a name
   */
  public FaultCatalogue(List<Fault> own) {
    this(own, FootContact.HEEL_ROLLS);
  }

  /** The same where the foot's contact is taught so. */
  public FaultCatalogue(List<Fault> own, FootContact taught) {
    List<FaultAdvice> list = new ArrayList<>();
    for (TeachingPoint point : TeachingPoint.values()) {
      list.add(of(point, taught));
    }
    Set<String> taken = new HashSet<>();
    list.forEach(a -> taken.add("label " + a.label().toLowerCase(Locale.ROOT)));
    for (Fault fault : own) {
      boolean newKey = taken.add(fault.key());
      // A fault may be called just like a key: names and keys are told apart.
      boolean newLabel = taken.add("label " + fault.label().toLowerCase(Locale.ROOT));
      if (!newKey || !newLabel) {
        throw new RefusedException("A fault '" + fault.label() + "' is in the list already. Change that one, or give this one another name.");
      }
      list.add(fault.advice());
    }
    all = List.copyOf(list);
  }

  /** All faults in the order in which they are shown. */
  public List<FaultAdvice> all() {
    return all;
  }

  /** The advice for this key; empty for a fault that was taken out of the list. */
  public Optional<FaultAdvice> byKey(String key) {
    return all.stream().filter(a -> a.key().equals(key)).findFirst();
  }

  /** The name to show for this key; the key itself for a fault that was taken out of the list, so that old reps stay readable. */
  public String label(String key) {
    return byKey(key).map(FaultAdvice::label).orElse(key);
  }

  /** The advice for what goes wrong at a teaching point, where the foot's contact is taught so. */
  public static FaultAdvice of(TeachingPoint point, FootContact taught) {
    if (point != TeachingPoint.HEEL_ROLLS || taught == FootContact.HEEL_ROLLS) {
      return of(point);
    }
    boolean whole = taught == FootContact.WHOLE_FOOT;
    return new FaultAdvice(
        point.key(),
        taught.wentWrong(),
        whole ? "The heel strikes first and brakes, or the toe stabs; the foot is not down at once." : "The foot meets the ground otherwise than taught for this approach.",
        List.of("The ankle is not set before the ground", "The foot reaches out in front", "Shoes or surface that the athlete does not trust"),
        whole ? "Whole foot, ankle set." : "Foot as taught.",
        "Take two approach steps off and set the foot quietly. A sore heel or foot ends the drill for today.",
        taught.source());
  }

  /** The advice for what goes wrong at a teaching point as it is taught by default. */
  public static FaultAdvice of(TeachingPoint point) {
    return switch (point) {
      case UPRIGHT ->
          advice(
              point,
              "The chest falls forward or to a side; the eyes are on the ground.",
              List.of("More speed than the athlete can bound at", "Looking for the tape or the sand", "Trunk tires late in the set"),
              "Chest up, look far.",
              "Take two approach steps off, or cut the set by two contacts; bound towards a point at eye height.");
      case KNEE_UP ->
          advice(
              point,
              "The free thigh stays well below level when the other foot leaves the ground.",
              List.of("Hurrying from contact to contact", "The free leg starts late because the foot before it landed too far ahead", "Tired hips"),
              "Knee up, and wait there.",
              "Skips for height, then five slow bounds from standing; add the steps back when the thigh comes up each time.");
      case HEEL_TO_SEAT ->
          advice(
              point,
              "The leg behind swings through long and low instead of folding, so it arrives late.",
              List.of("Pushing too long behind the body", "The toe is let go, so the leg hangs", "Reaching with the other leg"),
              "Heel up, then through.",
              "Run with the heels up over 20 m, then single-leg hops on the spot with a full cycle, then the drill again.");
      case TOE_UP ->
          advice(
              point,
              "The toe dangles in flight and touches first; the contact slaps or stabs.",
              List.of("The ankle is not set before the flight", "Fear of a hard landing", "Tired calves or feet"),
              "Toe up, ankle like a board.",
              "Ankle hops with the toe held up, then the drill at a walk; stop the set when the toe drops again.");
      case HOLD_THEN_STRIKE ->
          advice(
              point,
              "Knee and toe drop as soon as the foot is off; the flight is short and the leg has nothing left to strike with.",
              List.of("Impatience: looking for the ground", "Flights too long for the strength at hand", "Leaning, so that the foot must save the balance"),
              "Hold, hold, strike.",
              "Bound from standing and call the strike aloud when the foot is about a hand's length above the ground; then two steps.");
      case FOOT_UNDER ->
          advice(
              point,
              "The foot lands well ahead of the hips and the speed breaks; a little ahead it always is.",
              List.of("Reaching for distance", "Tape or sand set too far for the day", "The leg was dropped early and swings out in front"),
              "Land under yourself, push the ground back.",
              "Bring the mark nearer so that nobody has to reach, and count a rep only when it is quiet and quick.");
      case HEEL_ROLLS ->
          advice(
              point,
              "The toe strikes first against the run; the heel then drops or never comes down.",
              List.of("The toe is not held up", "Striking from above instead of rolling over", "Shoes or surface that the athlete does not trust"),
              "Heel leads, roll to the toe.",
              "Walk and skip over the whole foot on grass, then bounds from standing. A sore heel ends the drill for today.");
      case HIPS_TALL ->
          advice(
              point,
              "The hips sink into the contact and the body pops up, as in a long jump.",
              List.of("The last steps of the run-up are stretched", "Wanting height on the first flight", "The supporting leg gives"),
              "Run across it, hips tall.",
              "Keep the rhythm of the last steps, do not stretch or chop them; a low, long first flight; take off over a line, not at it.");
      case SPEED_THROUGH ->
          advice(
              point,
              "Each flight is slower than the one before; the last is a drop into the sand.",
              List.of("First flight too high or too long", "The foot lands ahead of the hips", "Set longer than the strength at hand"),
              "Same rhythm to the end.",
              "Cut two contacts and keep an even beat, clapped aloud; lengthen the set again when the beat holds.");
      case ARMS_BALANCE ->
          advice(
              point,
              "The shoulders tip or twist, the line weaves, an arm is thrown out to the side.",
              List.of("The arms cross the body", "Unequal legs: one contact is longer than the other", "The foot lands across the line"),
              "Arms long, swing them straight.",
              "Bound along a line with the arms in time, single or double as taught; then the same drill begun on the other foot.");
    };
  }

  private static FaultAdvice advice(TeachingPoint point, String looksLike, List<String> causes, String say, String next) {
    return new FaultAdvice(point.key(), point.wentWrong(), looksLike, causes, say, next, Sources.FAULTS);
  }
}
