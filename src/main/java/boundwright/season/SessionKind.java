package boundwright.season;

/** What a day is for. */
public enum SessionKind {
  /** Bounding on level ground, soft where it can be. */
  BOUNDS("bounds", false),
  /** Combinations that end in sand, from the approach that the athlete masters. */
  COMBINATIONS("combinations", true),
  /** Full triple jumps from a short run-up. */
  JUMPS("short jumps", true),
  /** Standing tests, for the typical error and to see what came of it. */
  TEST("tests", false),
  /** A meet. */
  MEET("meet", true);

  private final String label;
  private final boolean sand;

  SessionKind(String label, boolean sand) {
    this.label = label;
    this.sand = sand;
  }

  /** In words, as in the file of a season. */
  public String label() {
    return label;
  }

  /** Whether it needs a pit. */
  public boolean sand() {
    return sand;
  }
}
