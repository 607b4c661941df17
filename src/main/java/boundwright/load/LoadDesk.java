package boundwright.load;

import boundwright.athlete.Athlete;
import boundwright.athlete.Changes;
import boundwright.athlete.KeptAnswers;
import boundwright.load.Finding.Rule;
import boundwright.load.account.ContactTimes.Timed;
import boundwright.load.account.ContactTimes;
import boundwright.load.account.ContactWeights;
import boundwright.load.account.DayLoad;
import boundwright.load.account.History;
import boundwright.load.account.LastWeek;
import boundwright.load.account.LoadScale;
import boundwright.load.account.Work;
import boundwright.quantity.RefusedException;
import java.time.Clock;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * The one place where an athlete's day is judged: what was done in every room, and what is still planned. It also keeps what a coach
 * decides otherwise.
 */
public final class LoadDesk {
  /** Days before a day that its judgement rests on, with one to spare. */
  private static final int LOOK_BACK_DAYS = 42;
  private static final int MOST_WEIGHTS = 200;
  private static final int MOST_OVERRIDES = 50;

  private final WorkLog log;
  private final PlannedWork plan;
  private final LoadRepository load;
  private final CareRepository care;
  private final Clock clock;
  private final boolean told;
  private final KeptAnswers<LocalDate, DayVerdict> verdicts;
  private final KeptAnswers<Shown, DayLook> looks;
  /** Weights by scale, kept with what they worked out of each drill. */
  private final Map<LoadScale, ContactWeights> weights = new ConcurrentHashMap<>();

  /** Works on these. */
  public LoadDesk(WorkLog log, PlannedWork plan, LoadRepository load, CareRepository care, Clock clock) {
    this(log, plan, load, care, clock, true, Changes.UNKNOWN);
  }

  /**
   * As {@link #LoadDesk(WorkLog, PlannedWork, LoadRepository, CareRepository, Clock)}.
   *
   * @param told whether whoever reads it may be told of pain, holds and growth; if not the answers are the same, without these reasons
   * @param changes how long verdicts of today are kept
   */
  public LoadDesk(
      WorkLog log, PlannedWork plan, LoadRepository load, CareRepository care, Clock clock, boolean told, Changes changes) {
    this.verdicts = new KeptAnswers<>(changes);
    this.looks = new KeptAnswers<>(changes);
    this.log = log;
    this.plan = plan;
    this.load = load;
    this.care = care;
    this.clock = clock;
    this.told = told;
  }

  /** The verdict of today, with the room that is left. */
  public DayVerdict day(Athlete athlete) {
    return day(athlete, LocalDate.now(clock));
  }

  /** The verdict of a day, today or one to come; days between have what was logged of them and no more. */
  public DayVerdict day(Athlete athlete, LocalDate day) {
    return Squad.read(this, List.of(athlete), day).verdict(athlete, true);
  }

  /** The verdict of today for each of a squad by number, in a few reads for all; without rooms. */
  public Map<Long, DayVerdict> days(List<Athlete> squad) {
    return days(squad, LocalDate.now(clock));
  }

  /** As {@link #days(List)}, of today or a day to come with what is planned for it. */
  public Map<Long, DayVerdict> days(List<Athlete> squad, LocalDate day) {
    return day.equals(LocalDate.now(clock)) ? verdicts.of(squad, day, some -> judged(some, day)) : judged(squad, day);
  }

  /** The verdict of one of those that {@link #days} was asked about. */
  public static DayVerdict of(Map<Long, DayVerdict> days, Athlete athlete) {
    return Objects.requireNonNull(days.get(athlete.id()), "a verdict for everybody asked for");
  }

  private Map<Long, DayVerdict> judged(List<Athlete> squad, LocalDate day) {
    Squad read = Squad.read(this, squad, day);
    Map<Long, DayVerdict> out = new LinkedHashMap<>();
    squad.forEach(a -> out.put(a.id(), read.verdict(a, false)));
    return out;
  }

  /**
   * One look at an athlete's day, read once.
   *
   * @param verdict of today
   * @param beside what is said more strictly when a rep that is not in the plan is done on top of it; empty when it is in the plan
   *     or changes nothing, or when bounding is stopped
   */
  public record DayLook(DayVerdict verdict, List<Finding> beside) {}

  /**
   * The verdict of today, and what the rep that a screen shows would add to it.
   *
   * @param shown what the screen shows, or null
   */
  public DayLook look(Athlete athlete, @Nullable Work shown) {
    Shown asked = new Shown(LocalDate.now(clock), shown);
    return Objects.requireNonNull(looks.of(List.of(athlete), asked, one -> Map.of(athlete.id(), look(athlete, asked))).get(athlete.id()));
  }

  private record Shown(LocalDate day, @Nullable Work work) {}

  private DayLook look(Athlete athlete, Shown asked) {
    Work shown = asked.work();
    Squad read = Squad.read(this, List.of(athlete), asked.day());
    DayVerdict verdict = read.verdict(athlete, true);
    return new DayLook(verdict, shown == null || verdict.held() ? List.of() : beside(read, athlete, shown));
  }

  private static List<Finding> beside(Squad read, Athlete athlete, Work shown) {
    List<Work> rest = read.rest(athlete);
    if (rest.stream().anyMatch(w -> w.surface() == shown.surface() && Work.rest(List.of(shown), List.of(w)).isEmpty())) {
      return List.of();
    }
    Guard.AthleteDay on = read.on(athlete);
    DayLoad done = read.done(athlete);
    List<Finding> planned = on.judge(done.with(rest)).concerns();
    List<Work> more = new ArrayList<>(rest);
    more.add(shown);
    return on.judge(done.with(more)).concerns().stream()
        .filter(f -> planned.stream().noneMatch(o -> o.rule() == f.rule() && o.answer().compareTo(f.answer()) >= 0))
        .toList();
  }

  /** What of the plan was not done yet today. */
  public List<Work> rest(Athlete athlete) {
    return Squad.read(this, List.of(athlete), LocalDate.now(clock)).rest(athlete);
  }

  /** What is known of an athlete's days from {@code days} before today on, today included. */
  public History history(Athlete athlete, int days) {
    LocalDate today = LocalDate.now(clock);
    return new History(
        log.since(List.of(athlete), today.minusDays(days)).getOrDefault(athlete.id(), List.of()),
        log.first(List.of(athlete)).get(athlete.id()),
        load.lastWeeks().get(athlete.id()));
  }

  /** How this athlete's contacts are weighed on a day: the settings, with the contact times of their clips before it. */
  public ContactWeights weights(Athlete athlete, LocalDate day) {
    return weights(care.guard().scale(), load.timed(List.of(athlete.id()), day).getOrDefault(athlete.id(), List.of()));
  }

  private ContactWeights weights(LoadScale scale, List<Timed> timed) {
    if (weights.size() > MOST_WEIGHTS) {
      weights.clear();
    }
    ContactTimes times = scale.times().learn(timed);
    return weights.computeIfAbsent(new LoadScale(scale.power(), times, scale.setUnits(), scale.sportUnits()), ContactWeights::new);
  }

  /** The limits of a session that an athlete is held to today. */
  public Band session(Athlete athlete) {
    LocalDate today = LocalDate.now(clock);
    Squad read = Squad.read(this, List.of(athlete), today);
    return read.guard(athlete).session(athlete.level(), read.care(athlete), read.history(athlete), today);
  }

  /**
   * Goes on against what was said of today with the plan.
   *
   * @param rule one of the verdict's concerns
   * @param reason the coach's words
   * @throws RefusedException if there is no such concern today, or it cannot be overridden
   */
  public void override(Athlete athlete, Rule rule, String reason) {
    Verdict verdict = day(athlete).withPlan();
    if (verdict.held() && rule != Rule.MEDICAL_HOLD && rule != Rule.REFER) {
      throw new RefusedException(
          "A " + verdict.findings().get(0).rule().label() + " stands: nothing can be overridden until a named clinician has ended it, with a date.");
    }
    Finding finding =
        verdict.concerns().stream()
            .filter(f -> f.rule() == rule)
            .findFirst()
            .orElseThrow(
                () -> new RefusedException("There is no concern about " + rule.label() + " today: there is nothing to override."));
    care.keep(new GuardOverride(0, athlete.id(), LocalDate.now(clock), rule, finding.answer(), finding.said(), reason));
  }

  /** What was decided of today otherwise, newest first. */
  public List<GuardOverride> overrides(Athlete athlete) {
    LocalDate today = LocalDate.now(clock);
    return told ? care.overrides(athlete.id(), MOST_OVERRIDES).stream().filter(o -> o.date().equals(today)).toList() : List.of();
  }

  /** The concerns of a verdict that no override of today answers. */
  public List<Finding> open(Athlete athlete, Verdict verdict) {
    return open(verdict, overrides(athlete));
  }

  /** The concerns of a verdict that none of these answers. */
  public static List<Finding> open(Verdict verdict, List<GuardOverride> kept) {
    return verdict.concerns().stream()
        .filter(f -> kept.stream().noneMatch(o -> o.rule() == f.rule() && o.answer().compareTo(f.answer()) >= 0))
        .toList();
  }

  /** What was read for some athletes and a day. */
  private record Squad(
      LoadDesk desk,
      LocalDate day,
      Map<Long, List<DayLoad>> days,
      Map<Long, LocalDate> first,
      Map<Long, LastWeek> lastWeeks,
      Map<Long, LegCare> cares,
      Map<Long, List<Timed>> timed,
      Map<Long, List<Work>> plan,
      List<SeasonStart> seasons,
      GuardSettings settings) {
    static Squad read(LoadDesk desk, List<Athlete> squad, LocalDate day) {
      List<Long> ids = squad.stream().map(Athlete::id).toList();
      return new Squad(
          desk, day, desk.log.since(squad, day.minusDays(LOOK_BACK_DAYS)), desk.log.first(squad), desk.load.lastWeeks(),
          desk.care.cares(ids, day), desk.load.timed(ids, day), desk.plan.of(squad, day), desk.load.seasons(), desk.care.guard());
    }

    LegCare care(Athlete a) {
      return cares.getOrDefault(a.id(), LegCare.NONE);
    }

    History history(Athlete a) {
      return new History(days.getOrDefault(a.id(), List.of()), first.get(a.id()), lastWeeks.get(a.id()));
    }

    DayLoad done(Athlete a) {
      return days.getOrDefault(a.id(), List.of()).stream()
          .filter(d -> d.date().equals(day))
          .findFirst()
          .orElse(new DayLoad(day, List.of()));
    }

    Guard guard(Athlete a) {
      Optional<Season> season = SeasonStart.on(seasons, a.id(), day);
      return new Guard(settings.limits(), season.orElse(null), desk.weights(settings.scale(), timed.getOrDefault(a.id(), List.of())), desk.told);
    }

    List<Work> rest(Athlete a) {
      return Work.rest(plan.getOrDefault(a.id(), List.of()), done(a).work());
    }

    Guard.AthleteDay on(Athlete a) {
      return guard(a).on(a.level(), care(a), history(a), day);
    }

    DayVerdict verdict(Athlete a, boolean withRooms) {
      Guard.AthleteDay on = on(a);
      DayLoad done = done(a);
      List<Work> rest = rest(a);
      Verdict soFar = on.judge(done);
      Verdict withPlan = rest.isEmpty() ? soFar : on.judge(done.with(rest));
      List<Integer> steps = Stream.of(a.rung(), 0).distinct().toList();
      List<Room> rooms = withRooms ? on.room(done, steps) : List.of();
      return new DayVerdict(day, soFar, withPlan, !rest.isEmpty(), rooms, care(a).onWayBack(day));
    }
  }
}
