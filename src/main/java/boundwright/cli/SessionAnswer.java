package boundwright.cli;

import boundwright.clip.session.FilmRep;
import java.util.List;

/** What {@code clip session --json} prints; field by field in {@code docs/formats-json.md}. */
record SessionAnswer(double seconds, int networkLooks, List<RepOfFilm> reps) {

  /** One rep, by the film's own times. */
  record RepOfFilm(double from_s, double to_s, double run_s, String way, boolean landed, double sure, String said) {}

  static SessionAnswer of(double seconds, int looks, List<FilmRep> reps) {
    return new SessionAnswer(
        cut(seconds), looks,
        reps.stream().map(r -> new RepOfFilm(cut(r.from_s()), cut(r.to_s()), cut(r.run_s()), r.toTheRight() ? "right" : "left", r.landed(), cut(r.sure()), r.said())).toList());
  }

  private static double cut(double v) {
    return Math.rint(v * 1000) / 1000;
  }
}
