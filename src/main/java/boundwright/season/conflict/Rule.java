package boundwright.season.conflict;

import boundwright.season.year.Choice;
import java.util.function.Predicate;
import org.chocosolver.solver.constraints.Propagator;
import org.chocosolver.solver.constraints.PropagatorPriority;
import org.chocosolver.solver.exception.ContradictionException;
import org.chocosolver.solver.variables.IntVar;
import org.chocosolver.util.ESat;

/**
 * A rule over some cells, in whole numbers of any size: it takes out what cannot be part of any choice that keeps it, as far as the least
 * and the most of each cell show, and is exact when every cell has one choice left.
 */
abstract class Rule extends Propagator<IntVar> {
  private final Choice[][] options;

  /** Over cells, each with its options. */
  Rule(IntVar[] cells, Choice[][] options) {
    super(cells, PropagatorPriority.LINEAR, false);
    this.options = options;
  }

  /** Takes out what cannot be. */
  abstract void filter() throws ContradictionException;

  /** Whether it is kept by the one choice that each cell has left. */
  abstract boolean kept();

  @Override
  public void propagate(int mask) throws ContradictionException {
    filter();
  }

  @Override
  public ESat isEntailed() {
    for (IntVar v : vars) {
      if (!v.isInstantiated()) {
        return ESat.UNDEFINED;
      }
    }
    return kept() ? ESat.TRUE : ESat.FALSE;
  }

  Choice option(int i, int value) {
    return options[i][value];
  }

  Choice only(int i) {
    return options[i][vars[i].getValue()];
  }

  static long units(Choice c, int part) {
    return part == 0 ? (long) c.right() + c.left() : part == 1 ? c.right() : c.left();
  }

  /** Least that a cell can be. */
  long least(int i, int part) {
    long out = Long.MAX_VALUE;
    int end = vars[i].getUB();
    for (int v = vars[i].getLB(); v <= end; v = vars[i].nextValue(v)) {
      out = Math.min(out, units(options[i][v], part));
    }
    return out;
  }

  /** Most that a cell can be. */
  long most(int i, int part) {
    long out = Long.MIN_VALUE;
    int end = vars[i].getUB();
    for (int v = vars[i].getLB(); v <= end; v = vars[i].nextValue(v)) {
      out = Math.max(out, units(options[i][v], part));
    }
    return out;
  }

  /** Whether a cell can be such a choice. */
  boolean may(int i, Predicate<Choice> such) {
    int end = vars[i].getUB();
    for (int v = vars[i].getLB(); v <= end; v = vars[i].nextValue(v)) {
      if (such.test(options[i][v])) {
        return true;
      }
    }
    return false;
  }

  /** Leaves a cell only such choices. */
  void keep(int i, Predicate<Choice> such) throws ContradictionException {
    int end = vars[i].getUB();
    for (int v = vars[i].getLB(); v <= end; v = vars[i].nextValue(v)) {
      if (!such.test(options[i][v])) {
        vars[i].removeValue(v, this);
      }
    }
  }
}
