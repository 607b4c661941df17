package boundwright.evidence;

/** How far a number can be trusted. */
public enum Standing {
  /** Stood in the source's own text or abstract. */
  READ("read in the source"),
  /** Stood in another page that reports the source. */
  SECOND_HAND("second-hand: reported by another page"),
  /** Recalled, not confirmed; shown as such and always a setting. */
  MEMORY("from memory, not confirmed"),
  /** Arithmetic from inputs that are shown; no evidence about athletes. */
  WORKED("worked from the inputs shown"),
  /** A fact of the trade without a source. */
  COMMON_PRACTICE("common practice"),
  /** Chosen by the makers of this program so that it can work at all; a setting or a prior that data replace. */
  JUDGEMENT("judgement of the makers, replaced by your own data"),
  /** Computed from what this coach logged. */
  OWN_DATA("from your own log");

  private final String label;

  Standing(String label) {
    this.label = label;
  }

  /** The standing in words for the coach. */
  public String label() {
    return label;
  }
}
