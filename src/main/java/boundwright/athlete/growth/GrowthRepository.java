package boundwright.athlete.growth;

import java.util.List;
import java.util.Map;

/** What this part needs kept. Every write is on disk when the method returns; of somebody who is not there nothing is kept. */
public interface GrowthRepository {
  /** All measurements of somebody, by day and within a day as entered. */
  List<Measurement> measurements(long athleteId);

  /** The same of several, by the athlete's number, in one read; those without one are left out. */
  Map<Long, List<Measurement>> measurements(List<Long> athletes);

  /** The same of everybody. */
  Map<Long, List<Measurement>> everybody();

  /** Keeps a measurement and returns it with its number. */
  Measurement add(long athleteId, Measurement measurement);

  /** Takes one out. Whether it was there. */
  boolean remove(long athleteId, long measurementId);

  /** The settings; {@link GrowthSettings#DEFAULT} if none were kept. */
  GrowthSettings settings();

  /** Keeps the settings. */
  void keep(GrowthSettings settings);
}
