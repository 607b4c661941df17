package boundwright.season.solve;

import boundwright.athlete.Athlete;
import boundwright.load.CareRepository;
import boundwright.load.LegCare;
import boundwright.load.LegCare.MedicalHold;
import boundwright.load.WorkLog;
import boundwright.load.account.DayLoad;
import boundwright.load.back.LegBack;
import boundwright.readiness.GateRules;
import boundwright.season.Climb;
import boundwright.season.Done;
import boundwright.season.Member;
import boundwright.season.SeasonInput;
import boundwright.season.SeasonPlan;
import boundwright.season.ladder.ClimbPlanner;
import boundwright.season.ladder.ClimbRules;
import boundwright.season.ladder.LeastStayCheck;
import boundwright.season.ladder.PlannedClimb;
import boundwright.season.ladder.SquadPace;
import boundwright.season.ladder.SquadStay;
import boundwright.season.ladder.StayRepository;
import boundwright.season.ladder.Turnout;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** What planning takes from the log: how long this squad stays at an approach, how often they come, what was done. */
public final class SeasonWork {
  private static final int TURNOUT_DAYS = 90;
  private static final StayRepository NO_STAYS =
      new StayRepository() {
        @Override
        public List<SquadStay> stays(LocalDate today) {
          return List.of();
        }

        @Override
        public Map<Long, Turnout> turnout(LocalDate from, LocalDate to) {
          return Map.of();
        }
      };
  private static final WorkLog NO_LOG =
      new WorkLog() {
        @Override
        public Map<Long, List<DayLoad>> since(List<Athlete> athletes, LocalDate from) {
          return Map.of();
        }

        @Override
        public Map<Long, LocalDate> first(List<Athlete> athletes) {
          return Map.of();
        }
      };

  private final StayRepository stays;
  private final WorkLog log;
  private final @Nullable CareRepository care;
  private final GateRules.Stay rules;

  /** With this log, and with the holds that are entered beside it. */
  public SeasonWork(StayRepository stays, WorkLog log, CareRepository care, GateRules.Stay rules) {
    this(rules, stays, log, care);
  }

  private SeasonWork(GateRules.Stay rules, StayRepository stays, WorkLog log, @Nullable CareRepository care) {
    this.stays = stays;
    this.log = log;
    this.care = care;
    this.rules = rules;
  }

  /** Without a log: of a season that is a file alone. */
  public static SeasonWork ofFile() {
    return new SeasonWork(GateRules.DEFAULT.stay(), NO_STAYS, NO_LOG, null);
  }

  /**
   * The expected climbs, in the order of the squad, for each athlete one for each family.
   *
   * @param today first day that can still be planned
   */
  public List<List<Climb>> climbs(SeasonInput input, LocalDate today) {
    return new Climbers(input, today).expected();
  }

  /** What was done before today, as far as it lies in the season. */
  public Done done(SeasonInput input, LocalDate today) {
    return today.isAfter(input.first())
        ? new Done(today, log.since(input.squad().stream().map(Member::athlete).toList(), input.first()))
        : Done.nothing(input);
  }

  /** What stands in the program of everybody's body, by the athlete's number; it is no part of the season's file. */
  public Map<Long, LegCare> cares(SeasonInput input, LocalDate today) {
    return care == null ? Map.of() : care.cares(input.squad().stream().map(Member::id).toList(), today);
  }

  /** The medical holds among it. */
  public static Map<Long, List<MedicalHold>> holds(Map<Long, LegCare> cares) {
    return cares.entrySet().stream().collect(Collectors.toMap(Map.Entry::getKey, e -> e.getValue().holds()));
  }

  /** The legs on their way back among it. */
  public static Map<Long, List<LegBack>> backs(Map<Long, LegCare> cares) {
    return cares.entrySet().stream().collect(Collectors.toMap(Map.Entry::getKey, e -> e.getValue().backs()));
  }

  /** The season with the holds and the ways back that stand in the program: what is planned and mended from. */
  public SeasonInput held(SeasonInput input, LocalDate today) {
    Map<Long, LegCare> cares = cares(input, today);
    return input.withHolds(holds(cares)).withBacks(backs(cares));
  }

  /** What the log says of how long this squad stays at an approach and how often they come, for simulated seasons. */
  public Habits habits(LocalDate today) {
    List<SquadStay> known = stays.stays(today);
    return new Habits(known, stays.turnout(today.minusDays(TURNOUT_DAYS), today), SquadPace.of(known, rules, ClimbRules.usual(rules).prior()), rules);
  }

  /**
   * Of a squad.
   *
   * @param stays that the log knows
   * @param turnout of the last weeks, by the athlete's number
   * @param pace learned from the stays
   * @param stay the least stay at an approach
   */
  public record Habits(List<SquadStay> stays, Map<Long, Turnout> turnout, SquadPace pace, GateRules.Stay stay) {
    /** Takes copies. */
    public Habits {
      stays = List.copyOf(stays);
      turnout = Map.copyOf(turnout);
    }
  }

  /** Plans anew, with little change to what is published, nothing on a day on which somebody is held. */
  public SeasonPlanner planner(SeasonInput input, @Nullable SeasonPlan published, LocalDate today, long seed) {
    SeasonInput held = held(input, today);
    Climbers climbers = new Climbers(held, today);
    return new SeasonPlanner(held, climbers.expected(), climbers, published, done(input, today), seed);
  }

  /** What the log says of this squad's stays, read once. */
  private final class Climbers implements SeasonPlanner.Reclimb {
    private final SeasonInput input;
    private final LocalDate today;
    private final LocalDate from;
    private final List<SquadStay> known;
    private final Map<Long, Turnout> turnout;
    private final SquadPace pace;
    private final ClimbPlanner planner;

    Climbers(SeasonInput input, LocalDate today) {
      ClimbRules usual = ClimbRules.usual(rules);
      this.input = input;
      this.today = today;
      this.from = today.isBefore(input.first()) ? input.first() : today;
      this.known = stays.stays(today);
      this.turnout = stays.turnout(today.minusDays(TURNOUT_DAYS), today);
      this.pace = SquadPace.of(known, rules, usual.prior());
      this.planner = new ClimbPlanner(input, usual);
    }

    List<List<Climb>> expected() {
      return input.squad().stream().map(m -> climbs(planner.climbs(m, from, own(m), pace, share(m)))).toList();
    }

    @Override
    public List<Climb> on(Member m, SeasonPlan.Year year) {
      return climbs(planner.climbs(m, year, from, own(m), pace, share(m)));
    }

    @Override
    public boolean kept(Member m, SeasonPlan.Year year) {
      return LeastStayCheck.of(m, year, rules).stream().allMatch(e -> e.decision().date().isBefore(today));
    }

    private List<SquadStay> own(Member m) {
      return known.stream().filter(s -> s.athleteId() == m.id()).toList();
    }

    private double share(Member m) {
      return turnout.getOrDefault(m.id(), Turnout.UNKNOWN).share();
    }

    private static List<Climb> climbs(List<PlannedClimb> planned) {
      return planned.stream().map(PlannedClimb::climb).toList();
    }
  }
}
