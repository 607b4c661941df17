package boundwright.season.desk;

import boundwright.season.Away;
import boundwright.season.Done;
import boundwright.season.Member;
import boundwright.season.PlannedDay;
import boundwright.season.SeasonInput;
import boundwright.season.SeasonPlan;
import boundwright.season.Venue;
import boundwright.season.check.GuardCheck;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Looks at a whole plan before it is published: the guard's word on every open day, and whether athletes and places are there. */
final class PlanCheck {
  private PlanCheck() {}

  private record There(LocalDate day, String venue) {}

  /** What stands against it, each a sentence with the athlete or place and the day. */
  static List<String> against(SeasonInput input, SeasonPlan plan, Done done) {
    List<String> out = new ArrayList<>();
    for (GuardCheck.Judged j : new GuardCheck(input).refused(plan, done)) {
      out.add(plan.of(j.athleteId()).map(SeasonPlan.Year::athlete).orElse("") + ", " + j.date() + ": " + j.finding().said());
    }
    Map<There, Integer> there = new HashMap<>();
    for (Member m : input.squad()) {
      for (PlannedDay d : plan.of(m.id()).map(SeasonPlan.Year::days).orElse(List.of())) {
        if (!d.date().isBefore(done.today())) {
          absent(m, d.date()).ifPresent(out::add);
          String venue = d.session().venue();
          if (venue != null) {
            there.merge(new There(d.date(), venue), 1, Integer::sum);
          }
        }
      }
    }
    for (Venue v : input.venues()) {
      there.entrySet().stream()
          .filter(e -> e.getKey().venue().equals(v.key()))
          .sorted(Map.Entry.comparingByKey((a, b) -> a.day().compareTo(b.day())))
          .forEach(e -> place(v, e.getKey().day(), e.getValue()).ifPresent(out::add));
    }
    return out;
  }

  private static Optional<String> absent(Member m, LocalDate day) {
    return m.away(day)
        .filter(w -> w != Away.Why.SOFT)
        .map(w -> m.name() + ", " + day + ": " + (w == Away.Why.HELD ? "held, so no training." : w == Away.Why.TRAVEL ? "travelling, so no training." : "away."));
  }

  private static Optional<String> place(Venue v, LocalDate day, int athletes) {
    if (!v.open(day)) {
      return Optional.of(v.name() + ", " + day + ": closed, and " + athletes + " would train there.");
    }
    return athletes > v.athletes() ? Optional.of(v.name() + ", " + day + ": takes " + v.athletes() + " at once, and " + athletes + " would train there.") : Optional.empty();
  }
}
