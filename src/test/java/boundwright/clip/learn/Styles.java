package boundwright.clip.learn;

import boundwright.clip.FoundClip;
import boundwright.clip.camera.CameraPath;
import boundwright.clip.film.FilmFacts;
import boundwright.clip.learn.Label.End;
import boundwright.clip.learn.Label.Stand;
import boundwright.clip.track.BodyPoint;
import boundwright.clip.track.Joint;
import boundwright.clip.track.Track;
import boundwright.clip.truth.Noise;
import boundwright.clip.truth.TrueClip;
import boundwright.clip.truth.TrueContact;
import boundwright.footfall.Foot;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;

/**
 * Clips of the made-up athlete of these tests (another one than that of the training), as if a coach had put every contact right: the
 * labels are the truth of the simulator. The ground is not known, so feet and times stand by the network alone.
 */
final class Styles {
  /** A finder that often puts both feet on one leg and exchanges the legs for long: the shipped network reads it badly at 30 fps (own output). */
  static final Noise BOTH_ON_ONE_LEG = new Noise(1, 0.08, 0.4, 0.06, 0.02, 0.3);
  private static final LocalDate DAY = LocalDate.of(2026, 11, 29);

  private Styles() {}

  static Label label(int k, long seed, double fps, Noise noise) {
    TrueClip clip = TrueClip.numbered(k, fps, noise, true, seed);
    Track found = clip.found();
    List<Stand> stands = new ArrayList<>();
    double first = found.time(0);
    double last = found.time(found.frames() - 1);
    double from = Double.NaN;
    double to = 0;
    for (TrueContact c : clip.athlete().mass().contacts()) {
      // what the picture does not show nobody can put right
      if (shown(clip, c)) {
        from = Double.isNaN(from) ? c.down() - 0.06 : from;
        to = c.up() + 0.06;
        stands.add(new Stand(c.foot(), false, end(c.down(), first, last), end(c.up(), first, last)));
      }
    }
    double landing = clip.athlete().mass().landingTime();
    if (landing < last && clip.truth().seen(BodyPoint.RIGHT_TOE, clip.truth().nearest(landing))) {
      to = landing + 0.06;
      stands.add(new Stand(Foot.RIGHT, true, end(landing, first, last), End.OPEN));
    }
    boolean[] exchanged = new boolean[found.frames()];
    for (int i = 0; i < exchanged.length; i++) {
      exchanged[i] = clip.exchanged(found, i);
    }
    FilmFacts film = new FilmFacts("made up", 1280, 720, 0, 1, 1000, found.frames(), last - first, Double.NaN);
    FoundClip points = new FoundClip(film, 0, found, found.frames(), List.of(), CameraPath.of(CameraPath.Kind.LOST));
    return new Label(DAY, 1, true, from, Math.min(last, to), stands, exchanged, points);
  }

  static List<Label> labels(int clips, long seed, double fps, Noise noise) {
    List<Label> out = new ArrayList<>();
    for (int k = 0; k < clips; k++) {
      out.add(label(k, seed, fps, noise));
    }
    return out;
  }

  private static boolean shown(TrueClip clip, TrueContact c) {
    double[] t = clip.truth().times();
    for (int i = 0; i < t.length; i++) {
      if (t[i] > c.down() - 0.06 && t[i] < c.up() + 0.06 && !clip.truth().seen(BodyPoint.of(Joint.TOE, c.foot()), i)) {
        return false;
      }
    }
    return c.down() - 0.06 > t[0] && c.up() + 0.06 < t[t.length - 1];
  }

  private static End end(double t, double first, double last) {
    return t > first && t < last ? new End(t, 0.002, true) : End.OPEN;
  }
}
