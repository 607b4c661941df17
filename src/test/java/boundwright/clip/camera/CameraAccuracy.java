package boundwright.clip.camera;

import boundwright.clip.FoundClip;
import boundwright.clip.film.FilmFacts;
import boundwright.clip.reading.CameraError;
import boundwright.clip.reading.Setup;
import boundwright.clip.scale.GroundMarks;
import boundwright.clip.track.Spot;
import boundwright.clip.track.Track;
import boundwright.clip.truth.PannedFilm;
import boundwright.quantity.Estimate;
import boundwright.quantity.RefusedException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.stream.IntStream;

/** How well the ground is followed on films of a made-up ground whose every frame's camera is known. */
final class CameraAccuracy {
  private CameraAccuracy() {}

  /** What following a film gave; the film's own truth beside it. */
  record Run(PannedFilm film, CameraPath path, double ms, List<String> signs) {
    private FoundClip clip() {
      double[] times = IntStream.range(0, film.frames()).mapToDouble(film::time).toArray();
      FilmFacts facts = new FilmFacts("made up", film.width(), film.height(), 0, 1, 90_000, times.length, times[times.length - 1], Double.NaN);
      return new FoundClip(facts, 0, Track.at(times).build(), times.length, List.of(), path);
    }

    /** A mark as it is clicked in a frame, off by a click's error. */
    private GroundMarks.Mark mark(int frame, double at, double click, Random random) {
      Spot s = film.see(frame, at, 0, 0);
      return new GroundMarks.Mark(new Spot(s.x() + click * random.nextGaussian(), s.y() + click * random.nextGaussian()), at, frame);
    }

    /** Five marks in the frame in the middle; {@code click} is the error of a click [px]. */
    CameraError inOne(double click, long seed) {
      Random random = new Random(seed);
      int m = film.frames() / 2;
      double x = Math.rint(film.athlete(film.time(m)));
      return CameraError.of(clip(), Setup.ground(IntStream.rangeClosed(-2, 2).mapToObj(k -> mark(m, x + 3 * k, click, random)).toList()));
    }

    /** Two marks in each of two far frames. */
    CameraError inTwo(double click, long seed) {
      Random random = new Random(seed);
      List<GroundMarks.Mark> out = new ArrayList<>();
      for (int f : new int[] {(int) (0.08 * film.frames()), (int) (0.92 * film.frames())}) {
        double x = Math.rint(film.athlete(film.time(f)));
        out.add(mark(f, x - 2, click, random));
        out.add(mark(f, x + 2, click, random));
      }
      return CameraError.of(clip(), Setup.ground(out));
    }

    /** Where the athlete's place on the ground is in each frame by these marks, less where it is [m]. */
    double[] errors(CameraError marks) {
      double[] out = new double[film.frames()];
      for (int i = 0; i < out.length; i++) {
        double x = film.athlete(film.time(i));
        out[i] = marks.along(i, film.see(i, x, 0, 0)) - x;
      }
      return out;
    }

    /** Counts lengths of 1 to 17 m between places of the athlete whose error is within the stated 90 % range, and all. */
    void cover(CameraError marks, int[] count) {
      double[] e = errors(marks);
      int a = (int) (0.08 * e.length);
      int b = (int) (0.92 * e.length);
      for (int i = a; i < b; i += 5) {
        for (int j = i + 5; j < b; j += 5) {
          double from = film.athlete(film.time(i));
          double to = film.athlete(film.time(j));
          count[0] += Math.abs(e[j] - e[i]) <= Estimate.Z95 * marks.sd(i, from, j, to) ? 1 : 0;
          count[1]++;
        }
      }
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
      return String.format(Locale.ROOT, "| %s | %s | | | | | | | %.1f |", name, r.path.kind(), r.ms);
    }
    double[] one;
    try {
      one = r.errors(r.inOne(0, 0));
      r.inTwo(0, 0);
    } catch (RefusedException e) {
      return String.format(Locale.ROOT, "| %s | %s, marks refused | | | | | | | %.1f |", name, r.path.kind(), r.ms);
    }
    double[] two = r.errors(r.inTwo(0, 0));
    return String.format(
        Locale.ROOT, "| %s | %s, %.0f degrees, %.0f ms%s | %.2f | %.2f | %.2f | %.2f | %s | %s | %.1f |", name, r.path.kind(), r.path.turned_deg(),
        1000 * r.path.shutter_s(), r.path.shutterFound() ? " found" : "", 100 * most(one), 100 * most(two), 100 * steps(r.film, one),
        100 * steps(r.film, two), covered(r, false), covered(r, true), r.ms);
  }

  /** Ten times marks clicked a pixel off. */
  private static String covered(Run r, boolean two) {
    int[] count = new int[2];
    for (long k = 1; k <= 10; k++) {
      r.cover(two ? r.inTwo(1, k) : r.inOne(1, k), count);
    }
    ALL[two ? 2 : 0] += count[0];
    ALL[two ? 3 : 1] += count[1];
    return String.format(Locale.ROOT, "%.0f %%", 100.0 * count[0] / count[1]);
  }

  private static final int[] ALL = new int[4];

  static final String HEAD =
      "| film | seen as | marks in one frame: most cm | in two far ones: most cm | 2 m step, one: RMS cm | two: RMS cm | stated range holds, one | two | ms a frame |\n| --- | --- | --- | --- | --- | --- | --- | --- | --- |";

  /** Arguments: seeds as {@code 1-3}; {@code talk} for signs or {@code quiet}; frames a second; names by commas. */
  public static void main(String[] args) {
    String[] seeds = args[0].split("-", 2);
    boolean talk = args[1].equals("talk");
    System.out.println(HEAD);
    for (long seed = Long.parseLong(seeds[0]); seed <= Long.parseLong(seeds[1]); seed++) {
      PannedFilm f = PannedFilm.usual(seed).at(Double.parseDouble(args[2]));
      for (String name : args.length > 3 ? List.of(args[3].split(",", -1)) : NAMES) {
        show(name, named(name, f), talk);
      }
    }
    System.out.println(all());
  }

  private static String all() {
    return String.format(
        Locale.ROOT, "stated 90 %% ranges hold: marks in one frame %.1f %%, in two far ones %.1f %%", 100.0 * ALL[0] / Math.max(1, ALL[1]),
        100.0 * ALL[2] / Math.max(1, ALL[3]));
  }

  private static final List<String> NAMES =
      List.of("pan 67", "pan 30", "zoom 1.3", "shutter 20 ms", "arm 0.4 m", "arm 0.2 m", "travels", "poor contrast", "no contrast", "wall", "poor wall");

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
      case "poor wall" -> run(f, 0.12, true);
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
