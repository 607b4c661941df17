package boundwright.season.desk;

import boundwright.load.Finding;
import boundwright.load.LegCare.MedicalHold;
import boundwright.quantity.Notes;
import boundwright.season.Away;
import boundwright.season.Done;
import boundwright.season.Member;
import boundwright.season.PlannedDay;
import boundwright.season.SeasonInput;
import boundwright.season.SeasonPlan;
import boundwright.season.SeasonRules;
import boundwright.season.Venue;
import boundwright.season.check.GuardCheck;
import boundwright.season.check.TaperCheck;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/** Looks at a whole plan before it is published: the guard's word on every open day, tapers, and whether athletes and places are there. */
final class PlanCheck {
  private PlanCheck() {}

  private record There(LocalDate day, String venue) {}

  /**
   * What stands against it, each a sentence with the athlete or place and the day.
   *
   * @param holds medical holds that stand in the program, by the athlete's number
   */
  static List<String> against(SeasonInput input, SeasonPlan plan, Done done, Map<Long, List<MedicalHold>> holds) {
    List<GuardCheck.Judged> refused = new GuardCheck(input, holds).refused(plan, done);
    List<String> out = new ArrayList<>(held(plan, refused.stream().filter(PlanCheck::ofHold).toList()));
    refused.stream().filter(j -> !ofHold(j)).forEach(j -> out.add(name(plan, j.athleteId()) + ", " + j.date() + ": " + j.finding().said()));
    new TaperCheck(input).missed(plan, done).forEach(t -> out.add(taper(input.rules().taper(), t)));
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

  private static boolean ofHold(GuardCheck.Judged j) {
    return j.finding().rule() == Finding.Rule.MEDICAL_HOLD;
  }

  /** One sentence for each athlete who is held, not one for each day: a hold may last to the season's end. */
  private static List<String> held(SeasonPlan plan, List<GuardCheck.Judged> refused) {
    Map<Long, List<GuardCheck.Judged>> byAthlete = refused.stream().collect(Collectors.groupingBy(GuardCheck.Judged::athleteId, LinkedHashMap::new, Collectors.toList()));
    return byAthlete.values().stream()
        .map(
            all -> {
              GuardCheck.Judged first = all.get(0);
              String more = all.size() == 1 ? "" : " and " + Notes.counted(all.size() - 1, "more day");
              return name(plan, first.athleteId()) + ", " + first.date() + more + ": " + first.finding().said();
            })
        .toList();
  }

  private static String name(SeasonPlan plan, long athlete) {
    return plan.of(athlete).map(SeasonPlan.Year::athlete).orElse("");
  }

  private static String taper(SeasonRules.Taper rule, TaperCheck.Missed t) {
    long cut = Math.round(100 * t.cut());
    return t.athlete() + ", " + t.meet().name() + ", " + t.meet().date() + ": in the " + rule.days() + " days up to it the load "
        + (cut < 0 ? "rises by " + -cut : "falls by " + cut) + " %; at least " + Math.round(100 * rule.leastCut())
        + " % is asked before a main meet. Do less in them, give up a meet before it, or lessen the cut in the season's rules.";
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
