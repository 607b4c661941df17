package boundwright.season.conflict;

import boundwright.season.year.Choice;
import org.chocosolver.solver.exception.ContradictionException;
import org.chocosolver.solver.variables.IntVar;

/** Whole days between hard sessions, looked back from the last cell; a meet there is never refused for it. */
final class SpacingRule extends Rule {
  private final int last;
  private final boolean hardBefore;

  /**
   * Cells of the days that are too near, then the day itself.
   *
   * @param hardBefore whether a hard session before the season is too near
   */
  SpacingRule(IntVar[] cells, Choice[][] options, boolean hardBefore) {
    super(cells, options);
    this.last = cells.length - 1;
    this.hardBefore = hardBefore;
  }

  private static boolean refusable(Choice c) {
    return c.hard() && !c.meet();
  }

  @Override
  void filter() throws ContradictionException {
    boolean near = hardBefore;
    for (int i = 0; i < last; i++) {
      near |= !may(i, c -> !c.hard());
    }
    if (near) {
      keep(last, c -> !refusable(c));
    }
    if (!may(last, c -> !refusable(c))) {
      for (int i = 0; i < last; i++) {
        keep(i, c -> !c.hard());
      }
    }
  }

  @Override
  boolean kept() {
    boolean near = hardBefore;
    for (int i = 0; i < last; i++) {
      near |= only(i).hard();
    }
    return !near || !refusable(only(last));
  }
}
