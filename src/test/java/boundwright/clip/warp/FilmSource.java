package boundwright.clip.warp;

import boundwright.clip.FoundClip;
import boundwright.clip.film.Film;
import boundwright.clip.film.Frame;
import boundwright.clip.scan.ScanOrder;
import boundwright.clip.scan.Scanner;
import boundwright.clip.track.BodyPoint;
import boundwright.clip.track.Spot;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** A real film from a phone that stood still. Its focal length is not known: it is said by the angle of view. */
final class FilmSource implements StillSource {
  /** Half the time over which the athlete's way is smoothed [s]. */
  private static final double SMOOTH_S = 0.35;
  private final Film film;
  private final double focal;
  private final List<double[]> way = new ArrayList<>();

  FilmSource(Path file, Path weights, double viewDeg) {
    FoundClip found = Scanner.scan(ScanOrder.of(file, weights), p -> {});
    for (int i = 0; i < found.track().frames(); i++) {
      Spot s = found.track().spot(BodyPoint.LEFT_HIP, i).towards(found.track().spot(BodyPoint.RIGHT_HIP, i), 0.5);
      if (s.known()) {
        way.add(new double[] {found.track().time(i), s.x(), s.y()});
      }
    }
    film = Film.open(file);
    focal = film.facts().width() / 2.0 / Math.tan(Math.toRadians(viewDeg / 2));
  }

  @Override
  public int width() {
    return film.facts().width();
  }

  @Override
  public int height() {
    return film.facts().height();
  }

  @Override
  public double focal() {
    return focal;
  }

  @Override
  public double[] follow(double time_s) {
    double at = Math.max(way.get(0)[0], Math.min(way.get(way.size() - 1)[0], time_s));
    double sum = 0;
    double x = 0;
    double y = 0;
    for (double[] w : way) {
      double far = (w[0] - at) / SMOOTH_S;
      double weight = Math.exp(-far * far);
      sum += weight;
      x += weight * w[1];
      y += weight * w[2];
    }
    return new double[] {x / sum, y / sum};
  }

  @Override
  public @Nullable Still next() {
    Frame f = film.next();
    return f == null ? null : new Still(f.time_s(), f.picture().rgb());
  }

  @Override
  public void close() {
    film.close();
  }
}
