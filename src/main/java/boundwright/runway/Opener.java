package boundwright.runway;

/**
 * One way to open a window that is closed.
 *
 * @param way which of the three ways
 * @param said the advice in a sentence, with its figures in the coach's unit
 */
public record Opener(Way way, String said) {
  /** The three ways. */
  public enum Way {
    /** The same sequence cut shorter. */
    FEWER_CONTACTS,
    /** From more or fewer approach steps. */
    ANOTHER_RUNG,
    /** On grass with no sand: no window is needed. */
    ONTO_GRASS
  }
}
