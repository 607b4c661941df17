package boundwright.athlete.person;

/** Female or male, where a table asks; it may be left out. */
public enum Sex {
  /** Female. */
  FEMALE("female"),
  /** Male. */
  MALE("male");

  private final String label;

  Sex(String label) {
    this.label = label;
  }

  /** In one word. */
  public String label() {
    return label;
  }
}
