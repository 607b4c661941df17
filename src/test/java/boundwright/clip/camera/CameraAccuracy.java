package boundwright.clip.camera;

import boundwright.clip.scale.GroundMarks;
import boundwright.clip.track.Spot;
import boundwright.clip.truth.PannedFilm;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;

/** How well the ground is followed on films of a made-up ground whose every frame's camera is known. */
final class CameraAccuracy {
  private CameraAccuracy() {}

  /** What following a film gave; the film's own truth beside it. */
  record Run(PannedFilm film, CameraPath path, double ms, List<String> signs) {
    /** Where the athlete's place on the ground is in each frame by these marks, less where it is [m]. */
    double[] errors(GroundMarks marks) {
      double[] out = new double[film.frames()];
      for (int i = 0; i < out.length; i++) {
        double x = film.athlete(film.time(i));
        out[i] = marks.along(path.carry(i, film.see(i, x, 0, 0))) - x;
      }
      return out;
    }

    /** A mark as it is clicked in a frame, without the click's own error. */
    GroundMarks.Mark mark(int frame, double at) {
      return new GroundMarks.Mark(path.carry(frame, film.see(frame, at, 0, 0)), at);
    }

    /** Five marks in the frame in the middle. */
    GroundMarks inOne() {
      int m = film.frames() / 2;
      double x = film.athlete(film.time(m));
      return GroundMarks.of(IntStream.rangeClosed(-2, 2).mapToObj(k -> mark(m, x + 3 * k)).toList());
    }

    /** Two marks in each of two far frames. */
    GroundMarks inTwo() {
      List<GroundMarks.Mark> out = new ArrayList<>();
      for (int f : new int[] {(int) (0.08 * film.frames()), (int) (0.92 * film.frames())}) {
        double x = film.athlete(film.time(f));
        out.add(mark(f, x - 2));
        out.add(mark(f, x + 2));
      }
      return GroundMarks.of(out);
    }
  }

  static Run run(PannedFilm film, double contrast, boolean wall) {
    Object scenery = film.scenery(contrast, wall);
    CameraFollower follower = new CameraFollower();
    long spent = 0;
    double taken = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < film.frames(); i++) {
      var picture = film.picture(scenery, i);
      long t0 = cpu();
      if (CameraFollower.wants(film.time(i), taken)) {
        taken = film.time(i);
        follower.take(Gray.of(picture), film.time(i), film.athleteBox(i));
      }
      spent += cpu() - t0;
    }
    long t0 = cpu();
    CameraPath path = follower.path(film.width(), film.height(), IntStream.range(0, film.frames()).mapToDouble(film::time).toArray());
    double solved = (cpu() - t0) / 1e6;
    List<String> signs = follower.signs();
    signs.add(String.format(Locale.ROOT, "solved in %.0f ms", solved));
    return new Run(film, path, spent / 1e6 / film.frames(), signs);
  }

  private static long cpu() {
    return java.lang.management.ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
  }

  static double most(double[] e) {
    double out = 0;
    for (int i = (int) (0.08 * e.length); i < 0.92 * e.length; i++) {
      out = Math.max(out, Math.abs(e[i]));
    }
    return out;
  }

  /** Root mean square error of a length of 2 m between two places at the times the athlete was there [m]. */
  static double steps(PannedFilm film, double[] e) {
    int apart = (int) Math.round(2 / film.speed() * film.fps());
    double sum = 0;
    int n = 0;
    for (int i = (int) (0.08 * e.length); i + apart < 0.92 * e.length; i++) {
      sum += (e[i + apart] - e[i]) * (e[i + apart] - e[i]);
      n++;
    }
    return Math.sqrt(sum / n);
  }

  static String row(String name, Run r) {
    if (!r.path.carries()) {
      return String.format(Locale.ROOT, "| %s | %s | | | | | | %.1f |", name, r.path.kind(), r.ms);
    }
    double[] one;
    try {
      one = r.errors(r.inOne());
      r.inTwo();
    } catch (boundwright.quantity.RefusedException e) {
      return String.format(Locale.ROOT, "| %s | %s, marks refused | | | | | | %.1f |", name, r.path.kind(), r.ms);
    }
    double[] two = r.errors(r.inTwo());
    int a = (int) (0.08 * one.length);
    int b = (int) (0.92 * one.length);
    double k = 100 * r.film.distance() / r.film.focal();
    return String.format(
        Locale.ROOT, "| %s | %s, %.0f degrees, %.0f ms%s | %.2f | %.2f | %.2f | %.2f | %.2f | %.1f |", name, r.path.kind(), r.path.turned_deg(),
        1000 * r.path.shutter_s(), r.path.shutterFound() ? " found" : "", 100 * most(one), 100 * most(two), 100 * steps(r.film, one),
        100 * steps(r.film, two), k * r.path.apart(a, b), r.ms);
  }

  static final String HEAD =
      "| film | seen as | marks in one frame: most cm | in two far ones: most cm | 2 m step, one: RMS cm | two: RMS cm | stated sd over the film cm | ms a frame |\n| --- | --- | --- | --- | --- | --- | --- | --- |";

  public static void main(String[] args) {
    boolean talk = args.length > 1;
    System.out.println(HEAD);
    for (long seed = Integer.parseInt(args[0].split("-")[0]); seed <= Integer.parseInt(args[0].split("-")[1]); seed++) {
      PannedFilm f = PannedFilm.usual(seed);
      if (args.length > 2) {
        f = f.at(30);
      }
      for (String name : args.length > 3 ? List.of(args[3].split(",")) : NAMES) {
        show(name, named(name, f), talk);
      }
    }
  }

  private static final List<String> NAMES =
      List.of("pan 67", "pan 30", "zoom 1.3", "shutter 20 ms", "arm 0.4 m", "arm 0.2 m", "travels", "poor contrast", "no contrast", "wall", "wall, poor");

  static Run named(String name, PannedFilm f) {
    return switch (name) {
      case "pan 67" -> run(f, 1, false);
      case "pan 30" -> run(f.way(-4, 4), 1, false);
      case "zoom 1.3" -> run(f.with(1.3, 2, 0), 1, false);
      case "shutter 20 ms" -> run(f.with(1, 2, 0.02), 1, false);
      case "arm 0.4 m" -> run(f.moving(0.4, 0), 1, false);
      case "arm 0.2 m" -> run(f.moving(0.2, 0), 1, false);
      case "travels" -> run(f.moving(0, 1), 1, false);
      case "poor contrast" -> run(f, 0.12, false);
      case "no contrast" -> run(f, 0, false);
      case "wall" -> run(f, 1, true);
      case "wall, poor" -> run(f, 0.12, true);
      default -> throw new IllegalArgumentException(name);
    };
  }

  private static void show(String name, Run r, boolean talk) {
    System.out.println(row(name, r));
    if (talk) {
      r.signs.forEach(s -> System.out.println("    " + s));
      if (r.path.carries()) {
        Spot c = r.path.carry(0, new Spot(640, 500));
        System.out.println("    focal " + r.path.commonFocal() + " first frame's middle at " + c);
      }
    }
  }
}
