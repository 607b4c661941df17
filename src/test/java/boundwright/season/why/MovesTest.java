package boundwright.season.why;

import static org.assertj.core.api.Assertions.assertThat;

import boundwright.quantity.Notes;
import boundwright.season.Climb;
import boundwright.season.Done;
import boundwright.season.MadeUpSeason;
import boundwright.season.PlannedDay;
import boundwright.season.SeasonInput;
import boundwright.season.SeasonPlan;
import boundwright.season.Session;
import boundwright.season.SessionKind;
import boundwright.season.Venue;
import boundwright.season.check.GuardCheck;
import boundwright.season.mend.Happened;
import boundwright.season.solve.SeasonPlanner;
import boundwright.season.why.Move.Answer;
import boundwright.season.year.Level;
import boundwright.season.year.YearLine;
import java.time.Duration;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** What is answered before a session is put down holds once it is: the guard refuses nothing, and the whole score differs by what was said. */
class MovesTest {
  private static final SeasonInput INPUT = MadeUpSeason.of(5, 6, 3);
  private static final SeasonPlan PLAN = new SeasonPlanner(INPUT, MadeUpSeason.climbs(INPUT, 8), null, 3).plan(Duration.ZERO, t -> {}).plan();

  private static SeasonPlanner planner(SeasonPlan plan) {
    List<List<Climb>> climbs = Happened.climbs(plan, INPUT);
    return new SeasonPlanner(INPUT, climbs, null, plan, Done.nothing(INPUT), 1);
  }

  private static SeasonPlan moved(int a, LocalDate from, Move m) {
    List<SeasonPlan.Year> years = new ArrayList<>(PLAN.years());
    SeasonPlan.Year y = years.get(a);
    List<PlannedDay> days = new ArrayList<>(y.days().stream().filter(d -> !d.date().equals(from) && !d.date().equals(m.date())).toList());
    Session there = m.there();
    Session here = m.here();
    assertThat(there).isNotNull();
    if (there != null) {
      days.add(new PlannedDay(m.date(), there));
    }
    if (here != null) {
      days.add(new PlannedDay(from, here));
    }
    years.set(a, new SeasonPlan.Year(y.athleteId(), y.athlete(), days, y.climbs(), y.wanted()));
    return new SeasonPlan(PLAN.name(), 0, years);
  }

  private static Cost between(long[] now, long[] then) {
    Map<Level, Long> more = new EnumMap<>(Level.class);
    for (Level level : Level.values()) {
      long d = level.of(then) - level.of(now);
      if (d != 0 && level != Level.CHANGES) {
        more.put(level, d);
      }
    }
    return new Cost(more);
  }

  @Test
  void theAnswerIsThatOfTheWholePlanOnceItIsPutDown() {
    SeasonPlanner before = planner(PLAN);
    long[] now = before.published().total();
    Map<Answer, Integer> seen = new EnumMap<>(Answer.class);
    for (int a = 0; a < PLAN.years().size(); a++) {
      YearLine line = before.published().line(a);
      Moves moves = new Moves(INPUT, line, PLAN, INPUT.first());
      for (PlannedDay d : PLAN.years().get(a).days()) {
        LocalDate monday = d.date().minusDays(d.date().getDayOfWeek().getValue() - 1L);
        for (Move m : moves.to(d.date(), d.session(), IntStream.range(0, 7).mapToObj(monday::plusDays).toList())) {
          seen.merge(m.answer(), 1, Integer::sum);
          String as = PLAN.years().get(a).athlete() + " " + d.date() + " to " + m.date() + ": " + m.said();
          if (m.answer() == Answer.ALLOWED || m.answer() == Answer.COSTS) {
            SeasonPlan then = moved(a, d.date(), m);
            assertThat(new GuardCheck(INPUT).refused(then)).as(as).isEmpty();
            Cost cost = between(now, planner(then).published().total());
            assertThat(cost.decides() == null).as(as).isEqualTo(m.answer() == Answer.ALLOWED);
            assertThat(m.said()).as(as).isEqualTo(cost.decides() == null ? "" : Notes.capital(cost.said()) + ".");
          } else if (m.answer() == Answer.REFUSED) {
            assertThat(m.said()).as(as).endsWith(".");
          }
        }
      }
      assertThat(line.total()).as("the line is left as it is").isEqualTo(planner(PLAN).published().line(a).total());
    }
    assertThat(seen).containsKeys(Answer.HERE, Answer.ALLOWED, Answer.COSTS, Answer.REFUSED);
  }

  @Test
  void aFullPlaceAMeetAndWhatIsOverAreSaid() {
    SeasonPlan.Year y = PLAN.years().get(0);
    PlannedDay d = y.days().stream().filter(x -> x.session().kind() == SessionKind.BOUNDS).skip(1).findFirst().orElseThrow();
    YearLine line = planner(PLAN).published().line(0);
    LocalDate next = d.date().plusDays(1);
    assertThat(new Moves(INPUT, line, PLAN, d.date().plusDays(1)).to(d.date(), d.session(), List.of(next)).get(0).said()).isEqualTo("It is over.");
    Session meet = new Session(SessionKind.MEET, null, List.of());
    assertThat(new Moves(INPUT, line, PLAN, INPUT.first()).to(d.date(), meet, List.of(next)).get(0).said()).isEqualTo("A meet stays on its day.");
    List<Move> open = new Moves(INPUT, line, PLAN, INPUT.first()).to(d.date(), d.session(), INPUT.first().datesUntil(INPUT.last()).toList());
    Move may = open.stream().filter(m -> m.answer() == Answer.ALLOWED || m.answer() == Answer.COSTS).findFirst().orElseThrow();
    Session there = may.there();
    assertThat(there).isNotNull();
    String venue = there == null ? "" : String.valueOf(there.venue());
    Venue place = INPUT.venues().stream().filter(v -> v.key().equals(venue)).findFirst().orElseThrow();
    List<SeasonPlan.Year> crowd = new ArrayList<>(PLAN.years());
    for (long k = 0; k < place.athletes(); k++) {
      crowd.add(new SeasonPlan.Year(1000 + k, "Crowd", List.of(new PlannedDay(may.date(), new Session(SessionKind.BOUNDS, venue, List.of()))), List.of(), List.of()));
    }
    assertThat(new Moves(INPUT, line, new SeasonPlan("", 0, crowd), INPUT.first()).to(d.date(), d.session(), List.of(may.date())).get(0).said())
        .isEqualTo(place.name() + " takes " + place.athletes() + " at once and is full on " + may.date() + ".");
  }
}
