package boundwright.season.solve;

import ai.timefold.solver.core.api.domain.solution.PlanningEntityCollectionProperty;
import ai.timefold.solver.core.api.domain.solution.PlanningScore;
import ai.timefold.solver.core.api.domain.solution.PlanningSolution;
import ai.timefold.solver.core.api.score.buildin.bendablelong.BendableLongScore;
import boundwright.season.Venue;
import boundwright.season.year.YearProblem;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** The whole season as the solver library wants it. */
@PlanningSolution
public class Sheet {
  private List<YearProblem> problems = List.of();
  private List<Venue> venues = List.of();

  @PlanningEntityCollectionProperty private List<Cell> cells = new ArrayList<>();

  @PlanningScore(bendableHardLevelsSize = 1, bendableSoftLevelsSize = 7)
  private @Nullable BendableLongScore score;

  /** For the library, which copies sheets. */
  public Sheet() {}

  /** As it stands. */
  static Sheet of(Joint joint, List<Venue> venues) {
    Sheet out = new Sheet();
    List<YearProblem> problems = new ArrayList<>();
    for (int a = 0; a < joint.athletes(); a++) {
      YearProblem p = joint.line(a).problem();
      problems.add(p);
      for (int t = 0; t < p.days(); t++) {
        if (p.choices(t).size() > 1) {
          out.cells.add(new Cell(out.cells.size(), a, t, p, joint.line(a).chosen(t).index()));
        }
      }
    }
    out.problems = List.copyOf(problems);
    out.venues = List.copyOf(venues);
    return out;
  }

  /** As lines, with what they share. */
  Joint joint() {
    Joint out = new Joint(problems, venues);
    for (Cell c : cells) {
      out.choose(c.athlete(), c.day(), c.choice());
    }
    return out;
  }

  /** Days with a choice. */
  public List<Cell> getCells() {
    return cells;
  }

  /** The score. */
  public @Nullable BendableLongScore getScore() {
    return score;
  }

  /** Sets the score. */
  public void setScore(@Nullable BendableLongScore to) {
    score = to;
  }
}
