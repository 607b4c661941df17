package boundwright.season.ladder;

import boundwright.load.account.DayLoad;
import boundwright.load.account.Work;
import boundwright.readiness.DrillFamily;
import boundwright.readiness.GateCase;
import boundwright.season.Climb;
import boundwright.season.Member;
import boundwright.season.SeasonInput;
import boundwright.season.SeasonPlan;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;

/**
 * From how many steps each athlete is expected to work on which day of a season.
 *
 * <p>A stay ends on the expected day: the mean, over all that is believed of the pace, of the first offered day on which the sessions
 * needed are attended and the least stay is over. The mean and not the median, because stays follow one another and only means add up.
 * It is decided on the first day from then on that lends itself: the athlete trains the family, nothing keeps them, no rest, no week of a
 * main meet of theirs. The longer approach begins on the next such day after it.
 *
 * <p>Each session offered is attended with the same chance, one by one; a fortnight missed by bad luck, which would ask for the least stay
 * again, is left out. Days of another family from as many steps count for
 * the least stay, as the gate counts them, if they were done already or the athlete works there already; not because that family is
 * planned to climb. A climb never plans a step back.
 */
public final class ClimbPlanner {
  private final SeasonInput input;
  private final ClimbRules rules;

  /** Plans seasons of this input. */
  public ClimbPlanner(SeasonInput input, ClimbRules rules) {
    this.input = input;
    this.rules = rules;
  }

  /**
   * The climbs of everybody, by the athlete's number.
   *
   * @param from first day that can still be planned
   * @param stays of the squad, see {@link StayRepository}; may be empty
   * @param turnout by athlete; who is not in it comes as {@link Turnout#UNKNOWN}
   */
  public Map<Long, List<PlannedClimb>> squad(LocalDate from, List<SquadStay> stays, Map<Long, Turnout> turnout) {
    SquadPace pace = SquadPace.of(stays, rules.stay(), rules.prior());
    Map<Long, List<PlannedClimb>> out = new TreeMap<>();
    for (Member m : input.squad()) {
      List<SquadStay> own = stays.stream().filter(s -> s.athleteId() == m.id()).toList();
      out.put(m.id(), climbs(m, from, own, pace, turnout.getOrDefault(m.id(), Turnout.UNKNOWN).share()));
    }
    return out;
  }

  /**
   * The climbs of one athlete, in the order of {@link DrillFamily}.
   *
   * @param own their stays
   * @param attendance share of the sessions offered to which they come, above 0 to 1
   */
  public List<PlannedClimb> climbs(Member m, LocalDate from, List<SquadStay> own, SquadPace pace, double attendance) {
    return climbs(m, OfferedDays.wanted(input, m), from, own, pace, attendance);
  }

  /** The same on the days of a plan: after the days are laid out, and whenever they were moved. */
  public List<PlannedClimb> climbs(Member m, SeasonPlan.Year year, LocalDate from, List<SquadStay> own, SquadPace pace, double attendance) {
    return climbs(m, OfferedDays.planned(input, m, year), from, own, pace, attendance);
  }

  private List<PlannedClimb> climbs(Member m, OfferedDays offered, LocalDate from, List<SquadStay> own, SquadPace pace, double attendance) {
    int start = Math.max(0, input.number(from));
    Past past = Past.of(m, own, input.first().plusDays(start));
    List<PlannedClimb> out = new ArrayList<>();
    for (DrillFamily f : DrillFamily.values()) {
      out.add(climb(m, f, offered, start, past, pace, attendance));
    }
    return out;
  }

  private PlannedClimb climb(Member m, DrillFamily f, OfferedDays offered, int start, Past past, SquadPace pace, double attendance) {
    int top = rules.top(f, m.fullSteps());
    int steps = m.steps(f);
    int at = start;
    int spent = past.spent(f, steps);
    List<Climb.Stage> stages = new ArrayList<>();
    List<Climb.DecisionDay> decisions = new ArrayList<>();
    List<StayForecast> stays = new ArrayList<>();
    stages.add(new Climb.Stage(steps, input.first()));
    while (at >= 0 && at < offered.days()) {
      StayWalk walk = new StayWalk(m, f, steps, at, spent, offered, past, rules, pace.of(m.id(), f, steps), attendance);
      StayForecast stay = walk.forecast(steps + 2 <= top);
      stays.add(stay);
      Climb.DecisionDay decision = stay.decision();
      at = decision == null ? -1 : walk.begins(decision.date());
      if (decision != null) {
        decisions.add(decision);
        steps += 2;
        spent = 0;
        if (at >= 0 && at < offered.days()) {
          stages.add(new Climb.Stage(steps, offered.day(at)));
        }
      }
    }
    return new PlannedClimb(new Climb(f, stages, decisions), stays);
  }

  /**
   * What was done before.
   *
   * @param done by day, the longest approach of each family [steps]
   * @param running stays that are not over, by family
   */
  record Past(TreeMap<LocalDate, Map<DrillFamily, Integer>> done, Map<DrillFamily, SquadStay> running) {
    static Past of(Member m, List<SquadStay> own, LocalDate before) {
      TreeMap<LocalDate, Map<DrillFamily, Integer>> done = new TreeMap<>();
      LocalDate since = before.minusDays(GateCase.LOOK_BACK_DAYS);
      for (DayLoad d : m.past().days()) {
        for (Work w : d.work()) {
          if (w.kind() == Work.Kind.BOUNDING) {
            put(done, d.date(), DrillFamily.of(w.sequence()), w.approachSteps());
          }
        }
      }
      Map<DrillFamily, SquadStay> running = new HashMap<>();
      for (SquadStay s : own) {
        s.sessions().forEach(d -> put(done, d, s.family(), s.steps()));
        if (s.end() == SquadStay.End.STILL_THERE) {
          running.put(s.family(), s);
        }
      }
      done.headMap(since).clear();
      done.tailMap(before).clear();
      return new Past(done, running);
    }

    private static void put(TreeMap<LocalDate, Map<DrillFamily, Integer>> done, LocalDate day, DrillFamily family, int steps) {
      done.computeIfAbsent(day, d -> new HashMap<>()).merge(family, steps, Math::max);
    }

    /** Approach steps now, as a running stay tells them; else {@code otherwise}. */
    int steps(DrillFamily f, int otherwise) {
      SquadStay s = running.get(f);
      return s == null ? otherwise : s.steps();
    }

    /** Sessions spent there already. */
    int spent(DrillFamily f, int steps) {
      SquadStay s = running.get(f);
      return s == null || s.steps() != steps ? 0 : Math.min(s.attended(), SessionsNeeded.MOST);
    }

    /** Days on which a family, or one that covers it, was done from at least as many steps. */
    TreeSet<LocalDate> from(DrillFamily f, int steps) {
      TreeSet<LocalDate> out = new TreeSet<>();
      for (Map.Entry<LocalDate, Map<DrillFamily, Integer>> day : done.entrySet()) {
        if (day.getValue().entrySet().stream().anyMatch(e -> e.getKey().covers(f) && e.getValue() >= steps)) {
          out.add(day.getKey());
        }
      }
      return out;
    }
  }
}
