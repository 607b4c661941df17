package boundwright.store.movein;

import boundwright.quantity.RefusedException;
import java.util.List;
import java.util.function.Function;

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

  /**
   * Reads a sheet row by row; a row that is refused is shown so, and the others are read all the same.
   *
   * @param reads what a row becomes
   * @param look how that is shown
   * @param good takes what can be taken
   * @param looks takes how each row is shown, in the sheet's order
   */
  static <E> void each(Sheet sheet, Function<Sheet.Row, E> reads, Function<E, RowLook> look, List<E> good, List<RowLook> looks) {
    for (Sheet.Row row : sheet.rows()) {
      try {
        E entry = reads.apply(row);
        looks.add(look.apply(entry));
        good.add(entry);
      } catch (RefusedException e) {
        looks.add(new RowLook(row.line(), State.BAD, String.valueOf(e.getMessage())));
      }
    }
  }
}
