package boundwright.clip.day;

import boundwright.clip.desk.ClipState;
import boundwright.clip.session.FilmRep;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** Where films of sessions are kept. Each call is one transaction; a change of what is not there does nothing. */
public interface SessionRepository {
  /** Stores a new film and gives it a number. */
  SessionFilm add(SessionFilm film);

  /** One film. */
  Optional<SessionFilm> film(long id);

  /** All films, newest first. */
  List<SessionFilm> films();

  /** Sets state and the sentence of refusal. */
  void state(long id, ClipState state, @Nullable String trouble);

  /** Sets the state to READING if the film waits or was being cut before; false otherwise, so that nobody cuts it. */
  boolean claim(long id, Instant now);

  /** Says how far cutting has come, only while the film is being cut; false if it no longer is, so that the cutter stops. */
  boolean reached(long id, double time_s, double of_s);

  /** Adds a rep, unless one with the same beginning of the run is there: a cut that goes on may find it again. */
  void found(long filmId, FilmRep rep);

  /** Reps of a film in the order of the film. */
  List<SessionRep> reps(long filmId);

  /** One rep. */
  Optional<SessionRep> rep(long id);

  /** The rep that a clip reads. */
  Optional<SessionRep> ofClip(long clipId);

  /** Reps of an athlete in whatever film. */
  List<SessionRep> of(long athleteId);

  /** Says who it was, or nobody; and whether it is no rep. */
  void named(long id, @Nullable Long athleteId, boolean setAside);

  /** Says which clip reads it, 0 for none. */
  void clip(long id, long clipId);

  /** Says which tapped rep it is, 0 for none. */
  void tapped(long id, long repId);

  /** Says that lengths were added to the tapped rep, and keeps what it had before. */
  void measured(long id, List<Double> hadFootprints_m, @Nullable Double hadLanding_m);

  /** What the tapped rep had before lengths were added; empty where none were. */
  Optional<Had> had(long id);

  /** Says that the tapped rep has again what it had. */
  void restored(long id);

  /** Lengths before. */
  record Had(List<Double> footprints_m, @Nullable Double landing_m) {
    /** Copies the list. */
    public Had {
      footprints_m = List.copyOf(footprints_m);
    }
  }

  /** Forgets the clothes of a film's reps, for good, and says that the coach is through with it. */
  void done(long id);

  /** Says that the film itself is gone. */
  void filmGone(long id);

  /** Takes a film out with its reps; clips and logged reps stay. */
  void remove(long id);

  /** Reps tapped on a day, in order of time; those that came without a time are left out. */
  List<TappedRep> taps(LocalDate day);

  /** Numbers of the athletes who are here on a day, in the order in which the day's card has them. */
  List<Long> here(LocalDate day);
}
