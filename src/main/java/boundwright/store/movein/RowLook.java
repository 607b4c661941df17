package boundwright.store.movein;

/**
 * What a row of a file becomes.
 *
 * @param line of the file, from 1
 * @param state whether it is taken
 * @param told what it becomes, or why it cannot be taken
 */
public record RowLook(int line, State state, String told) {
  /** Whether a row is taken. */
  public enum State {
    /** Something new. */
    NEW("new"),
    /** Fills what was empty of somebody who is here. */
    FILLS("adding"),
    /** Is here already and changes nothing. */
    THERE("here already"),
    /** Is dated after today: taken if that is meant. */
    LATER("after today"),
    /** Cannot be taken. */
    BAD("refused");

    private final String label;

    State(String label) {
      this.label = label;
    }

    /** In a word or two. */
    public String label() {
      return label;
    }
  }
}
