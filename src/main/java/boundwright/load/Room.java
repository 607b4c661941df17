package boundwright.load;

/**
 * What may still be added to a day, in alternate bounds from so many steps: the inverse of the rules about contacts.
 *
 * @param steps approach steps
 * @param contacts most contacts that stay simply allowed, 0 to {@value #MOST}
 * @param least the same with the power between 4 and 9 that leaves the least
 * @param most the same with the power that leaves the most
 * @param beforeRefused most contacts that are not refused, at least {@code contacts}
 */
public record Room(int steps, int contacts, int least, int most, int beforeRefused) {
  /** Nobody is told more than this. */
  public static final int MOST = 400;

  /** Whether the power decides. */
  public boolean swings() {
    return least != most;
  }

  /** In a few words: {@code 12 from 6 steps}. */
  public String said() {
    return contacts + (steps == 0 ? " from standing" : steps == 1 ? " from 1 step" : " from " + steps + " steps");
  }
}
