package boundwright.store.view;

import boundwright.athlete.growth.GrowthRepository;
import boundwright.athlete.growth.GrowthSettings;
import boundwright.athlete.growth.Measurement;
import boundwright.quantity.RefusedException;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/** Measurements of one athlete or of nobody; of whoever is not seen nothing was measured. */
public final class SeenGrowth implements GrowthRepository {
  private final GrowthRepository all;
  private final @Nullable Long only;

  /** Of these the one, or nobody. */
  public SeenGrowth(GrowthRepository all, @Nullable Long only) {
    this.all = all;
    this.only = only;
  }

  @Override
  public List<Measurement> measurements(long athleteId) {
    return Objects.equals(only, athleteId) ? all.measurements(athleteId) : List.of();
  }

  @Override
  public Map<Long, List<Measurement>> measurements(List<Long> athletes) {
    return all.measurements(athletes.stream().filter(id -> Objects.equals(only, id)).toList());
  }

  @Override
  public Map<Long, List<Measurement>> everybody() {
    return only == null ? Map.of() : all.measurements(List.of(only));
  }

  @Override
  public GrowthSettings settings() {
    return all.settings();
  }

  @Override
  public Measurement add(long athleteId, Measurement measurement) {
    throw refused();
  }

  @Override
  public boolean remove(long athleteId, long measurementId) {
    throw refused();
  }

  @Override
  public void keep(GrowthSettings settings) {
    throw refused();
  }

  private static RefusedException refused() {
    return new RefusedException("Heights are entered by a coach or the medical staff. Nothing was kept; tell the coach.");
  }
}
