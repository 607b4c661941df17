package boundwright.clip;

import boundwright.clip.film.Film;
import boundwright.clip.film.Frame;
import boundwright.clip.pose.PersonDetector;
import boundwright.clip.pose.PersonFinder;
import boundwright.clip.pose.PoseNet;
import boundwright.clip.pose.Region;
import boundwright.clip.pose.Weights;
import boundwright.clip.reading.ClipReader;
import boundwright.clip.reading.Setup;
import boundwright.clip.scan.ScanOrder;
import boundwright.clip.scan.ScanProcess;
import boundwright.clip.truth.Filmed;
import boundwright.clip.truth.Noise;
import boundwright.clip.truth.TrueClip;
import boundwright.footfall.Sequence;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;

/**
 * What the whole reading of a film costs against its two unavoidable parts, in one run: decoding every frame, and one pass
 * of the network for each frame that was looked at. Arguments: folder for film and weights, rounds. Prints seconds and the
 * ratio, with and without frames left out in flight, with and without pictures for the page.
 */
final class ScanCost {
  /** Makes a film of 4 s. */
  private static final Sequence DRILL = Sequence.parse("RRLL RRLL");
  private static final String FILM = "cost-4s-240.mp4";

  private ScanCost() {}

  public static void main(String[] args) throws Exception {
    Path folder = Path.of(args[0]);
    Files.createDirectories(folder);
    Path film = folder.resolve(FILM);
    TrueClip clip = TrueClip.of(DRILL, 0, 5, 240, Noise.NONE, false, 2000);
    if (!Files.exists(film)) {
      Filmed.write(clip, film, 0.002);
    }
    Path weights = folder.resolve("weights");
    System.out.println("| round | frames | decode s | pass ms | looked at | whole s | ratio | every frame: whole s | ratio | with pictures: whole s | ratio |");
    System.out.println("| --- | --- | --- | --- | --- | --- | --- | --- | --- | --- | --- |");
    for (int round = 1; round <= Integer.parseInt(args[1]); round++) {
      Parts parts = parts(film, weights);
      Whole skip = whole(ScanOrder.of(film, weights));
      Whole every = whole(new ScanOrder(film, weights, Weights.Size.FULL, null, 0, 1, false, null));
      Whole stills = whole(ScanOrder.of(film, weights).withStills(folder.resolve("stills")));
      System.out.printf(
          Locale.ROOT, "| %d | %d | %.2f | %.2f | %d / %d | %.2f | %.2f | %.2f | %.2f | %.2f | %.2f |%n", round, parts.frames, parts.decode_s,
          1000 * parts.pass_s, skip.looked, every.looked, skip.took_s, skip.took_s / parts.sum(skip.looked), every.took_s,
          every.took_s / parts.sum(every.looked), stills.took_s, stills.took_s / parts.sum(stills.looked));
    }
  }

  private record Parts(int frames, double decode_s, double pass_s) {
    double sum(int looked) {
      return decode_s + looked * pass_s;
    }
  }

  private record Whole(int looked, double took_s) {}

  private static Parts parts(Path film, Path folder) throws Exception {
    Weights weights = new Weights(folder);
    long t0 = System.nanoTime();
    int frames = 0;
    try (Film f = Film.open(film)) {
      while (f.next() != null) {
        frames++;
      }
    }
    double decode = (System.nanoTime() - t0) / 1e9;
    long spent = 0;
    int passes = 0;
    try (Film f = Film.open(film);
        PoseNet net = new PoseNet(weights.landmarks(Weights.Size.FULL), 1);
        PersonDetector detector = new PersonDetector(weights.detector(), 1)) {
      Region region = null;
      for (Frame frame = f.next(); frame != null && passes < 200; frame = f.next()) {
        if (region == null) {
          if (frame.index() < 120) {
            continue;
          }
          region = new PersonFinder(detector, net).find(frame.picture()).region();
        }
        long t = System.nanoTime();
        region = net.look(frame.picture(), region).next();
        if (passes++ >= 50) {
          spent += System.nanoTime() - t;
        }
      }
    }
    return new Parts(frames, decode, spent / 1e9 / (passes - 50));
  }

  private static Whole whole(ScanOrder order) throws Exception {
    long t0 = System.nanoTime();
    FoundClip found = ScanProcess.scan(order, p -> {});
    ClipReader.read(found, Setup.none(), List.of(), DRILL);
    return new Whole(found.networkFrames(), (System.nanoTime() - t0) / 1e9);
  }
}
