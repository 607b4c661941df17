package boundwright.season.solve;

import ai.timefold.solver.core.api.score.buildin.bendablelong.BendableLongScore;
import ai.timefold.solver.core.api.score.calculator.IncrementalScoreCalculator;
import boundwright.season.year.Level;
import org.jspecify.annotations.Nullable;

/**
 * The score of a sheet, kept right from change to change by {@link Joint}. Rules are methods of {@code season.year.YearRules}; nothing is
 * decided here.
 */
public final class SheetScore implements IncrementalScoreCalculator<Sheet, BendableLongScore> {
  private @Nullable Joint joint;

  /** For the library. */
  public SheetScore() {}

  private Joint lines() {
    Joint j = joint;
    if (j == null) {
      throw new IllegalStateException("no sheet yet");
    }
    return j;
  }

  @Override
  public void resetWorkingSolution(Sheet sheet) {
    joint = sheet.joint();
  }

  @Override
  public void beforeEntityAdded(Object entity) {
    throw new UnsupportedOperationException("days are never added");
  }

  @Override
  public void afterEntityAdded(Object entity) {
    throw new UnsupportedOperationException("days are never added");
  }

  @Override
  public void beforeVariableChanged(Object entity, String variable) {
    // the old choice is known to the line
  }

  @Override
  public void afterVariableChanged(Object entity, String variable) {
    Cell c = (Cell) entity;
    lines().choose(c.athlete(), c.day(), c.choice());
  }

  @Override
  public void beforeEntityRemoved(Object entity) {
    throw new UnsupportedOperationException("days are never removed");
  }

  @Override
  public void afterEntityRemoved(Object entity) {
    throw new UnsupportedOperationException("days are never removed");
  }

  @Override
  public BendableLongScore calculateScore() {
    return score(lines().total());
  }

  static BendableLongScore score(long[] total) {
    long[] soft = new long[total.length - 1];
    for (int k = 1; k < total.length; k++) {
      soft[k - 1] = -total[k];
    }
    return BendableLongScore.of(new long[] {-total[Level.REFUSED.at()]}, soft);
  }
}
