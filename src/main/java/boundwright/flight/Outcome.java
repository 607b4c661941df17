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
  ABANDONED("abandoned");

  private final String label;

  Outcome(String label) {
    this.label = label;
  }

  /** As written in files: {@code short}, {@code in}, {@code late}, {@code abandoned}. */
  public String label() {
    return label;
  }
}
