package boundwright.season.order;

import boundwright.athlete.Athlete;
import boundwright.quantity.RefusedException;
import boundwright.runway.Window;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * An athlete who is here.
 *
 * @param id number in the store; of a file, any that tells them apart
 * @param name as called at the track
 * @param parts one for each drill of the session, in order
 */
public record OrderAthlete(long id, String name, List<Part> parts) {
  /** Takes a copy. */
  public OrderAthlete {
    parts = List.copyOf(parts);
    if (name.isBlank()) {
      throw new RefusedException("An athlete has no name. Use the name called at the track.");
    }
  }

  /**
   * What the athlete does of a drill.
   *
   * @param steps approach steps
   * @param done reps of it that were done before the order begins, 0 or more
   * @param works marks from which their rep counts; null on the flat, and where no mark is sure
   * @param fresh whether the sequence is new to them
   */
  public record Part(int steps, int done, @Nullable Window works, boolean fresh) {
    /** Refuses impossible steps. */
    public Part {
      Athlete.checkSteps(steps);
      OrderSettings.whole("reps done", done, 0, 1000);
    }
  }
}
