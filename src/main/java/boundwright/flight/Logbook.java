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
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/**
 * Logs reps and takes them back, and keeps what was learned in step with them, in one transaction each. What was
 * learned is always what learning all reps by date, and within a day in the order logged, would give from the squad's snapshot
 * that holds; a rep of today costs one update, a rep dated before the newest one learns that athlete again.
 */
public final class Logbook {
  private final RepStore store;
  private final AthleteRepository athletes;
  private final SquadBook squadBook;

  /** Works on this store. */
  public Logbook(RepStore store, AthleteRepository athletes) {
    this.store = store;
    this.athletes = athletes;
    this.squadBook = new SquadBook(store, athletes);
  }

  /** Call when somebody asks on a day: on its first call the squad's snapshot is made, if it is time. */
  public void dayBegins(LocalDate today) {
    squadBook.dayBegins(today);
  }

  /** Logs a rep; on disk, and learned, when it returns. The answer carries the rep's number. */
  public Rep log(Rep rep) {
    return together(changes -> changes.add(rep));
  }

  /** Logs many reps of any athletes, all or none; the answers are in the order given. */
  public List<Rep> logAll(List<Rep> reps) {
    return store.writeLong(w -> changed(w, changes -> reps.stream().map(changes::add).toList()));
  }

  /**
   * Makes many changes in one transaction; each athlete whom they touch is learned once, at the end. Whatever the changes, what was
   * learned is then the same as if each had been made alone.
   */
  public <T> T together(Function<RepChanges, T> work) {
    return store.write(w -> changed(w, work));
  }

  private <T> T changed(Writer w, Function<RepChanges, T> work) {
    RepChanges changes = new RepChanges(store, w);
    T answer = work.apply(changes);
    changes.touched().forEach((id, touched) -> learnTouched(w, id, touched));
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

  private void learnTouched(Writer w, long athleteId, RepChanges.Touched touched) {
    LocalDate disturbed = touched.disturbed();
    if (disturbed == null) {
      learnFresh(w, athleteId, touched.added());
    } else {
      LocalDate from = touched.added().stream().map(Rep::date).filter(d -> d.isBefore(disturbed)).min(LocalDate::compareTo).orElse(disturbed);
      learnLastDayAgain(w, athleteId, from);
    }
  }

  /** Learns again what changed on {@code from} and after it: from the start of the last day where that is enough. */
  private void learnLastDayAgain(Writer w, long athleteId, LocalDate from) {
    Learned before = learned(w, athleteId);
    LocalDate last = before == null ? null : before.now().lastDate();
    if (before == null || last == null || from.isBefore(last)) {
      learnAgain(w, athleteId);
      return;
    }
    List<Rep> since = w.inOrder(athleteId).stream().filter(r -> !r.date().isBefore(last)).toList();
    if (since.isEmpty() || !since.get(0).date().equals(last)) {
      learnAgain(w, athleteId);
    } else {
      w.keep(athleteId, learnOn(before.dayStart(), before.dayStart(), since));
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

  /** What is known of the athlete's flights now. */
  public FlightModel model(Athlete athlete) {
    long number = squadBook.now().number();
    return store
        .learned(athlete.id())
        .map(Learned::now)
        .filter(m -> m.squad() == number)
        .orElseGet(() -> learnFromScratch(athlete));
  }

  /** What was known of the athlete's flights before their first rep. */
  public FlightModel before(Athlete athlete) {
    return FlightModel.prior(athletes.profile(athlete), squadBook.now());
  }

  private FlightModel learnFromScratch(Athlete athlete) {
    List<Rep> reps = store.inOrder(athlete.id());
    if (reps.isEmpty()) {
      return FlightModel.prior(athletes.profile(athlete), squadBook.now());
    }
    return learnBeside(athlete.id()).now();
  }

  /** Call after the athlete's level, tests or run-ups changed: learns again from the reps. */
  public void relearn(long athleteId) {
    learnBeside(athleteId);
  }

  /**
   * Learns an athlete again while others write, and keeps it if what it was learned from still stands; otherwise it is learned once
   * more, with everybody waiting.
   */
  private Learned learnBeside(long athleteId) {
    From from = from(athleteId, store.inOrder(athleteId));
    Learned learned = from.learned();
    return store.write(
        w -> {
          if (!from(athleteId, w.inOrder(athleteId)).equals(from)) {
            return learnAgain(w, athleteId);
          }
          w.keep(athleteId, learned);
          return learned;
        });
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
    Map<Long, FlightModel> learned = store.learnedNow();
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

  private void learnFresh(Writer w, long athleteId, List<Rep> fresh) {
    List<Rep> ordered = new ArrayList<>(fresh);
    ordered.sort(Comparator.comparing(Rep::date).thenComparingLong(Rep::id));
    Learned before = learned(w, athleteId);
    LocalDate newest = before == null ? null : before.now().lastDate();
    if (before == null || (newest != null && ordered.get(0).date().isBefore(newest))) {
      learnAgain(w, athleteId);
      return;
    }
    w.keep(athleteId, learnOn(before.now(), before.dayStart(), ordered));
  }

  /** What is kept, unless it began with another snapshot of the squad. */
  private @Nullable Learned learned(Writer w, long athleteId) {
    long number = squadBook.now().number();
    return w.learned(athleteId).filter(kept -> kept.now().squad() == number).orElse(null);
  }

  private Learned learnAgain(Writer w, long athleteId) {
    Learned learned = from(athleteId, w.inOrder(athleteId)).learned();
    w.keep(athleteId, learned);
    return learned;
  }

  /** All that a model rests on. */
  private record From(Profile profile, SquadPrior squad, List<Rep> reps) {
    Learned learned() {
      FlightModel prior = FlightModel.prior(profile, squad);
      return learnOn(prior, prior, reps);
    }
  }

  private From from(long athleteId, List<Rep> reps) {
    Athlete athlete =
        athletes
            .byId(athleteId)
            .orElseThrow(() -> new RefusedException("There is no athlete with number " + athleteId + "."));
    return new From(athletes.profile(athlete), squadBook.now(), reps);
  }

  private static Learned learnOn(FlightModel from, FlightModel dayStartBefore, List<Rep> ordered) {
    FlightModel model = from;
    FlightModel dayStart = dayStartBefore;
    for (Rep r : ordered) {
      if (!r.date().equals(model.lastDate())) {
        dayStart = model;
      }
      model = model.learn(r);
    }
    return new Learned(model, dayStart);
  }
}
