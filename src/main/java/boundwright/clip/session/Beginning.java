package boundwright.clip.session;

import boundwright.clip.Box;
import boundwright.clip.pose.Region;
import java.util.ArrayList;
import java.util.List;

/**
 * Where the reading of a rep begins: as early as the athlete is seen wholly and alone, so that whoever stands beside is not followed in
 * place of the runner.
 *
 * @param from_s when [s]
 * @param box round the athlete then [px]
 */
record Beginning(double from_s, Box box) {
  /** The run is looked for so long before it was seen to be one [s]. */
  private static final double BEFORE_S = 1.2;
  /** Beside others the runner is taken up at most so far into the run. */
  private static final double LATEST = 0.5;
  /** A runner seen from the side is narrower than this share of the height; two people are not (judgement). */
  private static final double ALONE = 0.85;

  static Beginning of(Mover mover, Runner runner, Passage p, double scale, int width, int height) {
    Runner.Look first = steady(runner, p);
    double size = runner.middleSize();
    double way = p.toTheRight() ? 1 : -1;
    List<Mover.Place> all = new ArrayList<>(mover.places());
    double high = mover.high();
    for (Mover.Place place : all) {
      Blob b = place.blob();
      double ahead = way * (first.x() - scale * place.x());
      double before = first.time_s() - place.time_s();
      boolean whole = b.left() > 1 && b.right() < width - 2 && b.top() > 0 && b.bottom() < height - 1;
      boolean alone = b.wide() <= ALONE * b.high() && b.high() < 1.3 * high && b.high() > 0.75 * high;
      boolean same =
          before > 0
              ? ahead > -0.3 * size && ahead < 1.2 * p.speed() * size * before + 0.4 * size
              : runner.looks().stream().anyMatch(l -> l.time_s() == place.time_s() && Math.abs(l.x() - scale * place.x()) < 0.5 * size);
      boolean early = before <= BEFORE_S + (first.time_s() - p.from_s()) && place.time_s() < p.from_s() + LATEST * (p.to_s() - p.from_s());
      if (early && whole && alone && same) {
        return new Beginning(place.time_s(), new Box(scale * b.left(), scale * b.top(), scale * b.wide(), scale * b.high()));
      }
    }
    Region r = first.pose().next();
    return new Beginning(first.time_s(), new Box(r.x() - r.side() / 4, r.y() - r.side() / 2.5, r.side() / 2, r.side() / 1.25));
  }

  /** The first look of the run from which the hips go on as fast as they do in the middle of it. */
  private static Runner.Look steady(Runner runner, Passage p) {
    List<Runner.Look> looks = runner.looks();
    double way = p.toTheRight() ? 1 : -1;
    double speed = p.speed() * runner.middleSize();
    for (int i = 0; i + 3 < looks.size(); i++) {
      if (looks.get(i).time_s() < p.from_s() - 0.3) {
        continue;
      }
      boolean steady = true;
      for (int k = i; k < i + 3; k++) {
        double v = way * (looks.get(k + 1).x() - looks.get(k).x()) / (looks.get(k + 1).time_s() - looks.get(k).time_s());
        steady &= v > 0.5 * speed && v < 1.6 * speed;
      }
      if (steady) {
        return looks.get(i);
      }
    }
    return looks.get(0);
  }
}
