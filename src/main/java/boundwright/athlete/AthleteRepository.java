package boundwright.athlete;

import java.util.List;
import java.util.Optional;

/** What this part needs kept. Every write is on disk when the method returns. */
public interface AthleteRepository {
  /** All athletes by name. */
  List<Athlete> all();

  /** The athlete with this number. */
  Optional<Athlete> byId(long id);

  /** The athlete called so, whatever the case and the spaces around it. */
  Optional<Athlete> byName(String name);

  /** Stores a new athlete and returns it with its number; refuses a name that is taken. */
  Athlete add(Athlete athlete);

  /** Replaces the athlete with the same number. */
  void update(Athlete athlete);

  /** The athlete with tests and run-ups; one that follows from a test score has number 0 and goes when the score does. */
  Profile profile(Athlete athlete);

  /** The athletes with tests and run-ups, in the order given, in a few reads for all. */
  List<Profile> profiles(List<Athlete> squad);

  /** Adds a standing test or best mark. */
  void addKnownMark(long athleteId, KnownMark mark);

  /** Takes a standing test or best mark out; nothing happens if it is not there. */
  void removeKnownMark(long athleteId, long markId);

  /** Adds a measured run-up. */
  void addRunUp(long athleteId, MeasuredRunUp runUp);

  /** Takes a measured run-up out; nothing happens if it is not there. */
  void removeRunUp(long athleteId, long runUpId);

  /** Erases a person: the athlete and everything that is kept of them. Nothing happens if they are not there. */
  void erase(long id);
}
