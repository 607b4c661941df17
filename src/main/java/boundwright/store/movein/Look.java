package boundwright.store.movein;

import java.util.List;

/**
 * What a file would become; nothing was taken.
 *
 * @param columns as they were used, with the order of days that the file tells
 * @param ask whether the order of days must be asked before anything is taken
 * @param rows every row, in the file's order
 */
public record Look(Columns columns, boolean ask, List<RowLook> rows) {
  /** Takes a copy. */
  public Look {
    rows = List.copyOf(rows);
  }

  /** How many rows are in a state. */
  public int count(RowLook.State state) {
    return (int) rows.stream().filter(r -> r.state() == state).count();
  }

  /** Rows that would be taken. */
  public int takes() {
    return count(RowLook.State.NEW) + count(RowLook.State.FILLS);
  }

  /** Rows in a state, in the file's order. */
  public List<RowLook> in(RowLook.State state) {
    return rows.stream().filter(r -> r.state() == state).toList();
  }
}
