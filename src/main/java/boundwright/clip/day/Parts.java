package boundwright.clip.day;

import boundwright.clip.desk.FilmParts;
import boundwright.clip.film.Stretch;
import boundwright.clip.keep.FilmStore;
import boundwright.flight.Rep;
import java.util.Optional;

/** Which part of which session's film a clip is. */
public final class Parts implements FilmParts {
  private final SessionRepository sessions;
  private final FilmStore films;

  /** The films of sessions are in {@code films}. */
  public Parts(SessionRepository sessions, FilmStore films) {
    this.sessions = sessions;
    this.films = films;
  }

  @Override
  public Optional<Part> of(long clipId) {
    return sessions.ofClip(clipId).map(r -> new Part(() -> films.film(r.filmId()), new Stretch(r.cut().from_s(), r.cut().to_s())));
  }

  @Override
  public long tapped(long clipId) {
    return sessions.ofClip(clipId).map(SessionRep::tapRepId).orElse(0L);
  }

  @Override
  public void measured(long clipId, Rep before) {
    sessions.ofClip(clipId).ifPresent(r -> sessions.measured(r.id(), before.footprints_m(), before.landing_m()));
  }

  @Override
  public Optional<Lengths> had(long clipId) {
    return sessions.ofClip(clipId).flatMap(r -> sessions.had(r.id())).map(h -> new Lengths(h.footprints_m(), h.landing_m()));
  }

  @Override
  public void restored(long clipId) {
    sessions.ofClip(clipId).ifPresent(r -> sessions.restored(r.id()));
  }
}
