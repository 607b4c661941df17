package boundwright.web.clips.session;

import boundwright.athlete.Surface;
import boundwright.clip.day.SessionDesk;
import boundwright.clip.day.SessionFilm;
import boundwright.quantity.LengthUnit;
import boundwright.runway.Drill;
import boundwright.web.page.Figures;
import boundwright.web.page.Sent;
import java.time.LocalDate;
import java.util.List;

/**
 * The films of sessions and the form that takes one.
 *
 * @param films newest first
 * @param drills of the card
 * @param unit the coach's unit
 * @param surface the usual surface
 * @param keepFilms whether films are kept when the coach is through with them
 * @param freeBytes free on the disk
 * @param today the day
 * @param sent a refused form, or nothing
 */
public record SessionsView(
    List<SessionFilm> films, List<Drill> drills, LengthUnit unit, Surface surface, boolean keepFilms, long freeBytes, LocalDate today, Sent sent) {
  /** The surfaces to choose from. */
  public List<Surface> surfaces() {
    return List.of(Surface.values());
  }

  /** What is known of a film in a line. */
  public String said(SessionFilm f) {
    String state =
        SessionView.working(f) ? "looked through to " + Figures.percent(f.share()) : f.done() ? "done" : f.state().label().equals("read") ? "cut" : f.state().label();
    return Figures.day(f.date(), today) + ", " + (f.seconds() > 0 ? SessionDesk.at(f.seconds()) + ", " : "") + SessionView.gigabytes(f.bytes())
        + (f.filmKept() ? "" : " dropped") + ", " + state;
  }

  /** What is free on the disk. */
  public String free() {
    return SessionView.gigabytes(freeBytes);
  }

  /** Largest film in words. */
  public String most() {
    return (SessionDesk.MAX_FILM_BYTES >> 30) + " GB, 2 hours";
  }
}
