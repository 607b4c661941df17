package boundwright.season.year;

import boundwright.season.Session;
import org.jspecify.annotations.Nullable;

/**
 * What may be done on one day, with its numbers. Loads are whole hundredths of a standing-bound contact, so that sums are exact.
 *
 * @param index place among the choices of the day; 0 is rest
 * @param session what is done; null is rest
 * @param venue number of the place in the season; -1 for rest and for meets
 * @param right load of the right leg [1/100 standing-bound contact]
 * @param left load of the left leg [1/100 standing-bound contact]
 * @param contacts jump contacts of both legs
 * @param surplus contacts of the right leg less those of the left
 * @param hard whether the guard counts it as a hard session
 * @param meet whether it is a meet and nothing else
 * @param cautions what the guard cautions against whatever was before: surface, contacts
 */
public record Choice(
    int index, @Nullable Session session, int venue, int right, int left, int contacts, int surplus, boolean hard, boolean meet, int cautions) {
  /** Rest. */
  public static final Choice REST = new Choice(0, null, -1, 0, 0, 0, 0, false, false, 0);

  /** Whether nothing is done. */
  public boolean rest() {
    return session == null;
  }

  /** Of a part: 0 both legs, 1 right, 2 left [1/100 standing-bound contact]. */
  int units(int part) {
    return part == 0 ? right + left : part == 1 ? right : left;
  }

  Choice at(int place) {
    return new Choice(place, session, venue, right, left, contacts, surplus, hard, meet, cautions);
  }
}
