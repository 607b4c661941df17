package boundwright.phone;

import boundwright.athlete.Athlete;
import boundwright.athlete.AthleteRepository;
import boundwright.athlete.Profile;
import boundwright.flight.FlightModel;
import boundwright.flight.Logbook;
import boundwright.flight.Rep;
import boundwright.flight.RepStore.Learned;
import boundwright.flight.RepStore.Snapshot;
import boundwright.flight.RepStore;
import boundwright.flight.SquadPrior;
import boundwright.footfall.Routine;
import boundwright.load.CareRepository;
import boundwright.load.LegCare.MedicalHold;
import boundwright.load.LegCare.Pain;
import boundwright.load.LegCare;
import boundwright.load.LoadRepository;
import boundwright.load.SeasonStart;
import boundwright.load.WorkLog;
import boundwright.load.account.ContactTimes.Timed;
import boundwright.load.account.DayLoad;
import boundwright.load.account.History;
import boundwright.load.account.LastWeek;
import boundwright.load.account.Work;
import boundwright.phone.Parcel.Kept;
import boundwright.phone.Parcel.Part;
import boundwright.runway.DayPlan;
import boundwright.runway.MarkAdvisor;
import boundwright.runway.Rungs;
import boundwright.runway.SettingsRepository;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.function.LongFunction;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;

/**
 * Packs what a phone carries, on the server. No more of an athlete's health than the verdict needs: of a hold its days, of a pain of the
 * last days its figure and where it is, because the sentence says it; nobody's name, no note.
 */
public final class Packer {
  /** Days before a day that its verdict rests on, with one to spare; as {@code LoadDesk} reads them. */
  private static final int LOOK_BACK_DAYS = 42;
  /** Days for which a pain speaks in a sentence, a rise is looked at, and a sign to stop holds, each with one to spare. */
  private static final int SAID_DAYS = 7;
  private static final int RISE_DAYS = 14;
  private static final int SIGN_DAYS = 28;
  /** Where a pain is need not be known when no sentence says it. */
  private static final String SOMEWHERE = "-";
  private static final int MOST_OVERRIDES = 50;

  private final AthleteRepository athletes;
  private final RepStore reps;
  private final Logbook logbook;
  private final SettingsRepository settings;
  private final WorkLog work;
  private final LoadRepository load;
  private final CareRepository care;
  private final Supplier<Rungs> rungs;
  private final Tokens tokens;
  private final Clock clock;

  /** What the server remembers of the taps it has taken. */
  public interface Tokens {
    /** The token with which a rep was tapped; null where it has none. */
    @Nullable String of(long repId);

    /** Tokens of an athlete's entries of a day that are no rep now: reps that were taken back, and the undo, hand and look themselves. */
    List<String> gone(long athleteId, LocalDate day);

    /** For a store that remembers the token of each rep and nothing else. */
    static Tokens only(LongFunction<@Nullable String> ofRep) {
      return new Tokens() {
        @Override
        public @Nullable String of(long repId) {
          return ofRep.apply(repId);
        }

        @Override
        public List<String> gone(long athleteId, LocalDate day) {
          return List.of();
        }
      };
    }
  }

  /** Reads from these; {@code clock} tells the day and where the coach stands. */
  public Packer(
      AthleteRepository athletes,
      RepStore reps,
      Logbook logbook,
      SettingsRepository settings,
      WorkLog work,
      LoadRepository load,
      CareRepository care,
      Supplier<Rungs> rungs,
      Tokens tokens,
      Clock clock) {
    this.athletes = athletes;
    this.reps = reps;
    this.logbook = logbook;
    this.settings = settings;
    this.work = work;
    this.load = load;
    this.care = care;
    this.rungs = rungs;
    this.tokens = tokens;
    this.clock = clock;
  }

  /** The whole day for these athletes, in this order. */
  public Parcel pack(List<Athlete> squad) {
    Instant now = clock.instant();
    LocalDate today = LocalDate.now(clock);
    logbook.dayBegins(today);
    return new Parcel(
        today, clock.getZone().getRules().getOffset(now), now, settings.settings(), care.guard(), settings.plan(), parts(squad, today));
  }

  /** What is known of one athlete now. */
  public Part part(Athlete athlete) {
    return parts(List.of(athlete)).get(0);
  }

  /** What is known of these athletes now, in this order. */
  public List<Part> parts(List<Athlete> some) {
    LocalDate today = LocalDate.now(clock);
    logbook.dayBegins(today);
    return parts(some, today);
  }

  private List<Part> parts(List<Athlete> squad, LocalDate today) {
    List<Long> ids = squad.stream().map(Athlete::id).toList();
    DayPlan plan = settings.plan();
    Rungs at = rungs.get();
    Map<Long, List<DayLoad>> days = work.since(squad, today.minusDays(LOOK_BACK_DAYS));
    Map<Long, LocalDate> first = work.first(squad);
    Map<Long, LastWeek> weeks = load.lastWeeks();
    Map<Long, LegCare> cares = care.cares(ids, today);
    Map<Long, List<Timed>> timed = load.timed(ids, today);
    List<SeasonStart> seasons = load.seasons();
    return athletes.profiles(squad).stream()
        .map(
            profile -> {
              Athlete a = profile.athlete();
              List<DayLoad> own = Objects.requireNonNull(days.get(a.id()));
              LocalDate began = first.get(a.id());
              List<Rep> fresh = reps.since(a.id(), today);
              FlightModel base = base(profile, fresh, today);
              return new Part(
                  profile,
                  plan.drills().isEmpty()
                      ? List.of(at.of(a, Routine.HOP_STEP.sequence()))
                      : plan.drills().stream().map(d -> at.stepsFor(a, d)).toList(),
                  base.reps() > 0 && MarkAdvisor.mayBegin(base) ? logbook.before(a) : null,
                  base,
                  fresh.stream().map(r -> new Kept(r, tokens.of(r.id()))).toList(),
                  tokens.gone(a.id(), today),
                  needed(cares.getOrDefault(a.id(), LegCare.NONE), today),
                  new History(
                      own.stream().filter(d -> d.date().isBefore(today)).toList(),
                      began != null && began.isBefore(today) ? began : null,
                      weeks.get(a.id())),
                  own.stream().filter(d -> d.date().equals(today)).findFirst().map(Packer::besideReps).orElse(new DayLoad(today, List.of())),
                  SeasonStart.on(seasons, a.id(), today).orElse(null),
                  timed.getOrDefault(a.id(), List.of()),
                  care.overrides(a.id(), MOST_OVERRIDES).stream().filter(o -> o.date().equals(today)).toList());
            })
        .toList();
  }

  /** What was learned before the first of {@code fresh}; those are learned again on the phone, in the same order. */
  private FlightModel base(Profile profile, List<Rep> fresh, LocalDate today) {
    // who is being learned again is not waited for: the phone hears of them again soon, and a coach with the phone in hand goes on tapping
    Learned learned = logbook.learnedSoFar(profile.athlete().id()).orElse(null);
    FlightModel now = learned == null ? logbook.model(profile.athlete()) : learned.now();
    if (fresh.isEmpty() || (learned != null && isBefore(now, today))) {
      return now;
    }
    boolean onlyToday = fresh.stream().allMatch(r -> r.date().equals(today));
    if (learned != null && onlyToday && today.equals(now.lastDate()) && learned.dayStart().squad() == now.squad()) {
      return learned.dayStart();
    }
    // reps are dated ahead: what was kept of the day's beginning is not of today
    FlightModel model = FlightModel.prior(profile, reps.snapshot().map(Snapshot::prior).orElse(SquadPrior.NONE));
    for (Rep r : heard(profile.athlete().id(), now, fresh.size())) {
      if (r.date().isBefore(today)) {
        model = model.learn(r);
      }
    }
    return model;
  }

  /** The reps that {@code now} is from: all, or the newest while all are learned beside; oldest first. */
  private List<Rep> heard(long athleteId, FlightModel now, int fresh) {
    if (!logbook.isFromNewest(athleteId, now)) {
      return reps.inOrder(athleteId);
    }
    List<Rep> newest = new ArrayList<>(reps.recent(athleteId, Logbook.NEWEST + fresh));
    Collections.reverse(newest);
    return newest;
  }

  /** Whether no rep of today or later was learned, so that it is the base as it is. */
  private static boolean isBefore(FlightModel model, LocalDate today) {
    LocalDate last = model.lastDate();
    return last == null || last.isBefore(today);
  }

  /** Reps are handed out as such, so they are not in the day's other work. */
  private static DayLoad besideReps(DayLoad day) {
    return new DayLoad(day.date(), day.work().stream().filter(w -> w.kind() != Work.Kind.BOUNDING).toList(), day.other());
  }

  private static LegCare needed(LegCare care, LocalDate today) {
    List<Pain> pains =
        care.pains().stream()
            .filter(p -> !p.date().isBefore(today.minusDays(p.refer() ? SIGN_DAYS : RISE_DAYS)))
            .map(
                p ->
                    p.refer() || !p.date().isBefore(today.minusDays(SAID_DAYS))
                        ? new Pain(0, p.date(), p.area(), p.level(), p.settled(), p.refer())
                        : new Pain(0, p.date(), SOMEWHERE, p.level(), p.settled(), false))
            .toList();
    List<MedicalHold> holds =
        care.holds().stream()
            .map(h -> new MedicalHold(0, h.from(), "", h.clearedBy() == null ? null : Parcel.CLINICIAN, h.clearedOn()))
            .toList();
    return new LegCare(care.growing(), care.firstSession(), pains, holds, care.backs().stream().filter(w -> w.holds(today)).toList(), care.fast());
  }
}
