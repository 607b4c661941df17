package boundwright.season.chance;

import boundwright.load.account.ContactWeights;
import boundwright.quantity.RefusedException;
import boundwright.season.Done;
import boundwright.season.Entry;
import boundwright.season.Meet;
import boundwright.season.Member;
import boundwright.season.PlannedDay;
import boundwright.season.SeasonInput;
import boundwright.season.SeasonPlan;
import boundwright.season.Session;
import boundwright.season.SessionKind;
import boundwright.season.solve.SeasonWork;
import boundwright.season.weeks.WantedWeeks;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** A plan that is simulated: as it was published, or as it would be with something else. Safe to share. */
final class Scenario {
  private static final int MEET_WEEK = 6;
  private static final int LIKE_DAYS = 28;

  final SeasonInput input;
  final SeasonPlan plan;
  final List<PlannedYear> years;
  final WhatIf.@Nullable MoreHours more;

  /** Of a plan that is one of this season ({@link PlanOfSeason}). */
  Scenario(SeasonInput input, SeasonPlan published, Done done, SeasonWork.Habits habits, WhatIf what) {
    this.input = input;
    this.more = what instanceof WhatIf.MoreHours m ? checked(input, m) : null;
    this.plan = what instanceof WhatIf.OneMeetLess m ? without(input, published, m, done.today()) : published;
    RepWeights weights = new RepWeights(new ContactWeights(input.rules().guard().scale()));
    WantedWeeks weeks = new WantedWeeks(input);
    List<PlannedYear> all = new ArrayList<>();
    for (Member m : input.squad()) {
      all.add(new PlannedYear(input, m, plan.of(m.id()).orElseThrow(), done, weeks.of(m), habits.stays(), habits.stay(), weights));
    }
    years = List.copyOf(all);
  }

  private static WhatIf.MoreHours checked(SeasonInput input, WhatIf.MoreHours m) {
    return new WhatIf.MoreHours(input.venue(m.venue()).key(), m.name(), m.day());
  }

  /** The plan without a meet for those to whom it is not a main one. */
  private static SeasonPlan without(SeasonInput input, SeasonPlan plan, WhatIf.OneMeetLess what, LocalDate today) {
    Meet meet = input.meet(what.meet());
    if (meet.date().isBefore(today)) {
      throw new RefusedException(meet.name() + " on " + meet.date() + " is over. Ask about a meet to come.");
    }
    boolean usual = input.squad().stream().anyMatch(m -> m.entry(meet).filter(i -> i == Entry.Importance.USUAL).isPresent());
    if (!usual) {
      throw new RefusedException(
          meet.name() + " is nobody's usual meet, so leaving it out changes what the plan is made for. Take it out of the season and plan anew.");
    }
    List<SeasonPlan.Year> years = new ArrayList<>();
    for (SeasonPlan.Year y : plan.years()) {
      Optional<Member> m = input.squad().stream().filter(x -> x.id() == y.athleteId()).findFirst();
      boolean drops = m.flatMap(x -> x.entry(meet)).filter(i -> i == Entry.Importance.USUAL).isPresent();
      years.add(drops ? without(input, plan, y, m.orElseThrow(), meet.date(), today) : y);
    }
    return new SeasonPlan(plan.name(), plan.version(), years);
  }

  private static SeasonPlan.Year without(SeasonInput input, SeasonPlan plan, SeasonPlan.Year y, Member m, LocalDate meet, LocalDate today) {
    List<PlannedDay> days = new ArrayList<>(y.days().stream().filter(d -> !d.date().equals(meet) || d.session().kind() != SessionKind.MEET).toList());
    if (days.size() < y.days().size()) {
      instead(input, plan, days, m, meet, today).ifPresent(days::add);
    }
    return new SeasonPlan.Year(y.athleteId(), y.athlete(), days, y.climbs(), y.wanted());
  }

  /** A session in the sand like the last one before, on the last free day up to the meet's on which it can be. */
  private static Optional<PlannedDay> instead(SeasonInput input, SeasonPlan plan, List<PlannedDay> days, Member m, LocalDate meet, LocalDate today) {
    Optional<PlannedDay> like =
        days.stream()
            .filter(d -> d.session().kind() == SessionKind.COMBINATIONS || d.session().kind() == SessionKind.JUMPS)
            .filter(d -> d.date().isBefore(meet) && !d.date().isBefore(meet.minusDays(LIKE_DAYS)) && input.period(d.date()).season() == input.period(meet).season())
            .max(Comparator.comparing(PlannedDay::date));
    int spacing = (int) Math.ceil(input.rules().guard().limits().spacingHours().refuse() / 24);
    for (int ago = 0; like.isPresent() && ago <= MEET_WEEK; ago++) {
      LocalDate day = meet.minusDays(ago);
      Session session = like.get().session();
      boolean free = !day.isBefore(today) && !day.isBefore(input.first()) && m.away(day).isEmpty() && m.days().contains(day.getDayOfWeek());
      boolean apart = days.stream().noneMatch(d -> Math.abs(d.date().toEpochDay() - day.toEpochDay()) < spacing);
      if (free && apart && room(input, plan, session, day)) {
        return Optional.of(new PlannedDay(day, session));
      }
    }
    return Optional.empty();
  }

  private static boolean room(SeasonInput input, SeasonPlan plan, Session session, LocalDate day) {
    long there = plan.years().stream().flatMap(y -> y.on(day).stream()).filter(s -> Objects.equals(s.venue(), session.venue())).count();
    return input.venues().stream().anyMatch(v -> v.key().equals(session.venue()) && v.open(day) && there < v.athletes());
  }
}
