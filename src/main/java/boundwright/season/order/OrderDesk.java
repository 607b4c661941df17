package boundwright.season.order;

import boundwright.athlete.Athlete;
import boundwright.flight.Rep;
import boundwright.flight.RepStore;
import boundwright.footfall.Sequence;
import boundwright.load.DayVerdict;
import boundwright.load.LoadDesk;
import boundwright.runway.CoachSettings;
import boundwright.runway.DayPlan;
import boundwright.runway.Drill;
import boundwright.runway.MarkAdvice;
import boundwright.runway.MarkAdvisor;
import boundwright.runway.Rungs;
import boundwright.runway.Tapes;
import boundwright.runway.Window;
import java.time.Clock;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** Asks the order of today's session: who is here and may bound, the plan, what works for whom, and what was done already. */
public final class OrderDesk {
  /** Over how many reps a sequence is known (judgement: the last months). */
  private static final int RECENT = 400;

  private final MarkAdvisor advisor;
  private final RepStore reps;
  private final LoadDesk load;
  private final Clock clock;

  /** Works on these; {@code clock} tells which day it is. */
  public OrderDesk(MarkAdvisor advisor, RepStore reps, LoadDesk load, Clock clock) {
    this.advisor = advisor;
    this.reps = reps;
    this.load = load;
    this.clock = clock;
  }

  /**
   * Today's session.
   *
   * @param here who is here; whose bounding is stopped is left out
   * @param minutes left for bounding [min]
   * @param helpers names of those who help and do not bound
   */
  public SessionAsk ask(List<Athlete> here, DayPlan plan, CoachSettings settings, OrderSettings order, int minutes, List<String> helpers) {
    Map<Long, DayVerdict> days = here.isEmpty() ? Map.of() : load.days(here);
    List<Athlete> bounding = here.stream().filter(a -> !held(days, a)).toList();
    List<Map<Long, MarkAdvice>> advice = new ArrayList<>();
    for (Drill d : plan.drills()) {
      advice.add(d.inSand() && !bounding.isEmpty() ? advisor.advise(bounding, d, settings) : Map.of());
    }
    List<SessionDrill> drills =
        plan.drills().stream().map(d -> new SessionDrill(d.sequence(), d.inSand(), d.sets(), d.reps(), order.watches(d.inSand()), false)).toList();
    List<OrderAthlete> athletes = new ArrayList<>();
    Rungs rungs = advisor.rungs();
    for (Athlete a : bounding) {
      athletes.add(new OrderAthlete(a.id(), a.name(), parts(a, plan, rungs, advice)));
    }
    List<Double> liked =
        bounding.isEmpty() ? List.of() : advisor.tapes(bounding, plan, settings).tapes().stream().map(Tapes.Tape::markToSand_m).toList();
    return new SessionAsk(
        athletes, drills, order.places(settings.facility().surface()), order.coaches(), helpers, minutes, liked, settings.unit(), order);
  }

  private static boolean held(Map<Long, DayVerdict> days, Athlete athlete) {
    DayVerdict day = days.get(athlete.id());
    return day != null && day.held();
  }

  private List<OrderAthlete.Part> parts(Athlete athlete, DayPlan plan, Rungs rungs, List<Map<Long, MarkAdvice>> advice) {
    LocalDate today = LocalDate.now(clock);
    List<Rep> recent = reps.recent(athlete.id(), RECENT);
    Set<Sequence> before = recent.stream().filter(r -> r.date().isBefore(today)).map(Rep::sequence).collect(Collectors.toSet());
    Map<String, Integer> done = new HashMap<>();
    recent.stream().filter(r -> r.date().equals(today)).forEach(r -> done.merge(r.sequence().letters(), 1, Integer::sum));
    List<OrderAthlete.Part> out = new ArrayList<>();
    for (int d = 0; d < plan.drills().size(); d++) {
      Drill drill = plan.drills().get(d);
      String letters = drill.sequence().letters();
      // reps of the same letters count for the first drill that still wants them
      int has = Math.min(done.getOrDefault(letters, 0), drill.sets() * drill.reps());
      done.merge(letters, -has, Integer::sum);
      out.add(
          new OrderAthlete.Part(
              rungs.stepsFor(athlete, drill), has, works(advice.get(d).get(athlete.id())),
              before.stream().noneMatch(s -> s.letters().equals(letters))));
    }
    return out;
  }

  private static @Nullable Window works(@Nullable MarkAdvice advice) {
    return advice == null ? null : advice.works();
  }

  /**
   * Athletes in the order of their reps from the beginning of the day, each as often as they run: what was done before the order was asked
   * stands first, so that whoever counts reps counts right.
   */
  public static List<Long> ofDay(SessionAsk ask, RunningOrder order) {
    List<Long> out = new ArrayList<>();
    for (OrderAthlete a : ask.athletes()) {
      for (int done = a.parts().stream().mapToInt(OrderAthlete.Part::done).sum(); done > 0; done--) {
        out.add(a.id());
      }
    }
    out.addAll(order.athletes());
    return List.copyOf(out);
  }
}
