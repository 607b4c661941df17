package boundwright.season;

/** What a day is for. */
public enum SessionKind {
  /** Bounding on level ground, soft where it can be. */
  BOUNDS(0, "bounds", false),
  /** Combinations that end in sand, from the approach that the athlete masters. */
  COMBINATIONS(1, "combinations", true),
  /** Full triple jumps from a short run-up. */
  JUMPS(2, "short jumps", true),
  /** Standing tests, for the typical error and to see what came of it. */
  TEST(3, "tests", false),
  /** A meet. */
  MEET(4, "meet", true);

  private final int at;
  private final String label;
  private final boolean sand;

  SessionKind(int at, String label, boolean sand) {
    this.at = at;
    this.label = label;
    this.sand = sand;
  }

  /** Its place in the order, 0 the first: where it stands in arrays. */
  public int at() {
    return at;
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
