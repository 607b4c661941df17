package boundwright.clip.contact;

import boundwright.footfall.Foot;
import boundwright.quantity.Estimate;
import org.jspecify.annotations.Nullable;

/**
 * One foot on the ground.
 *
 * @param foot which
 * @param touchdown_s when it landed [s], or null where the clip or the picture begins later
 * @param toeOff_s when it left [s], or null where the clip or the picture ends earlier
 * @param place_m where the toe stood, along the runway [m]
 * @param heel_m where the heel stood, along the runway [m]
 * @param bothFeet whether the other foot landed with it: the landing of the jump
 * @param footSure how sure the foot is, 0.5 to 1
 */
public record Contact(
    Foot foot,
    @Nullable Estimate touchdown_s,
    @Nullable Estimate toeOff_s,
    Estimate place_m,
    Estimate heel_m,
    boolean bothFeet,
    double footSure) {

  /** Contact time [s], or null where an end was not seen. */
  public @Nullable Estimate duration_s() {
    return touchdown_s == null || toeOff_s == null ? null : between(touchdown_s, toeOff_s);
  }

  /** {@code to} less {@code from}, errors taken as independent. */
  public static Estimate between(Estimate from, Estimate to) {
    double sd = Math.hypot(from.halfWidth(), to.halfWidth()) / Estimate.Z95;
    return Estimate.normal(to.p50() - from.p50(), sd);
  }

  /** The time in the middle of what was seen [s]. */
  public double middle_s() {
    if (touchdown_s != null && toeOff_s != null) {
      return (touchdown_s.p50() + toeOff_s.p50()) / 2;
    }
    return touchdown_s != null ? touchdown_s.p50() : toeOff_s != null ? toeOff_s.p50() : Double.NaN;
  }
}
