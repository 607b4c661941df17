package boundwright.store.view;

import boundwright.load.CareRepository;
import boundwright.load.GuardOverride;
import boundwright.load.GuardSettings;
import boundwright.load.LegCare;
import boundwright.load.LegCare.MedicalHold;
import boundwright.load.LegCare.Pain;
import boundwright.load.rating.SessionRating;
import boundwright.quantity.RefusedException;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** The limits, and nothing of anybody's body. */
public final class SeenCare implements CareRepository {
  private final CareRepository all;

  /** Of this. */
  public SeenCare(CareRepository all) {
    this.all = all;
  }

  @Override
  public LegCare care(long athleteId, LocalDate today) {
    return LegCare.NONE;
  }

  @Override
  public Map<Long, LegCare> cares(List<Long> athletes, LocalDate today) {
    return Map.of();
  }

  @Override
  public List<Pain> pains(long athleteId, LocalDate from) {
    return List.of();
  }

  @Override
  public void setGrowing(long athleteId, boolean growing, @Nullable LocalDate firstSession) {
    throw refused();
  }

  @Override
  public Pain addPain(long athleteId, Pain pain) {
    throw refused();
  }

  @Override
  public void setSettled(long athleteId, long painId, boolean settled) {
    throw refused();
  }

  @Override
  public MedicalHold openHold(long athleteId, MedicalHold hold) {
    throw refused();
  }

  @Override
  public void endHold(long athleteId, long holdId, String clearedBy, LocalDate clearedOn) {
    throw refused();
  }

  @Override
  public void keep(GuardOverride override) {
    throw refused();
  }

  @Override
  public List<GuardOverride> overrides(long athleteId, int most) {
    return List.of();
  }

  @Override
  public void keep(SessionRating rating) {
    throw refused();
  }

  @Override
  public List<SessionRating> ratings(long athleteId, LocalDate from) {
    return List.of();
  }

  @Override
  public GuardSettings guard() {
    return all.guard();
  }

  @Override
  public void keep(GuardSettings settings) {
    throw refused();
  }

  private static RefusedException refused() {
    return new RefusedException("Whoever only reads enters nothing of anybody's body. Nothing was kept; tell the head coach.");
  }
}
