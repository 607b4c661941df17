package boundwright.athlete;

/** What is bounded on, softest first (order of preference: common practice). */
public enum Surface {
  /** Level grass: the best surface. */
  GRASS("grass"),
  /** Sprung gym floor. */
  SPRUNG_FLOOR("sprung floor"),
  /** A raised runway. */
  RAISED_RUNWAY("raised runway"),
  /** The ordinary track or runway: only if it must be. */
  TRACK("track"),
  /** Concrete: never. It can be named so that it can be refused. */
  CONCRETE("concrete");

  private final String label;

  Surface(String label) {
    this.label = label;
  }

  /** The surface in words, as written in files: {@code sprung floor}. */
  public String label() {
    return label;
  }
}
