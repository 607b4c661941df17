package boundwright.flight;

/** What one tap of the coach's thumb says about a rep. */
public enum Outcome {
  /** The landing was short of the sand. */
  SHORT("short"),
  /** The last flight ended in the sand and no contact fell in it. */
  IN("in"),
  /** A contact fell in the sand, or past the mark. */
  LATE("late"),
  /** The athlete broke off before the last flight: contacts on the legs, and no length to learn. */
  ABANDONED("abandoned"),
  /** Run through on the flat, where there is no sand to reach: contacts on the legs, and no length to learn. */
  DONE("done");

  private final String label;

  Outcome(String label) {
    this.label = label;
  }

  /** As written in files: {@code short}, {@code in}, {@code late}, {@code abandoned}, {@code done}. */
  public String label() {
    return label;
  }
}
