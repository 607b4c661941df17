package boundwright.flight;

import boundwright.athlete.Profile;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;

/** What the newest reps say of whoever has many and was not learned, until all are learned beside. Safe for many threads. */
final class Newest {
  /** So many speak for an athlete: more say nothing new of the squad in its snapshot, and older ones move no mark by a hand's breadth. */
  static final int REPS = 240;

  private final Map<Long, FlightModel> models = new ConcurrentHashMap<>();

  /** What they said, from this snapshot of the squad; empty where they were not asked. */
  Optional<FlightModel> said(long athleteId, SquadPrior squad) {
    return Optional.ofNullable(models.get(athleteId)).filter(m -> m.squad() == squad.number());
  }

  /**
   * Learns them.
   *
   * @param newest newest first
   */
  FlightModel learn(Profile profile, SquadPrior squad, List<Rep> newest) {
    FlightModel model = FlightModel.prior(profile, squad);
    for (int i = newest.size() - 1; i >= 0; i--) {
      model = model.learn(newest.get(i));
    }
    models.put(profile.athlete().id(), model);
    return model;
  }

  /** Whether they said this, and all are not learned yet. */
  boolean speak(long athleteId, FlightModel model) {
    return model.equals(models.get(athleteId));
  }

  /** All is learned, or is not going to be. */
  void end(long athleteId) {
    models.remove(athleteId);
  }
}
