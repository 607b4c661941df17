package boundwright.season;

/**
 * An athlete enters for a meet.
 *
 * @param meet its key
 * @param importance to the athlete
 */
public record Entry(String meet, Importance importance) {
  /** How important. */
  public enum Importance {
    /** A peak of the year: tapered for, and nothing new in its week. */
    MAIN("main"),
    /** Counts, and is jumped out of training. */
    USUAL("usual");

    private final String label;

    Importance(String label) {
      this.label = label;
    }

    /** In one word, as in the file of a season. */
    public String label() {
      return label;
    }
  }
}
