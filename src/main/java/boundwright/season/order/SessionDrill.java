package boundwright.season.order;

import boundwright.footfall.Foot;
import boundwright.footfall.Sequence;

/**
 * A drill as it is to be run, in its place of the session's order.
 *
 * @param sequence what is run through in a rep
 * @param inSand whether it ends in sand
 * @param sets 1 to 20
 * @param reps in a set, 1 to 20
 * @param watched whether a coach has to see every rep of it
 * @param warmUp never dropped
 */
public record SessionDrill(Sequence sequence, boolean inSand, int sets, int reps, boolean watched, boolean warmUp) {
  /** Refuses counts out of range. */
  public SessionDrill {
    OrderSettings.whole("sets", sets, 1, 20);
    OrderSettings.whole("reps", reps, 1, 20);
  }

  /** Contacts of the right leg more than of the left in a rep; negative: fewer. */
  int rightOver() {
    return sequence.count(Foot.RIGHT) - sequence.count(Foot.LEFT);
  }
}
