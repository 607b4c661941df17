package boundwright.load.back;

import java.util.List;

/** What a way back needs kept. Every write is on disk when the method returns. */
public interface WayBackRepository {
  /** Those of an athlete, oldest first, running and ended, with their steps. */
  List<WayBack> of(long athleteId);

  /**
   * Begins one; returns it with its number.
   *
   * @throws boundwright.quantity.RefusedException while a medical hold stands on its first day, naming who must end it, or another way
   *     back of this leg runs
   */
  WayBack begin(long athleteId, WayBack way);

  /**
   * Keeps a step.
   *
   * @throws boundwright.quantity.RefusedException if the way is not this athlete's or has ended
   */
  BackStep step(long athleteId, long wayId, BackStep step);

  /**
   * Ends one, once.
   *
   * @throws boundwright.quantity.RefusedException if it is not this athlete's or ended already
   */
  void end(long athleteId, long wayId, WayBack.End end);
}
