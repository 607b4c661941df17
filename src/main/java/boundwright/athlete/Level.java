package boundwright.athlete;

/** How far an athlete has come; the three levels in which the trade's handbooks give their limits. */
public enum Level {
  /** New to bounding. */
  BEGINNER("beginner"),
  /** Bounds from a run-up with good form. */
  INTERMEDIATE("intermediate"),
  /** Competes in the triple jump from a full run-up. */
  ADVANCED("advanced");

  private final String label;

  Level(String label) {
    this.label = label;
  }

  /** The level in one word. */
  public String label() {
    return label;
  }
}
