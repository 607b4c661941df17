package boundwright.season;

import boundwright.load.account.DayLoad;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * What really happened so far: the days before today are as they were, whatever was planned.
 *
 * @param today the first day that is still open
 * @param work what was done on the days before, by athlete; a day that is not in it was a day of rest
 */
public record Done(LocalDate today, Map<Long, List<DayLoad>> work) {
  /** Takes copies. */
  public Done {
    Map<Long, List<DayLoad>> copy = new HashMap<>();
    LocalDate open = today;
    work.forEach((id, days) -> copy.put(id, days.stream().filter(d -> d.date().isBefore(open)).toList()));
    work = Map.copyOf(copy);
  }

  /** Nothing yet: every day of the season is open. */
  public static Done nothing(SeasonInput input) {
    return new Done(input.first(), Map.of());
  }

  /** As a plan would have it: everything before today was done as planned. */
  public static Done asPlanned(SeasonPlan plan, LocalDate today) {
    Map<Long, List<DayLoad>> work = new HashMap<>();
    for (SeasonPlan.Year y : plan.years()) {
      work.put(y.athleteId(), y.days().stream().filter(d -> d.date().isBefore(today)).map(d -> d.session().on(d.date())).toList());
    }
    return new Done(today, work);
  }

  /** The same, but that an athlete did nothing on a day. */
  public Done without(long athleteId, LocalDate day) {
    Map<Long, List<DayLoad>> copy = new HashMap<>(work);
    copy.put(athleteId, of(athleteId).stream().filter(d -> !d.date().equals(day)).toList());
    return new Done(today, copy);
  }

  /** What an athlete did. */
  public List<DayLoad> of(long athleteId) {
    return work.getOrDefault(athleteId, List.of());
  }
}
