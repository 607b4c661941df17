package boundwright.season.solve;

import ai.timefold.solver.core.api.domain.entity.PlanningEntity;
import ai.timefold.solver.core.api.domain.lookup.PlanningId;
import ai.timefold.solver.core.api.domain.valuerange.CountableValueRange;
import ai.timefold.solver.core.api.domain.valuerange.ValueRangeFactory;
import ai.timefold.solver.core.api.domain.valuerange.ValueRangeProvider;
import ai.timefold.solver.core.api.domain.variable.PlanningVariable;
import boundwright.season.year.Choice;
import boundwright.season.year.YearProblem;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** One athlete's day with a choice, as the solver library wants it. */
@PlanningEntity
public class Cell {
  /** Read by the library. */
  @PlanningId
  @SuppressWarnings("UnusedVariable")
  private int id;
  private int athlete;
  private int day;
  private List<Choice> choices = List.of();

  @PlanningVariable(valueRangeProviderRefs = "picks")
  private @Nullable Integer pick;

  /** For the library, which copies cells. */
  public Cell() {}

  Cell(int id, int athlete, int day, YearProblem problem, int pick) {
    this.id = id;
    this.athlete = athlete;
    this.day = day;
    this.choices = problem.choices(day);
    this.pick = pick;
  }

  int athlete() {
    return athlete;
  }

  int day() {
    return day;
  }

  List<Choice> choices() {
    return choices;
  }

  Choice choice() {
    Integer at = pick;
    return choices.get(at == null ? 0 : at);
  }

  /** Indexes of the choices of the day. */
  @ValueRangeProvider(id = "picks")
  public CountableValueRange<Integer> picks() {
    return ValueRangeFactory.createIntValueRange(0, choices.size());
  }

  /** The index that is chosen. */
  public @Nullable Integer getPick() {
    return pick;
  }

  /** Chooses. */
  public void setPick(@Nullable Integer to) {
    pick = to;
  }
}
