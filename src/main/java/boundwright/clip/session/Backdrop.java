package boundwright.clip.session;

import boundwright.clip.film.Picture;
import boundwright.clip.track.Spot;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What stands still in small pictures of a film, and what does not. The background is the slow mean of what was seen, one for each direction
 * that the camera looked in; where the camera looks is found from look to look and again against the background, so that motion
 * counts against the ground and not against the picture, and a phone that swings back finds the ground that it knows.
 */
final class Backdrop {
  /** The mean follows what is there within this time [s]; where something moves three times slower (judgement). */
  private static final double FOLLOWS_S = 12;
  /** Least difference of a colour that counts, of 255 (judgement). */
  private static final float LEAST = 16;
  /** Farthest turn between two looks that is found, as a share of the width (judgement: a quick pan at five looks a second). */
  private static final double REACH = 0.25;
  /** So long after a turn edges may still lie a pixel off [s]. */
  private static final double UNSTEADY_S = 2;
  /** A turn has to fit so much better than none; noise alone fits a little better somewhere. */
  private static final double BETTER = 0.9;
  /** A far turn has to fit so much better than a near one: trees and fences repeat. */
  private static final double FAR = 0.8;
  /** Against the background a small turn has to fit so much better. */
  private static final double CLOSER = 0.95;
  /** More than this share of the picture cannot be people: the light changed, or the ground was lost. */
  private static final double MOST = 0.35;
  /** Ground that came into the picture flickers by this much until more is known, of 255 (judgement). */
  private static final float NEW_NOISE = 3;
  /** Another view begins so far away, as a share of the width, or at such a zoom. */
  private static final double NEXT_VIEW = 0.07;
  private static final double NEXT_ZOOM = 0.05;
  /** A turn of this much of the width tells the lens; of phones it is known to so much before, as a share, and is within these. */
  private static final double TELLS_LENS = 0.04;
  private static final double LENS_SD = 0.3;
  /** No look tells more than this: inverse of the variance of one part in ten. */
  private static final double LENS_LOOK = 100;
  private static final double LENS_LEAST = 0.5;
  private static final double LENS_MOST = 3;
  /** A better one is taken from so much of a difference on. */
  private static final double LENS_NEWS = 0.02;
  /** So many are kept: a good turn of the body. */
  private static final int VIEWS = 32;

  private final int width;
  private final int height;
  private final Aligner aligner;
  private final boolean[] moving;
  /** The view used last is the last of them. */
  private final List<View> views = new ArrayList<>();
  private @Nullable Shades before;
  private Aim aim = Aim.first();
  private Aim aimBefore = aim;
  private double step_s;
  private boolean turning;
  private boolean lost;
  private double unsteady;
  private double lensInformation = 1 / (LENS_SD * LENS_SD);
  private double lensSum = lensInformation * Math.log(Aim.first().lens());

  Backdrop(int width, int height) {
    this.width = width;
    this.height = height;
    aligner = new Aligner(width, height);
    moving = new boolean[width * height];
  }

  /** Looks at the next picture, {@code dt} seconds after the last. */
  void look(Picture picture, double dt) {
    byte[] rgb = picture.rgb();
    Shades now = shades(rgb);
    Shades last = before;
    before = now;
    if (last == null) {
      views.add(new View(aim, rgb, width, height));
      return;
    }
    turn(last, now, dt);
    View view = view(now, rgb);
    unsteady = turning ? UNSTEADY_S : Math.max(0, unsteady - dt);
    compare(view, rgb, (float) Math.min(1, dt / FOLLOWS_S));
    if (lost) {
      views.remove(view);
      views.add(new View(aim, rgb, width, height));
    }
  }

  private Shades shades(byte[] rgb) {
    float[] grey = new float[width * height];
    for (int i = 0; i < grey.length; i++) {
      grey[i] = rgb[3 * i + 1] & 0xff;
    }
    return new Shades(grey, width, height);
  }

  /** How the camera turned since the last look. */
  private void turn(Shades last, Shades now, double dt) {
    Aim was = aim;
    Aim near = aligner.align(last, was, now, was);
    Aim chosen = near;
    double cost = aligner.cost(last, was, now, near);
    double still = aligner.cost(last, was, now, was);
    if (turning || cost >= BETTER * still || cost > LEAST / 4) {
      for (Aim guess : guesses(last, now, dt)) {
        Aim other = aligner.align(last, was, now, guess);
        double c = aligner.cost(last, was, now, other);
        if (c < FAR * cost) {
          chosen = other;
          cost = c;
        }
      }
    }
    turning = cost < BETTER * still;
    aimBefore = was;
    step_s = dt;
    aim = turning ? chosen : was;
    if (was.apart(aim, width, height, NEXT_ZOOM) > TELLS_LENS * width) {
      learnLens(aligner.lens(last, was, now, aim));
    }
  }

  /** Where the camera may look, beside where it looked: as far on as before, and by the best shift; what would be the same again is left out. */
  private List<Aim> guesses(Shades last, Shades now, double dt) {
    List<Aim> out = new ArrayList<>();
    if (turning && step_s > 0) {
      out.add(aim.again(aimBefore, dt / step_s));
    }
    aligner.shifted(last, aim, now, REACH).ifPresent(out::add);
    return out;
  }

  /** The wider the lens, the more a turn stretches the picture towards its sides. */
  private void learnLens(double[] told) {
    double weight = Math.min(told[1], LENS_LOOK);
    lensSum += weight * (Math.log(aim.lens()) + told[0]);
    lensInformation += weight;
    double better = Math.max(LENS_LEAST, Math.min(LENS_MOST, Math.exp(lensSum / lensInformation)));
    if (Math.abs(better / aim.lens() - 1) > LENS_NEWS) {
      aim = aim.through(better);
      aimBefore = aimBefore.through(better);
      views.forEach(v -> v.through(better));
    }
  }

  /** The background to compare with; where the camera looks is put right by it. */
  private View view(Shades now, byte[] rgb) {
    View nearest = views.get(views.size() - 1);
    for (View v : views) {
      if (far(v) < far(nearest)) {
        nearest = v;
      }
    }
    if (turning || unsteady > 0) {
      Shades known = nearest.shades();
      Aim closer = aligner.align(known, nearest.aim(), now, aim);
      if (aligner.cost(known, nearest.aim(), now, closer) < CLOSER * aligner.cost(known, nearest.aim(), now, aim)) {
        aim = closer;
      }
    }
    views.remove(nearest);
    views.add(nearest);
    if (far(nearest) > NEXT_VIEW * width) {
      View next = new View(aim, rgb, width, height);
      next.knows(nearest, NEW_NOISE);
      views.add(next);
      nearest = next;
      if (views.size() > VIEWS) {
        views.remove(0);
      }
    }
    return nearest;
  }

  private double far(View v) {
    return v.aim().apart(aim, width, height, NEXT_ZOOM);
  }

  private void compare(View view, byte[] rgb, float follow) {
    double[] m = aim.to(view.aim(), width, height);
    int n = 0;
    for (int p = 0; p < moving.length; p++) {
      int q = View.pixel(m, p % width, Math.floorDiv(p, width), width, height);
      if (q < 0) {
        moving[p] = false;
        continue;
      }
      float most = unsteady > 0 ? view.leastNear(rgb, p, q) : view.off(rgb, p, q);
      boolean out = most > LEAST + 3 * view.noise(q);
      moving[p] = out;
      n += out ? 1 : 0;
      view.follow(rgb, p, q, out ? follow / 3 : follow);
      if (!out) {
        view.flickers(q, most, follow);
      }
    }
    lost = n > MOST * moving.length;
  }

  /** Where something moves, row by row; not copied. */
  boolean[] moving() {
    return moving;
  }

  /** Whether the camera turned since the last look. */
  boolean turning() {
    return turning;
  }

  /** Whether so much changed at once that nothing can be told. */
  boolean lost() {
    return lost;
  }

  /** Where the ground at a point of the last look's picture lies now [small px]. */
  Spot carried(double x, double y) {
    double[] m = aimBefore.to(aim, width, height);
    double z = m[6] * x + m[7] * y + m[8];
    return z > 0 ? new Spot((m[0] * x + m[1] * y + m[2]) / z, (m[3] * x + m[4] * y + m[5]) / z) : new Spot(x, y);
  }
}
