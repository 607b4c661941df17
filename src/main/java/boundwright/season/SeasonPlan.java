package boundwright.season;

import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * What everybody does on each day of a season.
 *
 * @param name of the season
 * @param version 1 for the first that was published, then one more each time; 0 before
 * @param years one for each athlete, in the order of the squad
 */
public record SeasonPlan(String name, int version, List<Year> years) {
  /** Takes a copy. */
  public SeasonPlan {
    years = List.copyOf(years);
  }

  /**
   * One athlete's season.
   *
   * @param athleteId whose
   * @param athlete name
   * @param days with work, in order
   * @param climbs one for each family of drills
   * @param wanted standing-bound contacts wanted in each week of the season, both legs, from its first day on
   */
  public record Year(long athleteId, String athlete, List<PlannedDay> days, List<Climb> climbs, List<Double> wanted) {
    /** Takes copies. */
    public Year {
      days = days.stream().sorted(Comparator.comparing(PlannedDay::date)).toList();
      climbs = List.copyOf(climbs);
      wanted = List.copyOf(wanted);
    }

    /** The session of a day. */
    public Optional<Session> on(LocalDate date) {
      return days.stream().filter(d -> d.date().equals(date)).map(PlannedDay::session).findFirst();
    }
  }

  /** The season of an athlete. */
  public Optional<Year> of(long athleteId) {
    return years.stream().filter(y -> y.athleteId() == athleteId).findFirst();
  }
}
