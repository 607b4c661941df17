package boundwright.load;

import boundwright.load.LegCare.MedicalHold;
import boundwright.load.LegCare.Pain;
import boundwright.load.rating.SessionRating;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** What this part needs kept. Every write is on disk when the method returns. */
public interface CareRepository {
  /** Growing (where the coach has said nothing: by the birth date), first session, pains of the last 60 days before {@code today}, all holds, ways back as they stand on it. */
  LegCare care(long athleteId, LocalDate today);

  /** The same for several athletes by number, in a few reads; those of whom nothing is kept are left out. */
  Map<Long, LegCare> cares(List<Long> athletes, LocalDate today);

  /** Pains of an athlete from a day on, oldest first. */
  List<Pain> pains(long athleteId, LocalDate from);

  /** Sets whether an athlete is growing and when they began to bound (null: first logged rep). */
  void setGrowing(long athleteId, boolean growing, @Nullable LocalDate firstSession);

  /**
   * Adds a pain; one with a sign to refer opens a medical hold in the same transaction, unless one lasts already that no clinician
   * has ended. Returns it with its number.
   */
  Pain addPain(long athleteId, Pain pain);

  /** Says next morning whether a pain has settled. */
  void setSettled(long athleteId, long painId, boolean settled);

  /** Opens a medical hold; returns it with its number. */
  MedicalHold openHold(long athleteId, MedicalHold hold);

  /**
   * Ends a medical hold with a named clinician and a date, both needed.
   *
   * @throws boundwright.quantity.RefusedException if one is missing or the hold is not there
   */
  void endHold(long athleteId, long holdId, String clearedBy, LocalDate clearedOn);

  /** Keeps for good that a coach decided otherwise than the guard. */
  void keep(GuardOverride override);

  /** What a coach decided otherwise for this athlete, newest first. */
  List<GuardOverride> overrides(long athleteId, int most);

  /** Keeps the rating of a session, replacing that of the same day. */
  void keep(SessionRating rating);

  /** Ratings of an athlete from a day on, oldest first. */
  List<SessionRating> ratings(long athleteId, LocalDate from);

  /** The limits and how contacts are weighed; the defaults if none were kept. */
  GuardSettings guard();

  /** Keeps the limits and how contacts are weighed. */
  void keep(GuardSettings settings);
}
