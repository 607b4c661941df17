package boundwright.clip.session;

import boundwright.clip.session.PaintedSession.TrueRep;
import boundwright.clip.truth.ChildTime;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * What cutting a session's film finds and costs. A block is painted (720p, 60 frames a second, three athletes in turn who walk back,
 * somebody who stands about), followed by as much time in which nothing happens, and repeated to the length asked for. Own output.
 *
 * <p>Arguments: folder, minutes, first seed; then, instead of painting, a film and its truth (a line a rep: from and to in seconds).
 */
final class SessionFilmBench {
  private static final double FPS = 60;

  private SessionFilmBench() {}

  public static void main(String[] args) throws Exception {
    Path folder = Path.of(args[0]);
    Files.createDirectories(folder);
    List<TrueRep> truth = new ArrayList<>();
    Path film;
    if (args.length > 4) {
      film = Path.of(args[3]);
      for (String line : Files.readAllLines(Path.of(args[4]))) {
        // a line of numbers, or a rep of a painted session's own text
        String numbers = line.startsWith("rep") ? line.substring(3) : line;
        if (numbers.matches("\\s*[0-9].*")) {
          String[] part = numbers.strip().split("\\s+", 3);
          truth.add(new TrueRep(0, Double.parseDouble(part[0]), Double.parseDouble(part[1])));
        }
      }
    } else {
      double minutes = Double.parseDouble(args[1]);
      long seed = Long.parseLong(args[2]);
      film = folder.resolve(String.format(Locale.ROOT, "session-%.0f-%d.mp4", minutes, seed));
      PaintedSession session = new PaintedSession(1280, 720, 3, 1, 3, seed);
      double each = 2 * session.seconds();
      int times = (int) Math.max(1, Math.round(60 * minutes / each));
      if (!Files.exists(film)) {
        Path block = folder.resolve("block-" + seed + ".mp4");
        session.write(block, FPS, each);
        Repeated.write(block, film, times, each);
      }
      for (int k = 0; k < times; k++) {
        for (TrueRep r : session.reps()) {
          truth.add(new TrueRep(r.who(), r.from_s() + k * each, r.to_s() + k * each));
        }
      }
    }
    report(film, folder, truth);
  }

  private static void report(Path film, Path folder, List<TrueRep> truth) throws Exception {
    List<FilmRep> found = new ArrayList<>();
    double[] seconds = new double[1];
    long t0 = System.nanoTime();
    Duration before = ChildTime.soFar();
    int looks =
        CutProcess.cut(
            new CutOrder(film, folder.resolve("weights"), 0, folder.resolve("stills")),
            new Cutter.Listener() {
              @Override
              public void reached(double time_s, double of_s) {
                seconds[0] = of_s;
              }

              @Override
              public void rep(FilmRep rep) {
                found.add(rep);
              }
            });
    double took = (System.nanoTime() - t0) / 1e9;
    int right = 0;
    List<FilmRep> invented = new ArrayList<>(found);
    for (TrueRep r : truth) {
      FilmRep hit = found.stream().filter(f -> f.run_s() < r.to_s() && f.to_s() > r.from_s()).findFirst().orElse(null);
      right += hit == null ? 0 : 1;
      invented.remove(hit);
      if (hit == null) {
        System.out.printf(Locale.ROOT, "missed: %.1f to %.1f s%n", r.from_s(), r.to_s());
      }
    }
    invented.forEach(f -> System.out.println("invented: " + f.said()));
    System.out.printf(
        Locale.ROOT, "%s: %.0f s of film, %d of %d reps found, %d invented; network looks %d; took %.0f s, %.2f of the running time; processor %s%n",
        film.getFileName(), seconds[0], right, truth.size(), invented.size(), looks, took, took / seconds[0], ChildTime.soFar().minus(before));
  }
}
