package boundwright.load;

/** The part of the year, as far as the handbooks' contact limits tell it apart. */
public enum Season {
  /** General preparation. */
  OFF_SEASON("off-season"),
  /** Specific preparation and pre-competition. */
  PRE_SEASON("pre-season"),
  /** Competition. */
  IN_SEASON("in season");

  private final String label;

  Season(String label) {
    this.label = label;
  }

  /** The part of the year in words. */
  public String label() {
    return label;
  }
}
