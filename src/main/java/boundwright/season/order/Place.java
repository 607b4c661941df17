package boundwright.season.order;

import boundwright.athlete.Surface;
import boundwright.quantity.RefusedException;
import org.jspecify.annotations.Nullable;

/**
 * Where reps are done.
 *
 * @param name as the coach calls it, 1 to 40 characters
 * @param sand whether reps that end in sand can be done
 * @param flat whether reps on level ground can be done
 * @param lanes athletes who can run at once, 1 to 8
 * @param surface what is bounded on
 * @param open_min open so many minutes from the beginning [min]; null: as long as the session
 */
public record Place(String name, boolean sand, boolean flat, int lanes, Surface surface, @Nullable Integer open_min) {
  /** Refuses what cannot be used. */
  public Place {
    name = name.strip();
    if (name.isEmpty() || name.length() > 40) {
      throw new RefusedException("A place's name has 1 to 40 characters; this one has " + name.length() + ". Call it as the squad does.");
    }
    if (!sand && !flat) {
      throw new RefusedException("The place '" + name + "' is for nothing: say sand, flat, or both.");
    }
    OrderSettings.whole("lanes at '" + name + "'", lanes, 1, 8);
    if (open_min != null) {
      OrderSettings.whole("minutes for which '" + name + "' is open", open_min, 0, SessionAsk.MOST_MINUTES);
    }
    if (surface == Surface.CONCRETE) {
      throw new RefusedException("The place '" + name + "' is concrete: nobody bounds on it. Take another place, or leave these drills out.");
    }
  }

  /** Whether a drill can be done here. */
  public boolean serves(boolean inSand) {
    return inSand ? sand : flat;
  }
}
