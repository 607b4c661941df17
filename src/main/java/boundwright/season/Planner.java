package boundwright.season;

import java.util.Optional;

/** Makes a plan. */
@FunctionalInterface
public interface Planner {
  /**
   * A plan of the season; nothing is kept.
   *
   * @param season what it is planned from
   * @param published the plan that holds, if there is one: what can stay stays
   * @return every day of it passes the guard
   */
  SeasonPlan plan(SeasonInput season, Optional<SeasonPlan> published);
}
