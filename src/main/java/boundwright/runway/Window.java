package boundwright.runway;

import boundwright.quantity.RefusedException;

/**
 * The take-off marks, measured from the near edge of the sand, from which a rep counts with the asked chance: it ends in sand
 * and keeps the last contact out of it.
 *
 * @param min_m nearest mark that works [m]
 * @param max_m farthest mark that works [m], at least {@code min_m}
 */
public record Window(double min_m, double max_m) {
  /** Refuses an empty window. */
  public Window {
    if (!(min_m <= max_m)) {
      throw new RefusedException("Marks cannot work from " + min_m + " to " + max_m + " m: the nearer one comes first.");
    }
  }

  /** Width [m], 0 or more. */
  public double width() {
    return max_m - min_m;
  }

  /** The mark half-way [m]. */
  public double middle_m() {
    return (min_m + max_m) / 2;
  }

  /** Whether a mark lies in it. */
  public boolean holds(double mark_m) {
    return mark_m >= min_m && mark_m <= max_m;
  }
}
