package boundwright.flight;

import boundwright.athlete.Profile;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;

/**
 * Answers for whoever has many reps of which nothing was learned, as after an update whose models are others: from their newest reps, until
 * all are learned beside. Safe for many threads.
 */
final class Newest {
  /** So many speak for an athlete: more say nothing new of the squad in its snapshot, and older ones move no mark by a hand's breadth. */
  static final int REPS = 240;

  private final RepStore store;
  private final Map<Long, FlightModel> models = new ConcurrentHashMap<>();

  Newest(RepStore store) {
    this.store = store;
  }

  /** Whether so many reps are logged that whoever asks is not to wait for them. */
  boolean wanted(long athleteId) {
    return models.containsKey(athleteId) || store.recent(athleteId, REPS + 1).size() > REPS;
  }

  /** What was said last, from this snapshot of the squad. */
  Optional<FlightModel> known(long athleteId, SquadPrior squad) {
    return Optional.ofNullable(models.get(athleteId)).filter(m -> m.squad() == squad.number());
  }

  /** Learns the newest reps. */
  FlightModel learn(Profile profile, SquadPrior squad) {
    FlightModel model = FlightModel.prior(profile, squad);
    List<Rep> newest = store.recent(profile.athlete().id(), REPS);
    for (int i = newest.size() - 1; i >= 0; i--) {
      model = model.learn(newest.get(i));
    }
    models.put(profile.athlete().id(), model);
    return model;
  }

  /** All is learned, or is not going to be. */
  void end(long athleteId) {
    models.remove(athleteId);
  }

  /** Those of whom the newest reps speak. */
  Set<Long> now() {
    return Set.copyOf(models.keySet());
  }
}
