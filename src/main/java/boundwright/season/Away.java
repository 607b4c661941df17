package boundwright.season;

/**
 * Days on which an athlete cannot train as usual.
 *
 * @param span which days
 * @param why what keeps them
 */
public record Away(Span span, Why why) {
  /** Strictest first. */
  public enum Why {
    /** Held, by licensed medical staff or by the coach: no training. */
    HELD("held"),
    /** Not there. */
    AWAY("away"),
    /** On the way to or from somewhere: no training. */
    TRAVEL("travel"),
    /** Exams and the like: little, and nothing hard. */
    SOFT("soft");

    private final String label;

    Why(String label) {
      this.label = label;
    }

    /** In one word, as in the file of a season. */
    public String label() {
      return label;
    }
  }
}
