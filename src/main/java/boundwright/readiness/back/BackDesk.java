package boundwright.readiness.back;

import boundwright.athlete.Athlete;
import boundwright.footfall.Foot;
import boundwright.load.CareRepository;
import boundwright.load.Finding;
import boundwright.load.Guard;
import boundwright.load.GuardLimits;
import boundwright.load.LegCare;
import boundwright.load.LegCare.MedicalHold;
import boundwright.load.LoadDesk;
import boundwright.load.WorkLog;
import boundwright.load.account.ContactWeights;
import boundwright.load.account.DayLoad;
import boundwright.load.account.UsualDays;
import boundwright.load.back.BackChances;
import boundwright.load.back.BackDates;
import boundwright.load.back.BackState;
import boundwright.load.back.BackStep;
import boundwright.load.back.Felt;
import boundwright.load.back.FormerWeek;
import boundwright.load.back.Grade;
import boundwright.load.back.LegBack;
import boundwright.load.back.ShortestWay;
import boundwright.load.back.Stages;
import boundwright.load.back.WayBack;
import boundwright.load.back.WayBackRepository;
import boundwright.quantity.LengthUnit;
import boundwright.quantity.RefusedException;
import boundwright.readiness.TestRepository;
import boundwright.readiness.TestScore;
import java.time.Clock;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.TreeSet;
import java.util.random.RandomGenerator;
import org.jspecify.annotations.Nullable;

/** The one place where ways back are begun, looked at, stepped and ended. */
public final class BackDesk {
  /** Days of the log from which the chances of days are learned. */
  private static final int LEARN_DAYS = 365;
  /** The same way back gives the same dates on every machine and every look. */
  private static final long SEED = 4501;

  private final WayBackRepository ways;
  private final CareRepository care;
  private final WorkLog log;
  private final LoadDesk load;
  private final TestRepository tests;
  private final Clock clock;

  /** Works on these. */
  public BackDesk(WayBackRepository ways, CareRepository care, WorkLog log, LoadDesk load, TestRepository tests, Clock clock) {
    this.ways = ways;
    this.care = care;
    this.log = log;
    this.load = load;
    this.tests = tests;
    this.clock = clock;
  }

  /**
   * What a beginning is asked with.
   *
   * @param leg which leg
   * @param from first day
   * @param stages start share and growth
   * @param former the leg's week before the days off [standing-bound contacts], or null: from the log
   * @param by who allowed it, where no medical hold was ended; null or empty: the clinician who ended the hold
   */
  public record Beginning(Foot leg, LocalDate from, Stages stages, @Nullable Double former, @Nullable String by) {}

  /** Begins one; refused while a hold stands, naming who must end it. */
  public WayBack begin(Athlete athlete, Beginning b) {
    LegCare known = care.care(athlete.id(), today());
    List<DayLoad> days = log.since(List.of(athlete), b.from().minusDays(WayBack.MOST_OFF)).getOrDefault(athlete.id(), List.of());
    LocalDate first = log.first(List.of(athlete)).getOrDefault(athlete.id(), b.from());
    Optional<FormerWeek> former = FormerWeek.of(days, b.leg(), b.from(), first, load.weights(athlete, b.from()));
    LocalDate last = former.map(FormerWeek::last).orElse(null);
    // before anything else is asked for: while a hold stands, no figure makes a way back
    WayBack.Clearance clearance = allowed(known, b, last);
    Double units = b.former() != null ? b.former() : former.map(FormerWeek::units).orElse(null);
    if (units == null) {
      throw new RefusedException(
          "The log has no contact of the " + b.leg().label() + " leg before " + b.from() + ", so its former week is not known. Enter it, in standing-bound contacts a week. Nothing was begun.");
    }
    return ways.begin(athlete.id(), new WayBack(0, b.leg(), b.from(), b.stages(), units, daysOff(known, b.from(), last), clearance, List.of(), null));
  }

  /** Since the leg was last loaded; where the log does not reach so far back, since the newest hold began [days]. */
  private static int daysOff(LegCare known, LocalDate from, @Nullable LocalDate last) {
    Optional<LocalDate> first =
        last != null
            ? Optional.of(last.plusDays(1))
            : known.holds().stream().map(MedicalHold::from).filter(h -> h.isBefore(from)).max(Comparator.naturalOrder());
    return first.map(f -> (int) Math.min(WayBack.MOST_OFF, Math.max(0, ChronoUnit.DAYS.between(f, from)))).orElse(0);
  }

  /** Who allowed it: the clinician of the newest hold since the leg was last loaded, or who is named where there was none. */
  private static WayBack.Clearance allowed(LegCare known, Beginning b, @Nullable LocalDate last) {
    Optional<MedicalHold> open = known.standing(b.from());
    if (open.isPresent()) {
      throw open.get().refusesWayBack();
    }
    Optional<MedicalHold> ended =
        known.holds().stream()
            .filter(h -> h.clearedOn() != null && (last == null || h.clearedOn().isAfter(last)))
            .max(Comparator.comparing(MedicalHold::from).thenComparingLong(MedicalHold::id));
    if (ended.isPresent()) {
      return new WayBack.Clearance(String.valueOf(ended.get().clearedBy()), day(ended.get().clearedOn()), true);
    }
    String by = b.by() == null ? "" : b.by();
    if (by.isBlank()) {
      throw new RefusedException(
          "There is no medical hold that a clinician ended since the leg was last loaded. Name who says that it may be loaded again. Nothing was begun.");
    }
    return new WayBack.Clearance(by, b.from(), false);
  }

  private static LocalDate day(@Nullable LocalDate day) {
    if (day == null) {
      throw new IllegalStateException("a hold that has ended has a day");
    }
    return day;
  }

  /**
   * Steps to the next stage, or back by the coach's own judgement.
   *
   * @param by who steps
   * @param note why; needed where the stage asks for a test that is not there
   */
  public BackStep step(Athlete athlete, long id, BackStep.Kind kind, String by, String note) {
    BackLook look = look(athlete, id, LengthUnit.METRES);
    if (!look.runs()) {
      throw new RefusedException("Way back " + id + " has ended and stays as it is. Nothing was changed.");
    }
    int stage = look.state().stage();
    MedicalHold hold = look.now().hold();
    if (hold != null) {
      throw new RefusedException(
          "A medical hold stands: no step " + (hold.clearedOn() == null ? "until a named clinician has ended it" : "before it ends " + hold.endsSaid()) + ". Nothing was changed.");
    }
    if (kind == BackStep.Kind.BACK) {
      if (stage == 0) {
        throw new RefusedException("It stands at the first stage: there is none before. Rest the leg, or end the way back. Nothing was changed.");
      }
      return ways.step(athlete.id(), id, new BackStep(0, today(), kind, stage - 1, by, note));
    }
    if (look.reached()) {
      throw new RefusedException("The former week is reached: there is no stage after. End the way back when licensed medical staff agree. Nothing was changed.");
    }
    if (look.stopped()) {
      throw new RefusedException("No step on while a pain stops the leg. " + look.todaySaid() + " Nothing was changed.");
    }
    for (BackAsk a : look.asks()) {
      if (a.refuses()) {
        throw new RefusedException("The next stage is not earned. " + a.what() + ": " + a.said() + " Nothing was changed.");
      }
      if (a.met() != BackAsk.Met.YES && note.isBlank()) {
        throw new RefusedException("The stage asks for a test. " + a.what() + ": " + a.said() + " To step without it, write why in the note. Nothing was changed.");
      }
    }
    return ways.step(athlete.id(), id, new BackStep(0, today(), kind, stage + 1, by, note));
  }

  /** Ends one, with who and why, from a day on. */
  public void end(Athlete athlete, long id, LocalDate on, String by, String why) {
    ways.end(athlete.id(), id, new WayBack.End(on, by, why));
  }

  /** One of an athlete as it stands today. */
  public BackLook look(Athlete athlete, long id, LengthUnit unit) {
    return looks(athlete, unit).stream()
        .filter(l -> l.way().id() == id)
        .findFirst()
        .orElseThrow(() -> new RefusedException("Way back number " + id + " is not in the list of " + athlete.name() + ". Nothing was changed."));
  }

  /** All of an athlete as they stand today: those that run first, then the newest. */
  public List<BackLook> looks(Athlete athlete, LengthUnit unit) {
    List<WayBack> all = ways.of(athlete.id());
    if (all.isEmpty()) {
      return List.of();
    }
    LocalDate today = today();
    LegCare known = care.care(athlete.id(), today);
    LocalDate from = today.minusDays(LEARN_DAYS);
    LocalDate begun = all.get(0).begun();
    GuardLimits limits = care.guard().limits();
    List<Felt> felt = care.pains(athlete.id(), begun.isBefore(from) ? begun : from).stream().map(p -> p.felt(limits.pain(), known.limited())).toList();
    LocalDate habits = all.stream().map(BackDesk::habitFrom).min(Comparator.naturalOrder()).orElse(from);
    List<DayLoad> days = log.since(List.of(athlete), habits.isBefore(from) ? habits : from).getOrDefault(athlete.id(), List.of());
    List<TestScore> own = tests.of(athlete.id());
    ContactWeights weights = load.weights(athlete, today);
    String stop = stop(limits, known, today);
    List<BackLook> out = new ArrayList<>();
    for (WayBack way : all) {
      LegBack leg = known.backs().stream().filter(b -> b.isOf(way)).findFirst().orElse(null);
      if (leg != null) {
        List<TestScore> squad = way.end() == null ? tests.all(BackAsk.five(way.leg())) : List.of();
        out.add(look(way, leg, new Seen(today, known, stop, felt, days, own, squad, weights), unit));
      }
    }
    out.sort(Comparator.comparing(BackLook::runs).reversed().thenComparing(l -> l.way().begun(), Comparator.reverseOrder()));
    return List.copyOf(out);
  }

  private static @Nullable String stop(GuardLimits limits, LegCare known, LocalDate today) {
    return new Guard(limits, null).stoppedByPain(known, today).map(Finding::said).orElse(null);
  }

  /** What the legs on their way back may carry today, in a few words each, as it stands beside the verdict of the day. */
  public List<String> today(Athlete athlete) {
    List<WayBack> running = ways.of(athlete.id()).stream().filter(w -> w.end() == null).toList();
    if (running.isEmpty()) {
      return List.of();
    }
    LocalDate today = today();
    LegCare known = care.care(athlete.id(), today);
    List<DayLoad> days = log.since(List.of(athlete), today.minusDays(7)).getOrDefault(athlete.id(), List.of());
    ContactWeights weights = load.weights(athlete, today);
    String stop = stop(care.guard().limits(), known, today);
    return running.stream()
        .flatMap(w -> known.backs().stream().filter(b -> b.isOf(w)).limit(1).map(b -> now(w, b, 0, today, known, stop, days, weights)))
        .map(LegToday::brief)
        .filter(b -> !b.isEmpty())
        .toList();
  }

  private record Seen(LocalDate today, LegCare care, @Nullable String stop, List<Felt> felt, List<DayLoad> days, List<TestScore> own, List<TestScore> squad, ContactWeights weights) {}

  private static BackLook look(WayBack way, LegBack leg, Seen s, LengthUnit unit) {
    List<LocalDate> clean = BackState.cleanDays(way, leg.stand(), s.today(), s.days(), s.felt(), s.weights());
    LegToday now = now(way, leg, clean.size(), s.today(), s.care(), s.stop(), s.days(), s.weights());
    BackState state = now.state();
    Habit habit = habit(s.days(), way);
    BackChances chances = chances(s, way.leg(), habit);
    ShortestWay shortest = new ShortestWay(way.stages(), habit.trains());
    boolean open = now.runs() && !now.reached();
    boolean never = shortest.days(state, s.today().getDayOfWeek()) >= ShortestWay.NEVER;
    boolean waits = now.held() || now.stopped();
    BackDates dates =
        open && !never && !waits ? BackDates.of(way.stages(), shortest, state, s.today(), chances, random()) : null;
    return new BackLook(
        now, clean, open ? BackAsk.of(way, state, s.own(), s.squad(), unit) : List.of(), habit.trains(),
        open && !waits ? shortest.way(state, s.today().getDayOfWeek()) : List.of(), dates, chances);
  }

  private static LegToday now(
      WayBack way, LegBack leg, int clean, LocalDate today, LegCare care, @Nullable String stop, List<DayLoad> days, ContactWeights weights) {
    return new LegToday(
        way, leg, BackState.of(way, leg.stand(), today, days, clean), today, care.holding(today).orElse(null), stop, units(way.leg(), days, weights, today.minusDays(6), today),
        units(way.leg(), days, weights, today, today));
  }

  private static double units(Foot leg, List<DayLoad> days, ContactWeights weights, LocalDate from, LocalDate to) {
    return days.stream().filter(d -> !d.date().isBefore(from) && !d.date().isAfter(to)).mapToDouble(d -> weights.of(d).units(leg)).sum();
  }

  private static RandomGenerator random() {
    return new SplittableRandom(SEED);
  }

  private record Habit(Set<DayOfWeek> trains, int came, int missed) {}

  /** The day after which the eight weeks begin in which the habit is looked for. */
  private static LocalDate habitFrom(WayBack way) {
    return way.begun().minusDays(way.daysOff() + 1L).minusWeeks(UsualDays.WEEKS);
  }

  /** Their usual days up to the last day before the days off, and how often they missed one. */
  private static Habit habit(List<DayLoad> days, WayBack way) {
    LocalDate last = way.begun().minusDays(way.daysOff() + 1L);
    LocalDate from = habitFrom(way);
    Map<DayOfWeek, Integer> times = UsualDays.of(days.stream().filter(d -> d.date().isAfter(from) && !d.date().isAfter(last)).toList());
    if (times.isEmpty()) {
      return new Habit(EnumSet.allOf(DayOfWeek.class), 0, 0);
    }
    int came = times.values().stream().mapToInt(n -> Math.min(n, UsualDays.WEEKS)).sum();
    return new Habit(EnumSet.copyOf(times.keySet()), came, UsualDays.WEEKS * times.size() - came);
  }

  private static BackChances chances(Seen s, Foot leg, Habit habit) {
    Set<LocalDate> felt = new TreeSet<>();
    Set<LocalDate> tooMuch = new TreeSet<>();
    for (Felt f : s.felt()) {
      if (f.grade() != Grade.CLEAN) {
        felt.addAll(List.of(f.date(), f.date().minusDays(1)));
      }
      if (f.grade() == Grade.TOO_MUCH) {
        tooMuch.addAll(List.of(f.date(), f.date().minusDays(1)));
      }
    }
    List<LocalDate> loaded = s.days().stream()
            .filter(d -> d.contacts(leg) > 0 && d.date().isBefore(s.today()) && !d.date().isBefore(s.today().minusDays(LEARN_DAYS)))
            .map(DayLoad::date)
            .toList();
    int unclean = (int) loaded.stream().filter(felt::contains).count();
    return new BackChances(loaded.size() - unclean, unclean, (int) loaded.stream().filter(tooMuch::contains).count(), habit.came(), habit.missed());
  }

  private LocalDate today() {
    return LocalDate.now(clock);
  }
}
