package boundwright.season.conflict;

import boundwright.season.year.Choice;
import java.util.function.Predicate;
import org.chocosolver.solver.exception.ContradictionException;
import org.chocosolver.solver.variables.IntVar;

/** How many of some cells are such a choice: at least so many and at most so many. */
final class CountRule extends Rule {
  private final Predicate<Choice> such;
  private final int least;
  private final int most;

  CountRule(IntVar[] cells, Choice[][] options, Predicate<Choice> such, int least, int most) {
    super(cells, options);
    this.such = such;
    this.least = least;
    this.most = most;
  }

  @Override
  void filter() throws ContradictionException {
    int can = 0;
    int must = 0;
    for (int i = 0; i < vars.length; i++) {
      can += may(i, such) ? 1 : 0;
      must += may(i, such.negate()) ? 0 : 1;
    }
    if (can < least || must > most) {
      fails();
    }
    for (int i = 0; i < vars.length; i++) {
      if (can == least && may(i, such)) {
        keep(i, such);
      } else if (must == most && may(i, such.negate())) {
        keep(i, such.negate());
      }
    }
  }

  @Override
  boolean kept() {
    int n = 0;
    for (int i = 0; i < vars.length; i++) {
      n += such.test(only(i)) ? 1 : 0;
    }
    return n >= least && n <= most;
  }
}
