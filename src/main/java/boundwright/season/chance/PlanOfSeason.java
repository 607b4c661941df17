package boundwright.season.chance;

import boundwright.quantity.RefusedException;
import boundwright.season.Member;
import boundwright.season.PlannedDay;
import boundwright.season.SeasonInput;
import boundwright.season.SeasonPlan;
import boundwright.season.Venue;
import java.util.List;

/** Whether a plan is one of a season: its people, days and places are there. */
final class PlanOfSeason {
  private PlanOfSeason() {}

  static void check(SeasonInput input, SeasonPlan plan) {
    for (Member m : input.squad()) {
      if (plan.of(m.id()).filter(y -> y.athlete().equalsIgnoreCase(m.name())).isEmpty()) {
        throw other("has nobody called " + m.name() + " with the number " + m.id());
      }
    }
    List<String> places = input.venues().stream().map(Venue::key).toList();
    for (SeasonPlan.Year y : plan.years()) {
      for (PlannedDay d : y.days()) {
        if (d.date().isBefore(input.first()) || d.date().isAfter(input.last())) {
          throw other("has work on " + d.date() + ", which is not between " + input.first() + " and " + input.last());
        }
        String place = d.session().venue();
        if (place != null && !places.contains(place)) {
          throw other("has work at the place '" + place + "', which the season does not have");
        }
      }
    }
  }

  private static RefusedException other(String why) {
    return new RefusedException("This plan is not one of this season: it " + why + ". Name the plan that was made from this file, or plan anew.");
  }
}
