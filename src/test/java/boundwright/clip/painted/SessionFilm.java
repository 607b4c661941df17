package boundwright.clip.painted;

import boundwright.clip.truth.Mp4Writer;
import boundwright.clip.truth.PaintedPlace;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.bytedeco.ffmpeg.avcodec.AVPacket;

/**
 * Paints a training session to a film and its truth beside it, frame after frame straight to disk.
 *
 * <p>Run: {@code bench/clip session-film OUT.mp4 MINUTES SEED [NOISE [FPS [HEIGHT]]]}; noise is the sensor's, standard deviation in 255ths (0
 * is quickest: where nobody moves the frame before is used again). Usually 60 frames a second, 720 px high.
 */
public final class SessionFilm {
  private static final int TICKS = 90_000;
  private static final double SHUTTER_S = 0.002;
  /** Frames of nobody that are coded once [frames]. */
  private static final int STILL = 60;

  private SessionFilm() {}

  public static void main(String[] args) throws IOException {
    Path out = Path.of(args[0]);
    double minutes = Double.parseDouble(args[1]);
    long seed = Long.parseLong(args[2]);
    double noise = args.length > 3 ? Double.parseDouble(args[3]) : 0;
    double fps = args.length > 4 ? Double.parseDouble(args[4]) : 60;
    int high = args.length > 5 ? Integer.parseInt(args[5]) : 720;
    PaintedSession session = new PaintedSession(60 * minutes, seed, high * 16 / 9 / 2 * 2, high);
    long t0 = System.nanoTime();
    int frames = write(session, out, seed, noise, fps);
    String name = out.getFileName().toString();
    Files.writeString(out.resolveSibling(name.substring(0, name.lastIndexOf('.')) + ".session"), session.text());
    System.out.printf("%d frames, %d reps, %.0f s%n", frames, session.doings().stream().filter(d -> d.what().equals("rep")).count(), (System.nanoTime() - t0) / 1e9);
  }

  static int write(PaintedSession session, Path out, long seed, double noise, double fps) {
    PaintedPlace place = new PaintedPlace(session.camera(), PaintedPlace.Kind.RICH, seed);
    Random random = new Random(seed);
    byte[] grain = new byte[noise == 0 ? 0 : 1 << 20];
    for (int i = 0; i < grain.length; i++) {
      grain[i] = (byte) Math.round(noise * random.nextGaussian());
    }
    int frames = 0;
    boolean empty = false;
    List<AVPacket> coded = new ArrayList<>();
    byte[] noisy = new byte[3 * session.camera().width() * session.camera().high()];
    try (Mp4Writer to = Mp4Writer.openLong(out, session.camera().width(), session.camera().high(), TICKS, 120)) {
      for (double t = 0; t < session.length_s(); t = frames / fps) {
        List<PaintedPlace.Person> people = session.at(t);
        long pts = Math.round(t * TICKS);
        if (people.isEmpty() && empty && noise == 0 && session.nobodyUntil(t) > t + STILL / fps) {
          to.still(coded, STILL, pts, Math.round(TICKS / fps));
          frames += STILL;
          continue;
        }
        if (people.isEmpty() && empty && noise == 0) {
          to.repeat(pts);
        } else {
          byte[] rgb = place.rgb(people, List.of(t), SHUTTER_S);
          to.write(noise == 0 ? rgb : grainy(rgb, grain, random, noisy), pts);
        }
        empty = people.isEmpty();
        frames++;
      }
    }
    return frames;
  }

  private static byte[] grainy(byte[] rgb, byte[] grain, Random random, byte[] out) {
    int from = random.nextInt(grain.length);
    for (int i = 0; i < rgb.length; i++) {
      int v = (rgb[i] & 0xff) + grain[(from + i) & (grain.length - 1)];
      out[i] = (byte) (v < 0 ? 0 : v > 255 ? 255 : v);
    }
    return out;
  }
}
