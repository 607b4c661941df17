package boundwright.clip.real;

import boundwright.clip.FoundClip;
import boundwright.clip.contact.Contact;
import boundwright.clip.film.Film;
import boundwright.clip.film.FilmTimes;
import boundwright.clip.reading.ClipReader;
import boundwright.clip.reading.ClipReading;
import boundwright.clip.reading.ReadContact;
import boundwright.clip.reading.Setup;
import boundwright.clip.scan.ScanOrder;
import boundwright.clip.scan.Scanner;
import boundwright.quantity.Estimate;
import boundwright.quantity.RefusedException;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * The whole reading on every film of a folder that has a truth file beside it, film by film and in all.
 *
 * <p>Run: {@code bench/clip real FOLDER [NAME-PART [WEIGHTS]]}; the second argument takes only films whose name holds it.
 */
public final class RealFilms {
  private static final double Z95 = 1.959964;
  private static final double TOE_OFF_FRAMES = 3;

  private RealFilms() {}

  public static void main(String[] args) throws IOException {
    Path folder = Path.of(args[0]);
    String part = args.length > 1 ? args[1] : "";
    Path weights = args.length > 2 ? Path.of(args[2]) : Path.of("target", "bench-clip", "weights");
    System.out.println(HEAD);
    List<Matching.Result> all = new ArrayList<>();
    List<String> said = new ArrayList<>();
    for (Path film : films(folder, part)) {
      TruthFile truth = TruthFile.read(TruthFile.beside(film));
      long t0 = System.nanoTime();
      Matching.Result r = read(film, truth, weights, s -> said.add("- " + film.getFileName() + ": " + s));
      all.add(r);
      System.out.println(row(film.getFileName().toString(), r, (System.nanoTime() - t0) / 1e9));
    }
    System.out.println(row("in all, " + all.size() + " films", sum(all), Double.NaN));
    said.forEach(System.out::println);
  }

  static List<Path> films(Path folder, String part) throws IOException {
    try (Stream<Path> in = Files.list(folder)) {
      return in.filter(f -> f.getFileName().toString().matches(".*\\.(mp4|avi|mov|mkv|webm|MP4|MOV)"))
          .filter(f -> f.getFileName().toString().contains(part))
          .filter(f -> Files.isRegularFile(TruthFile.beside(f)))
          .sorted()
          .toList();
    }
  }

  /** Reads a film as the program does and compares. */
  public static Matching.Result read(Path film, TruthFile truth, Path weights, java.util.function.Consumer<String> log) {
    FilmTimes times = Film.times(film);
    double[] t = new double[times.pts().length];
    for (int i = 0; i < t.length; i++) {
      t[i] = times.seconds(i);
    }
    double frame_s = (t[t.length - 1] - t[0]) / (t.length - 1) / truth.slowed();
    List<Matching.Found> found = new ArrayList<>();
    try {
      FoundClip clip = Scanner.scan(ScanOrder.of(film, weights), p -> {});
      ClipReading reading = ClipReader.read(clip, Setup.none().slowedBy(truth.slowed()), List.of(), truth.asked());
      for (ReadContact r : reading.contacts()) {
        Contact c = r.contact();
        found.add(
            new Matching.Found(
                c.foot(), frame(t, c.touchdown_s(), truth.slowed()), frame(t, c.toeOff_s(), truth.slowed()), c.bothFeet()));
      }
      reading.remarks().stream().filter(s -> !s.startsWith("No marks")).forEach(s -> log.accept("says: " + s));
    } catch (RefusedException e) {
      log.accept("refused: " + e.getMessage());
    }
    Matching.Result out = Matching.of(truth, found, frame_s);
    out.said().forEach(log);
    return out;
  }

  /** The frame, with its fraction, at an athlete's time. */
  private static double frame(double[] t, @Nullable Estimate at, double slowed) {
    if (at == null) {
      return Double.NaN;
    }
    double film = at.p50() * slowed;
    int i = 0;
    while (i + 2 < t.length && t[i + 1] <= film) {
      i++;
    }
    return i + (film - t[i]) / (t[i + 1] - t[i]);
  }

  public static Matching.Result sum(List<Matching.Result> all) {
    List<Double> down = new ArrayList<>();
    List<Double> up = new ArrayList<>();
    int[] n = new int[6];
    for (Matching.Result r : all) {
      down.addAll(r.touchdown());
      up.addAll(r.toeOff());
      int[] v = {r.known(), r.right(), r.off(), r.wrongFoot(), r.missed(), r.extra()};
      for (int i = 0; i < n.length; i++) {
        n[i] += v[i];
      }
    }
    return new Matching.Result(n[0], n[1], n[2], n[3], n[4], n[5], Double.NaN, down, up, List.of());
  }

  public static final String HEAD =
      "| film | touchdowns known | right | off / wrong foot / missed / extra | share right, 95 % interval | touchdown frames off: RMS (mean), worst, within 2.5 | toe-off frames off: RMS (mean), worst, within 3 | s |\n"
          + "| --- | --- | --- | --- | --- | --- | --- | --- |";

  public static String row(String name, Matching.Result r, double took_s) {
    return String.format(
        Locale.ROOT, "| %s | %d | %d | %d / %d / %d / %d | %s | %s | %s | %s |", name, r.known(), r.right(), r.off(), r.wrongFoot(), r.missed(),
        r.extra(), r.known() == 0 ? "-" : wilson(r.right(), r.known()), errors(r.touchdown(), Matching.RIGHT), errors(r.toeOff(), TOE_OFF_FRAMES),
        Double.isNaN(took_s) ? "" : String.format(Locale.ROOT, "%.1f", took_s));
  }

  private static String errors(List<Double> e, double limit) {
    if (e.isEmpty()) {
      return "-";
    }
    double rms = Math.sqrt(e.stream().mapToDouble(d -> d * d).average().orElse(0));
    double mean = e.stream().mapToDouble(d -> d).average().orElse(0);
    double worst = e.stream().mapToDouble(Math::abs).max().orElse(0);
    long within = e.stream().filter(d -> Math.abs(d) <= limit).count();
    return String.format(Locale.ROOT, "%.1f (%+.1f), %.1f, %d of %d", rms, mean, worst, within, e.size());
  }

  /** Wilson's interval of a share (1927; common practice). */
  static String wilson(int hits, int of) {
    double[] i = wilsonInterval(hits, of);
    return String.format(Locale.ROOT, "%.0f %% (%.0f to %.0f)", 100.0 * hits / of, 100 * i[0], 100 * i[1]);
  }

  static double[] wilsonInterval(int hits, int of) {
    double p = (double) hits / of;
    double z2 = Z95 * Z95;
    double mid = (p + z2 / (2 * of)) / (1 + z2 / of);
    double half = Z95 / (1 + z2 / of) * Math.sqrt(p * (1 - p) / of + z2 / (4.0 * of * of));
    return new double[] {Math.max(0, mid - half), Math.min(1, mid + half)};
  }
}
