package boundwright.clip.warp;

import boundwright.clip.FoundClip;
import boundwright.clip.contact.Contact;
import boundwright.clip.reading.CameraError;
import boundwright.clip.reading.ClipReader;
import boundwright.clip.reading.ClipReading;
import boundwright.clip.reading.Setup;
import boundwright.clip.scale.GroundMarks;
import boundwright.clip.scan.FoundBytes;
import boundwright.clip.scan.ScanOrder;
import boundwright.clip.scan.Scanner;
import boundwright.clip.track.Spot;
import boundwright.clip.truth.TrueContact;
import boundwright.quantity.Estimate;
import boundwright.quantity.RefusedException;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import org.jspecify.annotations.Nullable;

/**
 * Lengths of flights from a panning camera from end to end: a painted rep is filmed by a camera that follows, zooms and shakes; network,
 * following and reading do the rest. Marks are clicked a pixel off, in the middle frame or in two far ones.
 *
 * <p>Run: {@code bench/clip lengths [CLIPS [SEED]]}. Own output.
 */
public final class PannedLengths {
  private static final List<String> FILM = List.of("fps=60", "distance=13", "wide=3000", "size=1280x720", "zoom=1.15", "shake=1");
  private static final double NEAR_S = 0.1;

  private final List<double[]> maps = new ArrayList<>();
  private final List<double[]> marks = new ArrayList<>();

  private PannedLengths(Path camera) throws IOException {
    for (String line : Files.readAllLines(camera)) {
      String[] w = line.split(" ", -1);
      if (w[0].equals("mark")) {
        marks.add(new double[] {Double.parseDouble(w[1]), Double.parseDouble(w[2]), Double.parseDouble(w[3])});
      } else if (!line.startsWith("#")) {
        double[] m = new double[9];
        for (int i = 0; i < 9; i++) {
          m[i] = Double.parseDouble(w[6 + i]);
        }
        maps.add(m);
      }
    }
  }

  public static void main(String[] args) throws IOException {
    int clips = args.length > 0 ? Integer.parseInt(args[0]) : 4;
    long seed = args.length > 1 ? Long.parseLong(args[1]) : 1;
    Path folder = Path.of(System.getProperty("folder", "target/bench-clip")).resolve("lengths");
    Path weights = Path.of(System.getProperty("weights", "target/bench-clip/weights"));
    Files.createDirectories(folder);
    List<double[]> one = new ArrayList<>();
    List<double[]> two = new ArrayList<>();
    for (long s = seed; s < seed + clips; s++) {
      Path film = folder.resolve("panned-" + s + ".mp4");
      Path found = folder.resolve("panned-" + s + ".found");
      if (!Files.exists(found)) {
        WarpFilm.painted(Long.toString(s), film, FILM);
        Files.write(found, FoundBytes.of(Scanner.scan(ScanOrder.of(film, weights), p -> {})));
        Files.delete(film);
      }
      FoundClip clip = FoundBytes.read(Files.readAllBytes(found));
      PannedLengths maps = new PannedLengths(folder.resolve("panned-" + s + ".camera"));
      try (PaintedSource truth = PaintedSource.of(s, FILM.stream().filter(PaintedSource::knows).toList())) {
        maps.read(clip, truth, false, s, one);
        maps.read(clip, truth, true, s, two);
      }
    }
    System.out.println("marks in one frame: " + row(one));
    System.out.println("marks in two far frames: " + row(two));
  }

  private static String row(List<double[]> errors) {
    double rms = Math.sqrt(errors.stream().mapToDouble(e -> e[0] * e[0]).average().orElse(Double.NaN));
    double mean = errors.stream().mapToDouble(e -> e[0]).average().orElse(Double.NaN);
    double worst = errors.stream().mapToDouble(e -> Math.abs(e[0])).max().orElse(Double.NaN);
    long in = errors.stream().filter(e -> Math.abs(e[0]) <= e[1]).count();
    return String.format(
        Locale.ROOT, "%d lengths, RMS %.1f cm (mean %+.1f, worst %.1f), in the 90 %% range %d", errors.size(), 100 * rms, 100 * mean, 100 * worst, in);
  }

  private void read(FoundClip clip, PaintedSource truth, boolean far, long seed, List<double[]> into) {
    int first = clip.firstFrame();
    int n = Math.min(clip.track().frames(), maps.size() - first);
    Random random = new Random(seed);
    List<GroundMarks.Mark> clicked = new ArrayList<>();
    if (far) {
      clicked.addAll(clicked(first + n / 8, 2, random));
      clicked.addAll(clicked(first + n - 1 - n / 8, 2, random));
    } else {
      clicked.addAll(clicked(first + n / 2, 5, random));
    }
    try {
      ClipReading r = ClipReader.read(clip, Setup.ground(clicked), List.of(), truth.sequence());
      System.out.println(
          "seed " + seed + (far ? ", two frames: " : ", one frame: ") + clip.camera() + ", " + r.contacts().size() + " contacts of "
              + truth.contacts().size() + ", remarks " + r.remarks());
      CameraError carries = CameraError.of(clip, Setup.ground(clicked));
      for (int i = 0; i + 1 < r.contacts().size(); i++) {
        Estimate length = r.flights().get(i).length_m();
        double known = place(r.contacts().get(i + 1).contact(), truth) - place(r.contacts().get(i).contact(), truth);
        if (length != null && !Double.isNaN(known)) {
          double from = carried(clip, carries, r.contacts().get(i).contact(), truth);
          double camera = carried(clip, carries, r.contacts().get(i + 1).contact(), truth) - from - known;
          double error = length.p50() - known;
          into.add(new double[] {error, length.halfWidth()});
          System.out.printf(
              Locale.ROOT, "  %.3f m read %+.3f +- %.3f, of it by camera and marks %+.3f, by the body %+.3f%n", known, error, length.halfWidth(), camera, error - camera);
        }
      }
    } catch (RefusedException e) {
      System.out.println("seed " + seed + " refused: " + e.getMessage());
    }
  }

  /** Where a contact truly stood [m]; NaN where there was none. */
  private static double place(Contact c, PaintedSource truth) {
    if (c.bothFeet()) {
      return truth.landing()[0];
    }
    double middle = c.middle_s();
    for (TrueContact t : truth.contacts()) {
      if (t.foot() == c.foot() && middle > t.down() - truth.begins_s() - NEAR_S && middle < t.up() - truth.begins_s() + NEAR_S) {
        return t.toeX();
      }
    }
    return Double.NaN;
  }

  /** Where the true place of a contact lies when only the camera's following and the marks carry it [m]. */
  private double carried(FoundClip clip, CameraError camera, Contact c, PaintedSource truth) {
    double place = place(c, truth);
    int i = clip.track().nearest(c.middle_s());
    Spot still = truth.ground(place);
    Spot at = mapped(maps.get(clip.firstFrame() + i), still.x(), still.y());
    return camera.along(i, at);
  }

  /** Some of the marks that a frame shows, as far apart as it goes. */
  private List<GroundMarks.Mark> clicked(int frame, int most, Random random) {
    List<GroundMarks.Mark> seen = new ArrayList<>();
    for (double[] m : marks) {
      Spot at = inFrame(maps.get(frame), m[1], m[2]);
      if (at != null) {
        seen.add(new GroundMarks.Mark(new Spot(at.x() + random.nextGaussian(), at.y() + random.nextGaussian()), m[0], frame));
      }
    }
    seen.sort(Comparator.comparingDouble(GroundMarks.Mark::at_m));
    List<GroundMarks.Mark> out = new ArrayList<>();
    for (int k = 0; k < Math.min(most, seen.size()); k++) {
      out.add(seen.get((int) Math.round(k * (seen.size() - 1.0) / Math.max(1, Math.min(most, seen.size()) - 1))));
    }
    return out;
  }

  /** A point of the still picture in a frame. */
  private static Spot mapped(double[] m, double x, double y) {
    double a = m[4] * m[8] - m[5] * m[7];
    double b = m[2] * m[7] - m[1] * m[8];
    double c = m[1] * m[5] - m[2] * m[4];
    double d = m[5] * m[6] - m[3] * m[8];
    double e = m[0] * m[8] - m[2] * m[6];
    double f = m[2] * m[3] - m[0] * m[5];
    double g = m[3] * m[7] - m[4] * m[6];
    double h = m[1] * m[6] - m[0] * m[7];
    double i = m[0] * m[4] - m[1] * m[3];
    double w = g * x + h * y + i;
    return new Spot((a * x + b * y + c) / w, (d * x + e * y + f) / w);
  }

  /** The same; null where it is not in sight. */
  private static @Nullable Spot inFrame(double[] m, double x, double y) {
    Spot at = mapped(m, x, y);
    return at.x() > 40 && at.x() < 1240 && at.y() > 0 && at.y() < 715 ? at : null;
  }
}
