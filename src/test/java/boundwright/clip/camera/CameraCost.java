package boundwright.clip.camera;

import boundwright.clip.Box;
import boundwright.clip.FoundClip;
import boundwright.clip.film.Film;
import boundwright.clip.film.Frame;
import boundwright.clip.film.Picture;
import boundwright.clip.pose.PoseNet;
import boundwright.clip.pose.Region;
import boundwright.clip.pose.Weights;
import boundwright.clip.reading.ClipReader;
import boundwright.clip.reading.Setup;
import boundwright.clip.scan.ScanOrder;
import boundwright.clip.scan.ScanProcess;
import boundwright.clip.track.BodyPoint;
import boundwright.clip.track.Spot;
import boundwright.clip.track.Track;
import boundwright.clip.truth.ChildTime;
import java.lang.management.ManagementFactory;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;

/**
 * What reading one film costs, in ms a frame looked at: decoding, one pass of the network, following the camera as it stood and
 * as if it had turned (a window of the film's own picture that wanders by three pixels a frame), and the search for contacts.
 * Processor time of this process, so that other programs on the machine count less; then the whole reading, its process from start to end
 * and the search, over decoding and one pass for each frame looked at. Arguments: the film; the folder of the weights, or {@code target/bench-clip/weights}.
 */
final class CameraCost {
  private CameraCost() {}

  private static double cpu() {
    return ((com.sun.management.OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean()).getProcessCpuTime() / 1e6;
  }

  public static void main(String[] args) throws Exception {
    Path film = Path.of(args[0]);
    Path folder = Path.of(args.length > 1 ? args[1] : "target/bench-clip/weights");
    double before = ChildTime.soFar().toMillis();
    FoundClip clip = ScanProcess.scan(ScanOrder.of(film, folder), p -> {});
    Track track = clip.track();
    int n = clip.networkFrames();
    double t0 = cpu();
    int frames = 0;
    try (Film f = Film.open(film)) {
      while (f.next() != null) {
        frames++;
      }
    }
    double decode = (cpu() - t0) / frames;
    double pass;
    try (Film f = Film.open(film);
        PoseNet net = new PoseNet(new Weights(folder).landmarks(Weights.Size.FULL), 1)) {
      Frame frame = f.next();
      if (frame == null) {
        return;
      }
      Region region = new Region(frame.picture().width() / 2.0, frame.picture().height() / 2.0, frame.picture().height(), 0);
      for (int i = 0; i < 20; i++) {
        net.look(frame.picture(), region);
      }
      t0 = cpu();
      for (int i = 0; i < 60; i++) {
        net.look(frame.picture(), region);
      }
      pass = (cpu() - t0) / 60;
    }
    double stood = 0;
    double turned = 0;
    CameraPath still = CameraPath.stood();
    CameraPath wandering = CameraPath.stood();
    for (int round = 0; round < 2; round++) {
      stood = 0;
      turned = 0;
      CameraFollower a = new CameraFollower();
      CameraFollower b = new CameraFollower();
      double taken = Double.NEGATIVE_INFINITY;
      try (Film f = Film.open(film)) {
        for (Frame frame = f.next(); frame != null; frame = f.next()) {
          int i = frame.index() - clip.firstFrame();
          if (i < 0 || i >= track.frames() || !track.seen(BodyPoint.LEFT_HIP, i) || !CameraFollower.wants(frame.time_s(), taken)) {
            continue;
          }
          taken = frame.time_s();
          Box box = box(track, i);
          t0 = cpu();
          a.take(Gray.of(frame.picture()), frame.time_s(), box);
          stood += cpu() - t0;
          int by = Math.abs(3 * i % 240 - 120);
          Picture window = window(frame.picture(), by);
          t0 = cpu();
          b.take(Gray.of(window), frame.time_s(), new Box(box.x() - by, box.y(), box.width(), box.height()));
          turned += cpu() - t0;
        }
      }
      t0 = cpu();
      still = a.path(clip.film().width(), clip.film().height(), track.times());
      stood += cpu() - t0;
      t0 = cpu();
      wandering = b.path(clip.film().width() - 120, clip.film().height(), track.times());
      turned += cpu() - t0;
    }
    t0 = cpu();
    int contacts = ClipReader.read(clip, Setup.none(), List.of(), null).contacts().size();
    double search = (cpu() - t0) / n;
    // read late: by now the reading's process has surely ended
    double scanned = ChildTime.soFar().toMillis() - before;
    System.out.println("| film | frames looked at | decode | network pass | following: stood | following: turned | search | (decode + pass + turned) / (decode + pass) | whole, its own camera / (decode of all + pass of those looked at) |");
    System.out.println("| --- | --- | --- | --- | --- | --- | --- | --- | --- |");
    System.out.printf(
        Locale.ROOT, "| %d x %d | %d of %d | %.1f | %.1f | %.1f (%s) | %.1f (%s) | %.1f (%d contacts) | %.2f | %.2f (%s) |%n", clip.film().width(),
        clip.film().height(), n, frames, decode, pass, stood / n, still.kind(), turned / n, wandering.kind(), search, contacts,
        (decode + pass + turned / n) / (decode + pass), (scanned + search * n) / (decode * frames + pass * n), clip.camera().kind());
  }

  private static Box box(Track track, int i) {
    double left = 1e9;
    double top = 1e9;
    double right = -1e9;
    double low = -1e9;
    for (BodyPoint p : BodyPoint.values()) {
      if (track.seen(p, i)) {
        Spot s = track.spot(p, i);
        left = Math.min(left, s.x());
        right = Math.max(right, s.x());
        top = Math.min(top, s.y());
        low = Math.max(low, s.y());
      }
    }
    return new Box(left, top, right - left, low - top);
  }

  private static Picture window(Picture p, int by) {
    int w = p.width() - 120;
    byte[] rgb = new byte[3 * w * p.height()];
    for (int y = 0; y < p.height(); y++) {
      System.arraycopy(p.rgb(), 3 * (y * p.width() + by), rgb, 3 * y * w, 3 * w);
    }
    return new Picture(w, p.height(), rgb);
  }
}
