package boundwright.clip.painted;

import boundwright.clip.truth.Body;
import boundwright.clip.truth.Camera;
import boundwright.clip.truth.PaintedPlace;
import boundwright.clip.truth.Painter;
import boundwright.clip.truth.Skeleton;
import boundwright.clip.truth.Stroller;
import boundwright.footfall.Sequence;
import java.awt.Color;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.function.DoubleFunction;

/**
 * A made-up training session before a camera that stands still: athletes in turn run in, bound and land, get up and walk back beside the runway; between
 * reps somebody walks across or stands about, and for long stretches nobody is there. Everything follows from the seed.
 */
public final class PaintedSession {
  private static final Color[] SHIRTS = {
    new Color(40, 84, 150), new Color(196, 60, 48), new Color(236, 214, 70), new Color(60, 140, 84), new Color(236, 236, 232), new Color(120, 62, 140)
  };
  private static final Color[] SHORTS = {
    new Color(34, 34, 44), new Color(40, 40, 120), new Color(90, 90, 96), new Color(24, 24, 24), new Color(160, 40, 60), new Color(34, 70, 60)
  };
  private static final Color[] SKINS = {new Color(196, 140, 108), new Color(122, 82, 60), new Color(224, 178, 150), new Color(90, 60, 44)};
  private static final String[] DRILLS = {"RRL", "RLRL", "LLR", "RRLL", "LRLR"};
  /** Beside the runway, away from the camera [m]. */
  private static final double ASIDE = 1.6;

  /**
   * Somebody doing something.
   *
   * @param from into the picture, or when it begins there [s]
   * @param to out of it, or when it ends [s]
   * @param who name of the made-up athlete
   * @param what rep, back, across or stand
   * @param drill the sequence of a rep, else empty
   */
  public record Doing(double from, double to, String who, String what, String drill, double shown_to, PaintedPlace.Person person) {}

  private final List<Doing> doings = new ArrayList<>();
  private final Camera camera;
  private final double length_s;

  /** Plans a session so long [s]; the camera looks at the runway from 12 m away. */
  public PaintedSession(double length_s, long seed, int width, int high) {
    this(length_s, seed, width, high, 1000.0 * width / 1280);
  }

  /** The same with another focal length [px], as for a picture wider than a phone's. */
  public PaintedSession(double length_s, long seed, int width, int high, double focal) {
    this.length_s = length_s;
    Random random = new Random(seed);
    camera = new Camera(7, 12, 1.4, random.nextBoolean(), 0, 0, 0, focal, 0, width, high);
    int athletes = 4 + random.nextInt(3);
    double t = 4 + 4 * random.nextDouble();
    int turn = 0;
    while (t < length_s - 25) {
      int who = turn % athletes;
      turn++;
      double free = rep(t, who, random);
      t = free + 8 + 32 * random.nextDouble();
      double chance = random.nextDouble();
      if (chance < 0.12) {
        t = across(t, (who + 2) % athletes, random) + 2;
      } else if (chance < 0.24) {
        t = stand(t, (who + 1) % athletes, random) + 2;
      } else if (chance < 0.34) {
        t += 30 + 60 * random.nextDouble();
      }
    }
  }

  private static PaintedPlace.Person person(DoubleFunction<Body> at, int who) {
    Painter.Kit kit =
        new Painter.Kit(SKINS[who % SKINS.length], SHIRTS[who % SHIRTS.length], SHORTS[who % SHORTS.length], new Color(230, 226, 80), new Color(52, 36, 26));
    return new PaintedPlace.Person(at, kit);
  }

  private static String name(int who) {
    return "athlete " + (char) ('A' + who);
  }

  /** A rep, getting up and walking back; returns when the runway is free. */
  private double rep(double t, int who, Random random) {
    Sequence drill = Sequence.parse(DRILLS[(who + random.nextInt(2)) % DRILLS.length]);
    Skeleton a = new Skeleton(drill, 2, 5 + 1.5 * random.nextDouble(), 0.5 + random.nextDouble(), random);
    double edge = camera.x() - half() - 0.6;
    double enters = a.mass().contacts().get(0).down();
    while (a.centreOfMass(enters).x() > edge && enters > -4) {
      enters -= 0.02;
    }
    double shift = t - enters;
    double lands = a.mass().landingTime() + shift;
    double still = lands + 0.9;
    double up = still + 1.2;
    double lastX = a.centreOfMass(lands - shift + 0.5).x();
    double backFrom = up + 1.5;
    double speed = 1.1 + 0.3 * random.nextDouble();
    // most go on past the sand and come back behind the camera
    boolean onward = random.nextDouble() < 0.6;
    double gone = backFrom + (onward ? Math.max(0.5, camera.x() + half() + 1 - lastX) : lastX - edge + 1) / speed;
    double away = camera.toTheRight() ? -ASIDE : ASIDE;
    Stroller standing = new Stroller(lastX, 0);
    Stroller walking = new Stroller(0, speed);
    DoubleFunction<Body> at =
        s -> {
          if (s < still) {
            return a.at(Math.min(s, lands + 0.25) - shift);
          }
          Body low = a.at(lands + 0.25 - shift);
          if (s < up) {
            return low.towards(standing.at(s), smooth((s - still) / (up - still)));
          }
          if (s < backFrom) {
            return standing.at(s).moved(0, away * smooth((s - up) / (backFrom - up)));
          }
          Body on = walking.at(s - backFrom).moved(lastX, 0);
          return (onward ? on : on.turned(lastX)).moved(0, away);
        };
    doings.add(new Doing(t, lands, name(who), "rep", drill.text(), gone, person(at, who)));
    doings.add(new Doing(backFrom, gone, name(who), onward ? "onward" : "back", "", gone, person(at, who)));
    return gone;
  }

  private double half() {
    return camera.width() / 2.0 / camera.focal() * camera.distance();
  }

  private double across(double t, int who, Random random) {
    double speed = 1.0 + 0.5 * random.nextDouble();
    double from = camera.x() - half() - 1;
    double until = t + (2 * half() + 2) / speed;
    Stroller walking = new Stroller(from, speed);
    double away = (camera.toTheRight() ? -1 : 1) * 2.2;
    doings.add(new Doing(t, until, name(who), "across", "", until, person(s -> walking.at(s - t).moved(0, away), who)));
    return until;
  }

  private double stand(double t, int who, Random random) {
    double until = t + 8 + 12 * random.nextDouble();
    Stroller standing = new Stroller(camera.x() + half() * (random.nextDouble() - 0.5), 0);
    double away = (camera.toTheRight() ? -1 : 1) * 2.4;
    doings.add(new Doing(t, until, name(who), "stand", "", until, person(s -> standing.at(s).moved(0, away), who)));
    return until;
  }

  private static double smooth(double share) {
    double s = Math.max(0, Math.min(1, share));
    return s * s * (3 - 2 * s);
  }

  public Camera camera() {
    return camera;
  }

  public double length_s() {
    return length_s;
  }

  /** What happens, in order. */
  public List<Doing> doings() {
    return doings;
  }

  /** Who is to be painted at a time. */
  public List<PaintedPlace.Person> at(double t) {
    return doings.stream().filter(d -> !d.what.equals("back") && !d.what.equals("onward") && t >= d.from && t <= d.shown_to).map(Doing::person).toList();
  }

  /** When the next one comes, where nobody is there now [s]. */
  double nobodyUntil(double t) {
    return doings.stream().mapToDouble(Doing::from).filter(f -> f > t).min().orElse(length_s);
  }

  /** The truth as text: what, from, to [s], who, drill. */
  public String text() {
    StringBuilder out = new StringBuilder("# made-up session: what, from [s], to [s], who, sequence; a rep goes from coming into the picture to landing\n");
    for (Doing d : doings) {
      out.append(String.format(Locale.ROOT, "%s\t%.2f\t%.2f\t%s\t%s%n", d.what, d.from, d.to, d.who, d.drill));
    }
    return out.toString();
  }
}
