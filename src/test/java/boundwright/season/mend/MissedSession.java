package boundwright.season.mend;

import boundwright.season.Done;
import boundwright.season.PlannedDay;
import boundwright.season.SeasonPlan;
import java.util.Random;

/**
 * A session that somebody missed; all else was done as planned.
 *
 * @param year whose
 * @param day which
 * @param done as it stands on the day after
 */
public record MissedSession(SeasonPlan.Year year, PlannedDay day, Done done) {
  /** Any session of anybody. */
  public static MissedSession of(SeasonPlan plan, Random random) {
    SeasonPlan.Year y = plan.years().get(random.nextInt(plan.years().size()));
    PlannedDay missed = y.days().get(random.nextInt(y.days().size()));
    return new MissedSession(y, missed, Done.asPlanned(plan, missed.date().plusDays(1)).without(y.athleteId(), missed.date()));
  }
}
