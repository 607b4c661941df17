package boundwright.clip;

import boundwright.clip.pose.Weights;
import boundwright.clip.scan.ScanOrder;
import boundwright.clip.scan.ScanProcess;
import boundwright.clip.track.BodyPoint;
import boundwright.clip.track.Joint;
import boundwright.clip.track.Sides;
import boundwright.clip.track.Spot;
import boundwright.clip.track.Track;
import boundwright.clip.truth.Filmed;
import boundwright.clip.truth.Noise;
import boundwright.clip.truth.TrueClip;
import boundwright.footfall.Foot;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;

/**
 * From painted pixels through coding, network and computation, stage by stage; prints a table. Own output throughout.
 * Arguments: number of clips, frames per second, folder for films and weights, first seed; a fifth names single errors.
 */
final class PixelAccuracy {
  private static final double SHUTTER_S = 0.002;

  private PixelAccuracy() {}

  public static void main(String[] args) throws Exception {
    int clips = Integer.parseInt(args[0]);
    double fps = Double.parseDouble(args[1]);
    Path folder = Path.of(args[2]);
    long seed = args.length > 3 ? Long.parseLong(args[3]) : 2000;
    Files.createDirectories(folder);
    ClipAccuracy contacts = new ClipAccuracy();
    List<List<Double>> raw = perJoint();
    List<List<Double>> sided = perJoint();
    MergedLegs merged = new MergedLegs();
    int seen = 0;
    int frames = 0;
    for (int k = 0; k < clips; k++) {
      TrueClip clip = TrueClip.numbered(k, fps, Noise.NONE, false, seed);
      Path film = folder.resolve("made-up-" + (int) fps + "-" + (seed + k) + ".mp4");
      if (!Files.exists(film)) {
        Filmed.write(clip, film, SHUTTER_S);
      }
      long t0 = System.nanoTime();
      FoundClip found = ScanProcess.scan(ScanOrder.of(film, folder.resolve("weights")), p -> {});
      double took = (System.nanoTime() - t0) / 1e9;
      TrueClip read = Filmed.read(clip, found.track());
      int with = 0;
      for (int i = 0; i < found.track().frames(); i++) {
        with += found.track().seen(BodyPoint.LEFT_HIP, i) ? 1 : 0;
      }
      seen += with;
      frames += clip.truth().frames();
      merged.count(read.truth(), found.track(), clip.camera().focal() / clip.camera().distance());
      errors(read.truth(), found.track(), raw);
      errors(read.truth(), Sides.resolve(found.track()).track(), sided);
      System.out.printf(
          Locale.ROOT, "%s %s: %d frames, network %d, with points %d, %.1f s, %s%n", film.getFileName(), TrueClip.sequence(k).text(), clip.truth().frames(),
          found.networkFrames(), with, took, found.remarks());
      try {
        contacts.one(read, film.getFileName().toString(), args.length > 4 ? System.out::println : s -> {});
      } catch (RuntimeException e) {
        System.out.println("  not read: " + e.getMessage());
      }
    }
    System.out.printf(Locale.ROOT, "%nframes with points: %d of %d; size of the networks: %s%n", seen, frames, Weights.Size.FULL);
    System.out.println(merged.said());
    System.out.println("| joint | median px | 90 % px | after sides: median | 90 % |\n| --- | --- | --- | --- | --- |");
    for (Joint j : Joint.values()) {
      System.out.printf(
          Locale.ROOT, "| %s | %.1f | %.1f | %.1f | %.1f |%n", j, at(raw, j, 0.5), at(raw, j, 0.9), at(sided, j, 0.5), at(sided, j, 0.9));
    }
    System.out.println("\n" + ClipAccuracy.HEAD);
    System.out.println(contacts.row("painted, " + (int) fps + " fps"));
  }

  private static List<List<Double>> perJoint() {
    List<List<Double>> out = new ArrayList<>();
    Arrays.stream(Joint.values()).forEach(j -> out.add(new ArrayList<>()));
    return out;
  }

  private static double at(List<List<Double>> all, Joint j, double share) {
    double[] v = all.get(Arrays.asList(Joint.values()).indexOf(j)).stream().mapToDouble(d -> d).sorted().toArray();
    return v.length == 0 ? Double.NaN : v[(int) (share * (v.length - 1))];
  }

  private static void errors(Track truth, Track found, List<List<Double>> into) {
    int k = 0;
    for (Joint j : Joint.values()) {
      for (Foot f : Foot.values()) {
        for (int i = 0; i < found.frames(); i++) {
          Spot a = truth.spot(BodyPoint.of(j, f), i);
          Spot b = found.spot(BodyPoint.of(j, f), i);
          if (a.known() && b.known()) {
            into.get(k).add(a.to(b));
          }
        }
      }
      k++;
    }
  }
}
