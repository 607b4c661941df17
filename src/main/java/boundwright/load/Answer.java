package boundwright.load;

/** What the guard says, mildest first. */
public enum Answer {
  /** Within every limit. */
  ALLOWED("allowed"),
  /** Within the range in which care is asked. */
  CAUTION("caution"),
  /** Beyond a limit. */
  REFUSED("refused");

  private final String label;

  Answer(String label) {
    this.label = label;
  }

  /** The answer in one word. */
  public String label() {
    return label;
  }

  /** The stricter of two. */
  public Answer or(Answer other) {
    return compareTo(other) >= 0 ? this : other;
  }
}
