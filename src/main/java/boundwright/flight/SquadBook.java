package boundwright.flight;

import boundwright.athlete.AthleteRepository;
import boundwright.athlete.Profile;
import boundwright.flight.RepStore.Learned;
import boundwright.flight.RepStore.Snapshot;
import boundwright.flight.RepStore.Writer;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.Executor;
import org.jspecify.annotations.Nullable;

/**
 * Keeps the squad's snapshot: made between sessions from the reps of the days before, so that nothing changes while one is
 * going on, and made again when half as many reps more are logged, or when an athlete was erased. It is made beside the questions: they are
 * answered from the last one until the new one and everybody's model from it are kept, in one transaction. Models that began with another
 * snapshot are learned again from their reps ({@link Logbook}).
 */
final class SquadBook {
  /** A snapshot is made again when there are so many times its reps (judgement). */
  private static final double GROWN = 1.5;

  private final RepStore store;
  private final AthleteRepository athletes;
  private final Executor beside;
  private volatile SquadPrior known = SquadPrior.NONE;
  private volatile @Nullable LocalDate looked;

  SquadBook(RepStore store, AthleteRepository athletes, Executor beside) {
    this.store = store;
    this.athletes = athletes;
    this.beside = beside;
  }

  /** The snapshot that holds now. */
  SquadPrior now() {
    long number = store.snapshotNumber();
    SquadPrior last = known;
    if (number == last.number()) {
      return last;
    }
    if (number == 0) {
      looked = null;
    }
    SquadPrior now = store.snapshot().map(Snapshot::prior).orElse(SquadPrior.NONE);
    known = now;
    return now;
  }

  /** Call when somebody asks on a day: on its first call the making of a snapshot begins, if it is time. */
  void dayBegins(LocalDate today) {
    now();
    if (today.equals(looked)) {
      return;
    }
    synchronized (this) {
      if (!today.equals(looked) && due(today)) {
        beside.execute(() -> make(today));
      }
      looked = today;
    }
  }

  private boolean due(LocalDate today) {
    long reps = store.repsBefore(today);
    Snapshot last = store.snapshot().orElse(null);
    if (last == null) {
      return reps >= (long) SquadPrior.LEAST_REPS * (SquadPrior.LEAST_OTHERS + 1);
    }
    return last.madeOn().isBefore(today) && reps >= GROWN * last.reps();
  }

  private void make(LocalDate today) {
    long last = store.snapshotNumber();
    long reps = store.repsBefore(today);
    long seen = store.changes();
    Map<Long, FlightModel> alone = new HashMap<>();
    for (Profile profile : athletes.profiles(athletes.all())) {
      FlightModel model = FlightModel.prior(profile);
      List<Rep> all = store.inOrder(profile.athlete().id());
      List<Rep> before = all.stream().filter(r -> r.date().isBefore(today)).toList();
      for (Rep r : before.subList(Math.max(0, before.size() - Newest.REPS), before.size())) {
        model = model.learn(r);
      }
      alone.put(profile.athlete().id(), model);
    }
    SquadPrior prior = SquadPrior.of(store.reserveSnapshot(), alone);
    Map<Long, Learned> models = new HashMap<>();
    for (Profile profile : athletes.profiles(athletes.all())) {
      long id = profile.athlete().id();
      List<Rep> own = store.inOrder(id);
      if (!own.isEmpty()) {
        models.put(id, new From(profile, prior, own).learned());
      }
      if (Thread.currentThread().isInterrupted()) {
        return; // the program is being closed; it is made on the next day's first question
      }
    }
    store.writeLong(w -> hold(w, last, new Snapshot(prior, today, reps), models, seen));
    now();
  }

  /** From now on this snapshot holds, with everybody's model from it; whose data changed meanwhile is learned when somebody asks. */
  private static boolean hold(Writer w, long last, Snapshot made, Map<Long, Learned> models, long seen) {
    if (!w.keepSnapshot(last, made)) {
      return false;
    }
    Set<Long> changed = w.changedSince(seen);
    models.forEach(
        (id, learned) -> {
          if (!changed.contains(id)) {
            w.keep(id, learned);
          }
        });
    return true;
  }
}
