package boundwright.season.desk;

import boundwright.quantity.RefusedException;
import boundwright.season.Climb;
import boundwright.season.Done;
import boundwright.season.Member;
import boundwright.season.PlannedDay;
import boundwright.season.SeasonInput;
import boundwright.season.SeasonPlan;
import boundwright.season.Session;
import boundwright.season.mend.Difference;
import boundwright.season.mend.Happened;
import boundwright.season.weeks.WantedWeeks;
import boundwright.season.why.Move;
import boundwright.season.why.Moves;
import boundwright.season.year.YearLine;
import boundwright.season.year.YearProblem;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/**
 * Moves a session of an athlete to another day: answers before it is put down, and makes a proposal of it, which is published with the same
 * check as every other. What waits to be published is moved on; else what is published.
 */
public final class MoveDesk {
  private final SeasonDesk desk;
  private final Proposals proposals;

  public MoveDesk(SeasonDesk desk, Proposals proposals) {
    this.desk = desk;
    this.proposals = proposals;
  }

  /**
   * The plan in which sessions are moved.
   *
   * @param proposal number of the proposal that it is of, 0 if it is published
   * @param published what holds
   * @param before what the season is planned from now
   * @param input what this plan is made from
   */
  private record Base(long proposal, SeasonPlan published, SeasonInput before, SeasonInput input, SeasonPlan plan) {}

  private Base base(long season) {
    SeasonPlan published = desk.published(season).orElseThrow(() -> new RefusedException("No plan is published yet, so there is nothing to move. Plan the season first."));
    SeasonInput now = desk.input(season);
    return proposals
        .of(season)
        .filter(p -> p.base() == published.version())
        .map(p -> new Base(p.number(), published, now, p.input(), p.plan()))
        .orElseGet(() -> new Base(0, published, now, now, published));
  }

  /**
   * The rules' answers.
   *
   * @param draft number of the proposal in which the session lies, 0 if what is published
   * @param athlete name
   * @param session that is moved
   * @param moves one for each day asked for
   */
  public record Answers(long draft, String athlete, Session session, List<Move> moves) {
    /** Takes a copy. */
    public Answers {
      moves = List.copyOf(moves);
    }
  }

  /** What the rules answer on each of these days. */
  public Answers answers(long season, long athlete, LocalDate from, List<LocalDate> days) {
    return answers(base(season), athlete, from, days);
  }

  private Answers answers(Base base, long athlete, LocalDate from, List<LocalDate> days) {
    SeasonInput input = desk.held(base.input());
    SeasonPlan.Year year = base.plan().of(athlete).orElseThrow(MoveDesk::gone);
    Session session = year.on(from).orElseThrow(MoveDesk::gone);
    int a = input.squad().stream().map(Member::id).toList().indexOf(athlete);
    if (a < 0) {
      throw gone();
    }
    Moves moves = new Moves(input, line(input, a, base.plan()), base.plan(), desk.today());
    return new Answers(base.proposal(), year.athlete(), session, moves.to(from, session, days));
  }

  /** The athlete's days alone: the rules about the others look at places only, so that an answer does not wait for the whole squad. */
  private YearLine line(SeasonInput input, int a, SeasonPlan plan) {
    Member m = input.squad().get(a);
    List<Climb> climbs = Happened.climbs(plan, input).get(a);
    Done done = desk.done(input.withSquad(List.of(m)));
    return YearLine.published(YearProblem.of(input, a, climbs, new WantedWeeks(input).of(m), plan, done));
  }

  private static RefusedException gone() {
    return new RefusedException("That session is not in the plan any more. Load the page again.");
  }

  /**
   * Puts the session down on a day, in a proposal.
   *
   * @param draft number of the proposal that the coach saw, 0 for none
   * @throws RefusedException if another was made meanwhile, or the rules refuse it
   */
  public Proposal put(long season, long draft, long athlete, LocalDate from, LocalDate to) {
    Base base = base(season);
    if (base.proposal() != draft) {
      throw new RefusedException("The plan that you saw is not what waits now: it was published, dropped or replaced. Look at the week again.");
    }
    Move move = answers(base, athlete, from, List.of(to)).moves().stream().findFirst().orElseThrow(() -> new RefusedException("The day " + to + " lies outside the season."));
    Session there = move.there();
    if (there == null || move.answer() == Move.Answer.HERE) {
      throw new RefusedException(there == null ? to + ": " + move.said() : "The session lies on " + to + " already.");
    }
    SeasonPlan plan = moved(base.plan(), athlete, new PlannedDay(to, there), from, move.here());
    Proposal out =
        new Proposal(
            proposals.number(), season, true, base.published().version(), base.before(), base.input(), plan, Difference.between(base.published(), plan, desk.today()),
            Map.of(), desk.against(base.input(), plan));
    proposals.offer(out);
    return out;
  }

  private static SeasonPlan moved(SeasonPlan plan, long athlete, PlannedDay to, LocalDate from, @Nullable Session here) {
    List<SeasonPlan.Year> years = new ArrayList<>();
    for (SeasonPlan.Year y : plan.years()) {
      if (y.athleteId() != athlete) {
        years.add(y);
        continue;
      }
      List<PlannedDay> days = y.days().stream().filter(d -> !d.date().equals(from) && !d.date().equals(to.date())).collect(Collectors.toCollection(ArrayList::new));
      days.add(to);
      if (here != null) {
        days.add(new PlannedDay(from, here));
      }
      years.add(new SeasonPlan.Year(y.athleteId(), y.athlete(), days, y.climbs(), y.wanted()));
    }
    return new SeasonPlan(plan.name(), 0, years);
  }
}
