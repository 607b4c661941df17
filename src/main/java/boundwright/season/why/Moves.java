package boundwright.season.why;

import boundwright.quantity.Notes;
import boundwright.season.PlannedDay;
import boundwright.season.SeasonInput;
import boundwright.season.SeasonPlan;
import boundwright.season.Session;
import boundwright.season.SessionKind;
import boundwright.season.Venue;
import boundwright.season.why.Move.Answer;
import boundwright.season.year.Choice;
import boundwright.season.year.Level;
import boundwright.season.year.YearLine;
import boundwright.season.year.YearProblem;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * Where a session of an athlete may go, day by day: it is put there, the rules are asked, and it is taken back. On a day with a session of
 * its own the two change places. A place that is not open on the other day is exchanged for one that is, and a dose that is not offered
 * there for the nearest.
 */
public final class Moves {
  private final SeasonInput input;
  private final YearLine line;
  private final LocalDate today;
  private final RuleWords words;
  /** Others at each place, by day and place. */
  private final int[][] others;

  /**
   * In this plan.
   *
   * @param line of the athlete, as the plan has it; it is left as it is
   * @param plan what the others do
   * @param today first day that can be changed
   */
  public Moves(SeasonInput input, YearLine line, SeasonPlan plan, LocalDate today) {
    this.input = input;
    this.line = line.copy();
    this.today = today;
    this.words = new RuleWords(input);
    this.others = others(input, plan, line.problem().member().id());
  }

  private static int[][] others(SeasonInput input, SeasonPlan plan, long athlete) {
    List<String> keys = input.venues().stream().map(Venue::key).toList();
    int[][] out = new int[input.days()][keys.size()];
    for (SeasonPlan.Year y : plan.years()) {
      for (PlannedDay d : y.athleteId() == athlete ? List.<PlannedDay>of() : y.days()) {
        String key = d.session().venue();
        int v = key == null ? -1 : keys.indexOf(key);
        int t = input.number(d.date());
        if (v >= 0 && t >= 0 && t < out.length) {
          out[t][v]++;
        }
      }
    }
    return out;
  }

  /**
   * What the rules answer on each of these days; days outside the season are left out.
   *
   * @param from the day on which the session lies
   * @param session as it is planned
   */
  public List<Move> to(LocalDate from, Session session, List<LocalDate> days) {
    return days.stream().filter(d -> !d.isBefore(input.first()) && !d.isAfter(input.last())).map(d -> to(from, session, d)).toList();
  }

  private Move to(LocalDate from, Session session, LocalDate day) {
    if (day.equals(from)) {
      return new Move(day, Answer.HERE, "", session, null);
    }
    if (day.isBefore(today) || from.isBefore(today)) {
      return refused(day, "It is over.");
    }
    if (session.kind() == SessionKind.MEET) {
      return refused(day, "A meet stays on its day.");
    }
    YearProblem p = line.problem();
    int t0 = input.number(from);
    int t1 = input.number(day);
    if (p.choices(t1).size() == 1) {
      return refused(day, words.fixed(p.member(), t1, line.chosen(t1).session()));
    }
    Session other = line.chosen(t1).session();
    Optional<Choice> there = like(p, t1, session);
    Optional<Choice> here = other == null ? Optional.of(p.choices(t0).get(0)) : like(p, t0, other);
    if (there.isEmpty()) {
      return refused(day, "No place that is open allows " + session.kind().label() + ".");
    }
    if (here.isEmpty()) {
      return refused(day, "Its own session cannot go to the other day.");
    }
    return tried(day, t0, t1, here.get(), there.get());
  }

  private Move tried(LocalDate day, int t0, int t1, Choice here, Choice there) {
    if (full(t1, there)) {
      return refused(day, words.full(there.venue(), t1) + ".");
    }
    if (full(t0, here)) {
      return refused(day, words.full(here.venue(), t0) + ".");
    }
    Choice was0 = line.chosen(t0);
    Choice was1 = line.chosen(t1);
    long[] now = line.total().clone();
    line.choose(t0, here);
    line.choose(t1, there);
    long[] then = line.total().clone();
    String refusal = words.refusal(line);
    line.choose(t0, was0);
    line.choose(t1, was1);
    then[Level.PLACES.at()] += places(t0, here) + places(t1, there) - places(t0, was0) - places(t1, was1);
    then[Level.CHANGES.at()] = now[Level.CHANGES.at()]; // that days change is what was asked for
    Cost cost = Cost.between(now, then);
    Level level = cost.decides();
    if (level == Level.REFUSED) {
      return refused(day, Notes.capital(refusal) + ".");
    }
    return new Move(day, level == null ? Answer.ALLOWED : Answer.COSTS, level == null ? "" : Notes.capital(cost.said()) + ".", there.session(), here.session());
  }

  private boolean full(int t, Choice c) {
    return c.venue() >= 0 && others[t][c.venue()] >= input.venues().get(c.venue()).athletes();
  }

  /** By how much a day at two places more it is if the athlete goes there, beside the others. */
  private int places(int t, Choice c) {
    if (c.venue() < 0 || others[t][c.venue()] > 0) {
      return 0;
    }
    for (int n : others[t]) {
      if (n > 0) {
        return 1;
      }
    }
    return 0;
  }

  private static Move refused(LocalDate day, String said) {
    return new Move(day, Answer.REFUSED, said, null, null);
  }

  /** The same session on a day; else one of its kind, at its place if it is open, with about as many contacts. */
  private static Optional<Choice> like(YearProblem p, int t, Session session) {
    return p.choices(t).stream()
        .filter(c -> c.session() != null && c.session().kind() == session.kind())
        .min(
            Comparator.comparing((Choice c) -> !session.equals(c.session()))
                .thenComparing(c -> !samePlace(c.session(), session))
                .thenComparingInt(c -> Math.abs(c.contacts() - session.contacts())));
  }

  private static boolean samePlace(@Nullable Session a, Session b) {
    return a != null && Objects.equals(a.venue(), b.venue());
  }
}
