package boundwright.footfall;

/** The foot of a contact. */
public enum Foot {
  /** Right: drawn filled everywhere. */
  RIGHT('R', "right"),
  /** Left: drawn outlined everywhere. */
  LEFT('L', "left");

  private final char letter;
  private final String label;

  Foot(char letter, String label) {
    this.letter = letter;
    this.label = label;
  }

  /** {@code R} or {@code L}. */
  public char letter() {
    return letter;
  }

  /** {@code right} or {@code left}. */
  public String label() {
    return label;
  }

  /** The other foot. */
  public Foot other() {
    return this == RIGHT ? LEFT : RIGHT;
  }
}
