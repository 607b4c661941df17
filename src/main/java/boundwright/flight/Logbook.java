package boundwright.flight;

import boundwright.athlete.Athlete;
import boundwright.athlete.AthleteRepository;
import boundwright.athlete.Profile;
import boundwright.flight.RepStore.Learned;
import boundwright.flight.RepStore.Writer;
import boundwright.quantity.RefusedException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.Executor;
import java.util.function.Function;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * Logs reps and takes them back, and keeps what was learned in step with them, in one transaction each. What was
 * learned is always what learning all reps by date, and within a day in the order logged, would give from the squad's snapshot
 * that holds; a rep of today costs one update, a rep dated before the newest one learns that athlete again.
 */
public final class Logbook {
  /** So many of an athlete's newest reps speak until all are learned, see {@link #isFromNewest}. */
  public static final int NEWEST = Newest.REPS;

  /** Reps from which on learning an athlete again is felt by whoever waits for it (some 14 ms). */
  private static final int FELT = 100;
  /** How often an athlete is learned beside when reps come meanwhile; after that the writers wait for it. */
  private static final int TRIES = 3;

  private final RepStore store;
  private final AthleteRepository athletes;
  private final SquadBook squadBook;
  private final Executor beside;
  /** Nobody learns an athlete whom another thread is learning. */
  private final Object[] oneAtATime = Stream.generate(Object::new).limit(64).toArray();
  /** What was known of those whose log changed before its end, until they are learned again. */
  private final Map<Long, Learned> meanwhile = new ConcurrentHashMap<>();
  private final Newest newest = new Newest();

  /** Works on this store and learns at once. */
  public Logbook(RepStore store, AthleteRepository athletes) {
    this(store, athletes, Runnable::run);
  }

  /** As {@link #Logbook(RepStore, AthleteRepository)}; {@code beside} does what nobody need wait for, one after the other. */
  public Logbook(RepStore store, AthleteRepository athletes, Executor beside) {
    this.store = store;
    this.athletes = athletes;
    this.beside = beside;
    this.squadBook = new SquadBook(store, athletes, beside);
  }

  /** Call when somebody asks on a day: on its first call the making of the squad's snapshot begins, if it is time. */
  public void dayBegins(LocalDate today) {
    squadBook.dayBegins(today);
  }

  /** Logs a rep; on disk, and learned, when it returns. The answer carries the rep's number. */
  public Rep log(Rep rep) {
    return together(changes -> changes.add(rep));
  }

  /** Logs many reps of any athletes, all or none; the answers are in the order given. */
  public List<Rep> logAll(List<Rep> reps) {
    return store.writeLong(w -> changed(w, changes -> reps.stream().map(changes::add).toList(), false));
  }

  /**
   * Makes many changes in one transaction; each athlete whom they touch is learned once, at the end. Whatever the changes, what was
   * learned is then the same as if each had been made alone.
   */
  public <T> T together(Function<RepChanges, T> work) {
    return store.write(w -> changed(w, work, false));
  }

  /**
   * As {@link #together}, for what comes late: an athlete with many reps whose log changed before its last day is not learned again in the
   * transaction, but forgotten in it, and learned once when {@link #learnForgotten} is called after it, or when somebody asks.
   */
  public <T> T late(Function<RepChanges, T> work) {
    return store.write(w -> changed(w, work, true));
  }

  /** Begins to learn those whom {@link #late} left, beside; call when it is kept. */
  public void learnForgotten() {
    meanwhile.keySet().forEach(id -> beside.execute(() -> learnForgotten(id)));
  }

  private void learnForgotten(long athleteId) {
    if (store.learned(athleteId).isEmpty() && athletes.byId(athleteId).isPresent()) {
      learnMissing(athleteId);
    }
    meanwhile.remove(athleteId);
  }

  private <T> T changed(Writer w, Function<RepChanges, T> work, boolean late) {
    RepChanges changes = new RepChanges(store, w);
    T answer = work.apply(changes);
    changes.touched().forEach((id, touched) -> learnTouched(w, id, touched, late));
    return answer;
  }

  /**
   * Takes a rep back as if it had never been logged.
   *
   * @throws RefusedException if the athlete has no rep with this number
   */
  public void undo(long athleteId, long repId) {
    together(
        changes -> {
          changes.remove(own(changes.find(repId), athleteId, repId));
          return repId;
        });
  }

  private void learnTouched(Writer w, long athleteId, RepChanges.Touched touched, boolean late) {
    LocalDate disturbed = touched.disturbed();
    if (disturbed == null) {
      learnFresh(w, athleteId, touched.added(), late);
    } else {
      LocalDate from = touched.added().stream().map(Rep::date).filter(d -> d.isBefore(disturbed)).min(LocalDate::compareTo).orElse(disturbed);
      learnLastDayAgain(w, athleteId, from, late);
    }
  }

  /** Learns again what changed on {@code from} and after it: from the start of the last day where that is enough. */
  private void learnLastDayAgain(Writer w, long athleteId, LocalDate from, boolean late) {
    Learned before = learned(w, athleteId);
    LocalDate last = before == null ? null : before.now().lastDate();
    if (before == null || last == null || from.isBefore(last)) {
      again(w, athleteId, late);
      return;
    }
    List<Rep> since = w.inOrder(athleteId).stream().filter(r -> !r.date().isBefore(last)).toList();
    if (since.isEmpty() || !since.get(0).date().equals(last)) {
      again(w, athleteId, late);
    } else {
      w.keep(athleteId, From.learnOn(before.dayStart(), before.dayStart(), since));
    }
  }

  /**
   * A rep of an athlete.
   *
   * @throws RefusedException if the athlete has no rep with this number
   */
  public Rep rep(long athleteId, long repId) {
    return store.write(w -> own(w.find(repId), athleteId, repId));
  }

  private static Rep own(Optional<Rep> found, long athleteId, long repId) {
    return found
        .filter(r -> r.athleteId() == athleteId)
        .orElseThrow(
            () -> new RefusedException("Rep number " + repId + " is not in this athlete's log. It may have been taken back already."));
  }

  /**
   * What is known of the athlete's flights now; whoever is being learned again after a change is waited for. Of whom nothing was learned at all
   * the newest reps speak where there are many, see {@link #isFromNewest}.
   */
  public FlightModel model(Athlete athlete) {
    return learnedNow(athlete.id()).map(Learned::now).orElseGet(() -> learnFromScratch(athlete));
  }

  /**
   * What was learned of the athlete, for a phone that asks again soon: while they are learned again it is what was known before.
   *
   * @return empty where nothing was learned yet from the squad's snapshot that holds
   */
  public Optional<Learned> learnedSoFar(long athleteId) {
    return learnedNow(athleteId).or(() -> Optional.ofNullable(meanwhile.get(athleteId)).filter(this::holds));
  }

  private Optional<Learned> learnedNow(long athleteId) {
    return store.learned(athleteId).filter(this::holds);
  }

  private boolean holds(Learned learned) {
    return learned.now().squad() == squadBook.now().number();
  }

  /** What was known of the athlete's flights before their first rep. */
  public FlightModel before(Athlete athlete) {
    return FlightModel.prior(athletes.profile(athlete), squadBook.now());
  }

  /** Whether this of the athlete is from their newest reps alone, until all are learned beside, as after an update whose models are others. */
  public boolean isFromNewest(long athleteId, FlightModel model) {
    return newest.speak(athleteId, model);
  }

  private FlightModel learnFromScratch(Athlete athlete) {
    long id = athlete.id();
    boolean whole = store.isWriting() || meanwhile.containsKey(id);
    SquadPrior squad = squadBook.now();
    FlightModel said = whole ? null : newest.said(id, squad).orElse(null);
    if (said != null) {
      return said; // without the lock: it is held while all are learned
    }
    List<Rep> reps = store.recent(id, NEWEST + 1);
    if (reps.isEmpty()) {
      return FlightModel.prior(athletes.profile(athlete), squad);
    }
    return whole || reps.size() <= NEWEST ? learnMissing(id).now() : fromNewest(athlete, squad, reps.subList(0, NEWEST));
  }

  private FlightModel fromNewest(Athlete athlete, SquadPrior squad, List<Rep> reps) {
    long id = athlete.id();
    synchronized (lock(id)) {
      FlightModel said = newest.said(id, squad).orElse(null);
      if (said != null) {
        return said;
      }
      beside.execute(() -> learnWhole(id));
      return learnedNow(id).map(Learned::now).orElseGet(() -> newest.learn(athletes.profile(athlete), squad, reps));
    }
  }

  private void learnWhole(long athleteId) {
    synchronized (lock(athleteId)) { // not before the newest have said what this ends
      try {
        if (athletes.byId(athleteId).isPresent()) {
          learnMissing(athleteId);
        }
      } finally {
        newest.end(athleteId);
      }
    }
  }

  private Object lock(long athleteId) {
    return oneAtATime[(int) (athleteId % oneAtATime.length)];
  }

  /** Call after the athlete's level, tests or run-ups changed: learns again from the reps. */
  public void relearn(long athleteId) {
    learnBeside(athleteId);
  }

  /** Learns an athlete again, unless another thread is at it: then its end is waited for. Inside a write nobody is waited for. */
  private Learned learnMissing(long athleteId) {
    if (store.isWriting()) {
      return learnBeside(athleteId);
    }
    synchronized (lock(athleteId)) {
      return learnedNow(athleteId).orElseGet(() -> learnBeside(athleteId));
    }
  }

  /**
   * Learns an athlete again while others write, and keeps it if what it was learned from still stands; if it never does, it is learned
   * with everybody waiting.
   */
  private Learned learnBeside(long athleteId) {
    for (int i = 0; i < TRIES; i++) {
      From from = from(athleteId, store.inOrder(athleteId));
      Learned learned = from.learned();
      boolean kept =
          store.write(
              w -> {
                boolean stands = from(athleteId, w.inOrder(athleteId)).equals(from);
                if (stands) {
                  w.keep(athleteId, learned);
                }
                return stands;
              });
      if (kept) {
        return learned;
      }
    }
    return store.write(w -> learnAgain(w, athleteId));
  }

  /** The run-up for these steps: length, speed, and how many measured ones stand behind it. */
  public RunUp runUp(Athlete athlete, int steps) {
    Athlete.checkSteps(steps);
    return RunUpBook.of(athletes.profile(athlete)).runUp(steps);
  }

  /**
   * What is known of a whole squad, in a few reads instead of a few for each athlete.
   *
   * @return flights and run-ups by the athlete's number, for every athlete given
   */
  public Map<Long, Known> known(List<Athlete> squad) {
    Map<Long, FlightModel> learned = store.learnedNow(squad.stream().map(Athlete::id).toList());
    SquadPrior squadNow = squadBook.now();
    long number = squadNow.number();
    Map<Long, Known> out = new HashMap<>();
    for (Profile profile : athletes.profiles(squad)) {
      Athlete athlete = profile.athlete();
      FlightModel model = learned.get(athlete.id());
      out.put(athlete.id(), new Known(model == null || model.squad() != number ? model(athlete) : model, RunUpBook.of(profile), profile, squadNow));
    }
    return out;
  }

  /** What is known of one athlete. */
  public static final class Known {
    private final FlightModel flights;
    private final RunUpBook runUps;
    private final Profile profile;
    private final SquadPrior squad;

    private Known(FlightModel flights, RunUpBook runUps, Profile profile, SquadPrior squad) {
      this.flights = flights;
      this.runUps = runUps;
      this.profile = profile;
      this.squad = squad;
    }

    /** Their flights as they were known before their first rep; worked out when it is asked. */
    public FlightModel before() {
      return FlightModel.prior(profile, squad);
    }

    /** Their flights. */
    public FlightModel flights() {
      return flights;
    }

    /** Their run-up for these steps, 0 to 26. */
    public RunUp runUp(int steps) {
      return runUps.runUp(Athlete.checkSteps(steps));
    }
  }

  private void learnFresh(Writer w, long athleteId, List<Rep> fresh, boolean late) {
    List<Rep> ordered = new ArrayList<>(fresh);
    ordered.sort(Comparator.comparing(Rep::date).thenComparingLong(Rep::id));
    Learned before = learned(w, athleteId);
    LocalDate newest = before == null ? null : before.now().lastDate();
    if (before == null || (newest != null && ordered.get(0).date().isBefore(newest))) {
      again(w, athleteId, late);
      return;
    }
    w.keep(athleteId, From.learnOn(before.now(), before.dayStart(), ordered));
  }

  /** What is kept, unless it began with another snapshot of the squad. */
  private @Nullable Learned learned(Writer w, long athleteId) {
    long number = squadBook.now().number();
    return w.learned(athleteId).filter(kept -> kept.now().squad() == number).orElse(null);
  }

  /** Learns an athlete again from the first rep, or leaves it for {@link #learnForgotten} where it would be waited for. */
  private void again(Writer w, long athleteId, boolean late) {
    Learned before = late ? learned(w, athleteId) : null;
    Learned known = before == null ? meanwhile.get(athleteId) : before;
    if (late && known != null && known.now().reps() >= FELT) {
      meanwhile.put(athleteId, known);
      w.forget(athleteId);
    } else {
      learnAgain(w, athleteId);
    }
  }

  private Learned learnAgain(Writer w, long athleteId) {
    Learned learned = from(athleteId, w.inOrder(athleteId)).learned();
    w.keep(athleteId, learned);
    return learned;
  }

  private From from(long athleteId, List<Rep> reps) {
    Athlete athlete =
        athletes
            .byId(athleteId)
            .orElseThrow(() -> new RefusedException("There is no athlete with number " + athleteId + "."));
    return new From(athletes.profile(athlete), squadBook.now(), reps);
  }
}
