package boundwright.season.solve;

import ai.timefold.solver.core.api.score.director.ScoreDirector;
import ai.timefold.solver.core.impl.heuristic.move.AbstractMove;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.List;

/** Some days of one or two athletes chosen otherwise at once. */
final class Rearrange extends AbstractMove<Sheet> {
  private final Cell[] cells;
  private final int[] picks;

  Rearrange(Cell[] cells, int[] picks) {
    this.cells = cells;
    this.picks = picks;
  }

  @Override
  public boolean isMoveDoable(ScoreDirector<Sheet> director) {
    for (int i = 0; i < cells.length; i++) {
      if (cells[i].choice().index() != picks[i]) {
        return true;
      }
    }
    return false;
  }

  @Override
  protected void doMoveOnGenuineVariables(ScoreDirector<Sheet> director) {
    for (int i = 0; i < cells.length; i++) {
      director.beforeVariableChanged(cells[i], "pick");
      cells[i].setPick(picks[i]);
      director.afterVariableChanged(cells[i], "pick");
    }
  }

  @Override
  public Collection<?> getPlanningEntities() {
    return List.of(cells);
  }

  @Override
  public Collection<?> getPlanningValues() {
    List<Integer> out = new ArrayList<>();
    Arrays.stream(picks).forEach(out::add);
    return out;
  }
}
