package boundwright.browser;

import boundwright.clip.FoundClip;
import boundwright.clip.camera.CameraPath;
import boundwright.clip.desk.ClipDesk;
import boundwright.clip.film.FilmFacts;
import boundwright.clip.scan.ScanOrder;
import boundwright.clip.scan.Stills;
import boundwright.clip.track.Track;
import boundwright.clip.truth.Camera;
import boundwright.clip.truth.Filmed;
import boundwright.clip.truth.Noise;
import boundwright.clip.truth.TrueClip;
import boundwright.footfall.Sequence;
import boundwright.quantity.RefusedException;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import javax.imageio.ImageIO;

/**
 * Reads a "film" that is a line of text, {@code RRL 3 120}: sequence, seed and frames a second of a made-up clip, and paints its
 * stills. The word {@code nobody} is refused, as a film is in which nobody is seen; {@code turned} is a camera that turned.
 */
final class MadeUpScan implements ClipDesk.Scan {
  /** Not every frame's picture is painted on a slow machine: this one and its neighbours repeat the last. */
  private final int each;

  MadeUpScan(int each) {
    this.each = each;
  }

  /** The clip that a film's text stands for. */
  static TrueClip clip(String text) {
    String[] parts = text.strip().split("\\s+");
    return TrueClip.of(Sequence.parse(parts[0]), 2, 6.0, Double.parseDouble(parts[2]), Noise.USUAL, false, Long.parseLong(parts[1]));
  }

  @Override
  public FoundClip scan(ScanOrder order, ClipDesk.Progress progress) {
    String text = read(order.film());
    Path stills = order.stills();
    if (stills == null) {
      throw new IllegalStateException("the desk asks for stills");
    }
    TrueClip clip = clip(text.replace("nobody", "RRL 3 60").replace("slow ", "").replace("turned ", ""));
    Camera camera = clip.camera();
    paint(clip, stills, text.contains("nobody") && order.box() == null ? 6 : clip.truth().frames(), progress);
    if (text.contains("nobody") && order.box() == null) {
      throw new RefusedException("Nobody was seen in the film of 240 frames. Draw a box round the athlete, or film from nearer.");
    }
    Track track = clip.found();
    int n = track.frames();
    double seconds = track.time(n - 1) - track.time(0);
    double capture = Double.NaN;
    if (text.startsWith("slow ")) {
      track = track.atTimes(java.util.Arrays.stream(track.times()).map(t -> 4 * t).toArray());
      seconds *= 4;
      capture = 4 * (n - 1) / seconds;
    }
    if (text.startsWith("turned ")) {
      CameraPath path = turned(clip);
      return new FoundClip(
          new FilmFacts("h264", camera.width(), camera.high(), 0, 1, 90_000, n, seconds, capture), 0, track.map((f, s) -> path.back(f, s)), n,
          List.of(), path);
    }
    return new FoundClip(
        new FilmFacts("h264", camera.width(), camera.high(), 0, 1, 90_000, n, seconds, capture), 0, track, n, List.of());
  }

  /** A camera that turns through 20 degrees while the clip's athlete passes. */
  static CameraPath turned(TrueClip clip) {
    int n = clip.found().frames();
    CameraPath.Look[] looks = new CameraPath.Look[n];
    for (int i = 0; i < n; i++) {
      looks[i] = new CameraPath.Look(0, 0.35 * i / n - 0.175, 0, 1000, 0.3 * i / n, 0.05);
    }
    return CameraPath.followed(
        CameraPath.Kind.TURNED, clip.camera().width(), clip.camera().high(), 1000, 0, true, 0, clip.found().times(), looks);
  }

  private void paint(TrueClip clip, Path stills, int frames, ClipDesk.Progress progress) {
    Camera camera = clip.camera();
    try {
      Files.createDirectories(stills);
      Stills.full(stills, new Stills.Full(camera.width(), camera.high()));
      for (int i = 0; i < frames; i++) {
        Path file = Stills.file(stills, i);
        if (i % each == 0) {
          BufferedImage full = Filmed.frame(clip, clip.truth().time(i), 0);
          BufferedImage small = new BufferedImage(Stills.WIDE, Stills.WIDE * camera.high() / camera.width(), BufferedImage.TYPE_3BYTE_BGR);
          Graphics2D g = small.createGraphics();
          g.setRenderingHint(RenderingHints.KEY_INTERPOLATION, RenderingHints.VALUE_INTERPOLATION_BILINEAR);
          g.drawImage(full, 0, 0, small.getWidth(), small.getHeight(), null);
          g.dispose();
          ImageIO.write(small, "jpg", file.toFile());
        } else {
          Files.deleteIfExists(file);
          Files.copy(Stills.file(stills, i - i % each), file);
        }
        progress.at(1000 * i / frames);
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static String read(Path film) {
    try {
      return Files.readString(film, StandardCharsets.UTF_8).strip();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
