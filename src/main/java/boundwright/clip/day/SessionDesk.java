package boundwright.clip.day;

import boundwright.athlete.Athlete;
import boundwright.athlete.Surface;
import boundwright.athlete.person.People;
import boundwright.clip.desk.ClipDesk;
import boundwright.clip.desk.ClipQueue;
import boundwright.clip.desk.ClipRecord;
import boundwright.clip.desk.ClipState;
import boundwright.clip.keep.FilmStore;
import boundwright.clip.keep.FilmsAwayException;
import boundwright.clip.reading.Setup;
import boundwright.clip.session.CutOrder;
import boundwright.clip.session.Cutter;
import boundwright.clip.session.FilmRep;
import boundwright.flight.Logbook;
import boundwright.flight.Rep;
import boundwright.footfall.Sequence;
import boundwright.quantity.RefusedException;
import java.io.InputStream;
import java.nio.file.Path;
import java.time.Clock;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** Everything that a coach does with films of whole sessions. Safe to use from many threads. */
public final class SessionDesk {
  /** Largest film taken in [bytes]: 90 minutes of a phone's 720p at 20 megabit a second are 13.5 GB. */
  public static final long MAX_FILM_BYTES = 16L << 30;
  /** So many are proposed for a rep. */
  static final int PROPOSED = 5;

  private final SessionRepository sessions;
  private final ClipQueue queue;
  private final SessionFiles files;
  private final ClipDesk clips;
  private final Logbook logbook;
  private final People people;
  private final Clock clock;
  private final Cut cut;
  private final Previews previews;

  /** How a film is cut; the program does it in a child process. */
  public interface Cut {
    /** Cuts a film; see {@link boundwright.clip.session.CutProcess#cut}. */
    int cut(CutOrder order, Cutter.Listener listener) throws InterruptedException;
  }

  /** A desk whose films arrive in {@code folder} and are kept in {@code kept}; the networks' weights in {@code weights}. */
  public SessionDesk(
      SessionRepository sessions, ClipQueue queue, Path folder, FilmStore kept, Path weights, ClipDesk clips, Logbook logbook, People people, Clock clock,
      Cut cut) {
    this.sessions = sessions;
    this.queue = queue;
    this.files = new SessionFiles(folder, weights, kept);
    this.clips = clips;
    this.logbook = logbook;
    this.people = people;
    this.clock = clock;
    this.cut = cut;
    this.previews = new Previews(clips);
  }

  /** Begins to work; before the clips do, see {@link ClipDesk#start}. A film that came in when the program stopped is queued now. */
  public void start() {
    queue.start(this::work);
    sessions.films().stream()
        .filter(f -> f.state() == ClipState.WAITING || f.state() == ClipState.READING)
        .sorted(Comparator.comparingLong(SessionFilm::id))
        .forEach(f -> queue.addMissing(f.id()));
  }

  /** What was asked of everybody on the film. */
  public record Asked(@Nullable Sequence sequence, int approachSteps, Surface surface, @Nullable Double markToSand_m) {}

  /**
   * Takes a film in and queues it.
   *
   * @param film read to its end, closed by the caller
   * @throws RefusedException if the film is empty, above {@link #MAX_FILM_BYTES}, or more than the disk holds
   */
  public SessionFilm take(LocalDate date, String fileName, InputStream film, Asked asked) {
    Athlete.checkSteps(asked.approachSteps);
    Path arrived = files.receive(film, fileName);
    SessionFilm kept = null;
    try {
      kept =
          sessions.add(
              new SessionFilm(
                  0, date, fileName, arrived.toFile().length(), 0, ClipState.WAITING, 0, null, 0, null, true, false, asked.sequence,
                  asked.approachSteps, asked.surface, asked.markToSand_m, clock.instant()));
      files.keep(arrived, kept.id(), fileName);
    } catch (RuntimeException e) {
      files.drop(arrived);
      if (kept != null) {
        sessions.remove(kept.id());
      }
      throw e;
    }
    queue.add(kept.id());
    return kept;
  }

  /** All films, newest first. */
  public List<SessionFilm> all() {
    return sessions.films();
  }

  /** Free on the disk of the films [bytes]. */
  public long freeBytes() {
    return files.free();
  }

  /** One film. */
  public SessionFilm film(long id) {
    return sessions.film(id).orElseThrow(() -> new RefusedException("There is no film of a session with number " + id + ". It may have been removed."));
  }

  /** One rep of a film. */
  public SessionRep rep(long id) {
    return sessions.rep(id).orElseThrow(() -> new RefusedException("The film has no rep with number " + id + ". Reload the page."));
  }

  private void work(long id) throws InterruptedException {
    if (!sessions.claim(id, clock.instant())) {
      return;
    }
    SessionFilm film = film(id);
    try (FilmStore.Brought brought = files.kept().film(id)) {
      work(film, brought.path());
    } catch (FilmsAwayException e) {
      sessions.state(id, ClipState.WAITING, null);
      throw e;
    } catch (RefusedException e) {
      sessions.state(id, ClipState.REFUSED, String.valueOf(e.getMessage()));
    } catch (RuntimeException e) {
      sessions.state(id, ClipState.REFUSED, "The program failed while it looked through the film (" + e + "). What was found is kept; have it looked through again.");
      throw e;
    } finally {
      files.kept().forgetNewPictures(id);
    }
  }

  private void work(SessionFilm film, Path file) throws InterruptedException {
    long id = film.id();
    Thread self = Thread.currentThread();
    try {
      cut.cut(
          files.order(film, file),
          new Cutter.Listener() {
            @Override
            public void reached(double time_s, double of_s) {
              if (!sessions.reached(id, time_s, of_s)) {
                self.interrupt();
              }
            }

            @Override
            public void rep(FilmRep rep) {
              files.keepStills(id, rep);
              sessions.found(id, rep);
            }
          });
      sessions.state(id, ClipState.READ, null);
    } catch (FilmsAwayException e) {
      throw e;
    } catch (RefusedException e) {
      // the coach knows the film by the name it came with, not by the one it lies under here
      throw new RefusedException(String.valueOf(e.getMessage()).replace(String.valueOf(file.getFileName()), film.fileName()), e);
    }
  }

  /** Calls the cutting off; what was found is kept. */
  public void cancel(long id) {
    if (film(id).state() == ClipState.WAITING || film(id).state() == ClipState.READING) {
      sessions.state(id, ClipState.CANCELLED, null);
      queue.cancel(id);
    }
  }

  /** Goes on where cutting stopped. */
  public void goOn(long id) {
    SessionFilm film = film(id);
    if (film.state() != ClipState.REFUSED && film.state() != ClipState.CANCELLED) {
      throw new RefusedException("The film is " + film.state().label() + ": wait for it, or call it off first.");
    }
    needFilm(film);
    sessions.state(id, ClipState.WAITING, null);
    queue.add(id);
  }

  private static void needFilm(SessionFilm film) {
    if (!film.filmKept()) {
      throw new RefusedException("The film " + film.fileName() + " was dropped, so nothing more can be read off it. Its stills and what was read are kept.");
    }
  }

  /** The film as it stands: every rep with what is proposed and what was read. */
  public SessionSheet sheet(long id) {
    return SessionSheet.of(film(id), sessions, clips, previews, marks(id), files);
  }

  /**
   * Says who it was, and has the rep read.
   *
   * @throws RefusedException if the film is gone, if nobody recorded that this athlete may be filmed, or if the rep is in the log already
   */
  public SessionRep name(long repId, Athlete athlete) {
    SessionRep rep = rep(repId);
    SessionFilm film = film(rep.filmId());
    refuseLogged(rep);
    people.mayBeFilmed(athlete);
    if (rep.clipId() != 0 && Long.valueOf(athlete.id()).equals(rep.athleteId())) {
      return rep;
    }
    needFilm(film);
    forgetReading(rep);
    TappedRep tap = sheetTap(film, rep, athlete.id());
    sessions.named(repId, athlete.id(), false);
    sessions.tapped(repId, tap == null ? 0 : tap.repId());
    read(rep(repId), film, athlete);
    return rep(repId);
  }

  private @Nullable TappedRep sheetTap(SessionFilm film, SessionRep rep, long athleteId) {
    return SessionSheet.taps(film, sessions.reps(film.id()), sessions).entrySet().stream()
        .filter(e -> e.getKey() == rep.id() && e.getValue().tap().athleteId() == athleteId)
        .map(e -> e.getValue().tap())
        .findFirst()
        .orElse(null);
  }

  private void read(SessionRep rep, SessionFilm film, Athlete athlete) {
    Optional<Rep> tapped = rep.tapRepId() == 0 ? Optional.empty() : Optional.of(logbook.rep(athlete.id(), rep.tapRepId()));
    Sequence sequence = tapped.map(Rep::sequence).orElse(film.sequence());
    int steps = tapped.map(Rep::approachSteps).orElse(film.approachSteps());
    Surface surface = tapped.map(Rep::surface).orElse(film.surface());
    Double mark = tapped.isPresent() ? tapped.get().markToSand_m() : film.markToSand_m();
    clips.takePart(
        new ClipRecord(
            0, athlete.id(), film.date(), String.format(Locale.ROOT, "%s at %s", film.fileName(), at(rep.cut().run_s())), sequence, steps, surface,
            mark, ClipState.WAITING, 0, null, true, rep.cut().box(), 0, marks(film.id()), List.of(), 0, clock.instant()),
        clipId -> sessions.clip(rep.id(), clipId));
  }

  /** {@code 12:07} or {@code 1:02:07} into the film. */
  public static String at(double seconds) {
    long s = Math.round(seconds);
    return s >= 3600
        ? String.format(Locale.ROOT, "%d:%02d:%02d", s / 3600, s / 60 % 60, s % 60)
        : String.format(Locale.ROOT, "%d:%02d", s / 60, s % 60);
  }

  /** The marks that were put on the newest rep of a film that has some: the phone stood where it stood. */
  private Setup marks(long filmId) {
    return sessions.reps(filmId).stream()
        .filter(r -> r.clipId() != 0)
        .map(r -> clips.clip(r.clipId()))
        .filter(c -> c.setup().scaled())
        .max(Comparator.comparingLong(ClipRecord::id))
        .map(ClipRecord::setup)
        .orElse(Setup.none());
  }

  private void forgetReading(SessionRep rep) {
    if (rep.clipId() != 0) {
      sessions.clip(rep.id(), 0);
      clips.remove(rep.clipId());
    }
  }

  /** Whether a rep is in the log already. */
  public boolean logged(SessionRep rep) {
    return rep.clipId() != 0 && clips.clip(rep.clipId()).repId() != 0;
  }

  private void refuseLogged(SessionRep rep) {
    if (logged(rep)) {
      throw new RefusedException("This rep is in the log already. Take it back there first.");
    }
  }

  /** Says that nobody is named for a rep any more; its reading is forgotten. */
  public SessionRep unname(long repId) {
    SessionRep rep = rep(repId);
    refuseLogged(rep);
    forgetReading(rep);
    sessions.named(repId, null, false);
    sessions.tapped(repId, 0);
    return rep(repId);
  }

  /** Says that what the film shows there is no rep, or is one after all. */
  public SessionRep setAside(long repId, boolean aside) {
    SessionRep rep = unname(repId);
    sessions.named(rep.id(), null, aside);
    return rep(repId);
  }

  /** Says that a rep is one of its own, whatever was tapped at that time. */
  public void ownRep(long repId) {
    refuseLogged(rep(repId));
    sessions.tapped(repId, 0);
  }

  /**
   * Logs a rep after the coach has nodded: its lengths go to the rep that was tapped, or it is a rep of its own.
   *
   * @throws RefusedException if it was not read yet, has no lengths, or does not fit the tapped rep
   */
  public Rep nod(long repId) {
    SessionRep rep = rep(repId);
    if (rep.clipId() == 0) {
      throw new RefusedException("Nobody is named for this rep, so it was not read. Say who it was.");
    }
    ClipRecord clip = clips.clip(rep.clipId());
    if (!clip.setup().scaled()) {
      Setup marks = marks(rep.filmId());
      if (marks.scaled()) {
        clips.setup(clip.id(), marks);
      }
    }
    return clips.log(rep.clipId(), List.of());
  }

  /** Takes back what {@link #nod} did. */
  public void takeBack(long repId) {
    SessionRep rep = rep(repId);
    if (rep.clipId() != 0) {
      clips.unlog(rep.clipId());
    }
  }

  /** The picture of a rep, from 0; empty where there is none (any more). */
  public Optional<Path> still(long repId, int number) {
    return files.still(rep(repId), number);
  }

  /**
   * The coach is through with a film: what its athletes wore is forgotten, and the film goes unless films are kept.
   *
   * @throws RefusedException while it is being cut or a rep of it is being read
   */
  public void done(long id) {
    SessionFilm film = film(id);
    refuseBusy(film);
    sessions.done(id);
    if (!clips.keepFilms()) {
      dropFilm(id);
    }
  }

  private void refuseBusy(SessionFilm film) {
    boolean reading =
        sessions.reps(film.id()).stream()
            .filter(r -> r.clipId() != 0)
            .map(r -> clips.clip(r.clipId()).state())
            .anyMatch(s -> s == ClipState.WAITING || s == ClipState.READING);
    if (reading || film.state() == ClipState.WAITING || film.state() == ClipState.READING) {
      throw new RefusedException("The film is still being read. Wait until it is, or call it off first.");
    }
  }

  /** Drops the film itself; stills, names and readings stay. */
  public void dropFilm(long id) {
    refuseBusy(film(id));
    files.kept().dropFilm(id);
    sessions.filmGone(id);
  }

  /** Removes a film with its stills; clips of named reps and logged reps stay. */
  public void remove(long id) {
    cancel(id);
    // first what shows somebody: if that cannot be removed now, the film is still in the list, to be removed again
    files.remove(id);
    sessions.remove(id);
  }

  /**
   * Takes away all that films of sessions hold of an athlete, before the athlete is erased: the stills of their reps, and the films that
   * show them. Their readings are clips, see {@link ClipDesk#removeAll}.
   */
  public void forget(long athleteId) {
    List<Long> shown = new ArrayList<>();
    for (SessionRep rep : sessions.of(athleteId)) {
      files.dropStills(rep);
      shown.add(rep.filmId());
    }
    for (long id : shown.stream().distinct().toList()) {
      cancel(id);
      files.kept().dropFilm(id);
      sessions.filmGone(id);
    }
  }
}
