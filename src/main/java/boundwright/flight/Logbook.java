package boundwright.flight;

import boundwright.athlete.Athlete;
import boundwright.athlete.AthleteRepository;
import java.util.List;

/**
 * Logs reps, undoes them and keeps what was learned in step, in one transaction each. (Implementation follows.)
 */
public final class Logbook {
  private final RepStore store;
  private final AthleteRepository athletes;

  /** Works on this store. */
  public Logbook(RepStore store, AthleteRepository athletes) {
    this.store = store;
    this.athletes = athletes;
  }

  /** Logs a rep; on disk, and learned, when it returns. The answer carries the rep's number. */
  public Rep log(Rep rep) {
    throw new UnsupportedOperationException(store + "" + athletes);
  }

  /** Logs many reps of any athletes, all or none. */
  public List<Rep> logAll(List<Rep> reps) {
    throw new UnsupportedOperationException();
  }

  /** Takes a rep back as if it had never been logged; refuses a number that is not there. */
  public void undo(long athleteId, long repId) {
    throw new UnsupportedOperationException();
  }

  /** What is known of the athlete's flights now. */
  public FlightModel model(Athlete athlete) {
    throw new UnsupportedOperationException();
  }

  /** Call after the athlete's level, tests or run-ups changed: learns again from the reps. */
  public void relearn(long athleteId) {
    throw new UnsupportedOperationException();
  }
}
