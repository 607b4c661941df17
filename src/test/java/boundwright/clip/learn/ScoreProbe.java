package boundwright.clip.learn;

import boundwright.clip.FoundClip;
import boundwright.clip.film.FilmFacts;
import boundwright.clip.learn.Label.End;
import boundwright.clip.learn.Label.Stand;
import boundwright.clip.track.Track;
import boundwright.footfall.Foot;
import java.time.LocalDate;
import java.util.List;

/** Lets other tests count as the product does, from contacts alone. */
public final class ScoreProbe {
  /** A contact from {@code down} to {@code up} [s]. */
  public record C(Foot foot, double down, double up) {}

  private ScoreProbe() {}

  /** What {@link Score} counts where these are known and those were found. */
  public static Figures of(double fps, double frames, List<C> known, List<C> found) {
    double[] times = new double[(int) frames + 40];
    for (int i = 0; i < times.length; i++) {
      times[i] = i / fps;
    }
    FilmFacts film = new FilmFacts("made up", 1280, 720, 0, 1, 1000, times.length, times.length / fps, Double.NaN);
    FoundClip points = new FoundClip(film, 0, Track.at(times).build(), 0, List.of());
    List<Stand> stands =
        known.stream().map(c -> new Stand(c.foot, false, new End(c.down, 0.002, true), new End(c.up, 0.002, true))).toList();
    Label label = new Label(LocalDate.EPOCH, 1, true, 0, times[times.length - 1], stands, new boolean[times.length], points);
    return Score.of(label, found.stream().map(c -> new Score.Found(c.foot, c.down, c.up, false)).toList());
  }
}
