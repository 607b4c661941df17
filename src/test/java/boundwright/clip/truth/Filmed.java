package boundwright.clip.truth;

import boundwright.clip.track.BodyPoint;
import boundwright.clip.track.Spot;
import boundwright.clip.track.Track;
import java.awt.image.BufferedImage;
import java.awt.image.DataBufferByte;
import java.nio.file.Path;

/** Films a made-up clip: paints every frame as the camera would see it and codes it as H.264 with the frame's own time. */
public final class Filmed {
  private static final int TICKS = 90_000;

  private Filmed() {}

  /**
   * Writes the film.
   *
   * @param clip whose truth is filmed
   * @param to the file
   * @param shutter_s how long the shutter is open [s]; 0 paints without blur
   */
  public static void write(TrueClip clip, Path to, double shutter_s) {
    Camera camera = clip.camera();
    try (Mp4Writer out = Mp4Writer.open(to, camera.width(), camera.high(), TICKS, 0)) {
      for (double t : clip.truth().times()) {
        out.write(frame(clip, t, shutter_s), Math.round(t * TICKS));
      }
    }
  }

  /** A frame; with an open shutter the mean of three instants. */
  public static BufferedImage frame(TrueClip clip, double t, double shutter_s) {
    BufferedImage sharp = paint(clip, t);
    if (shutter_s == 0) {
      return sharp;
    }
    byte[] mid = data(sharp);
    byte[] before = data(paint(clip, t - shutter_s / 2));
    byte[] after = data(paint(clip, t + shutter_s / 2));
    for (int i = 0; i < mid.length; i++) {
      mid[i] = (byte) (((before[i] & 0xff) + (mid[i] & 0xff) + (after[i] & 0xff) + 1) / 3);
    }
    return sharp;
  }

  private static BufferedImage paint(TrueClip clip, double t) {
    return new Painter(clip.camera()).add(clip.athlete().at(t), 0).image();
  }

  private static byte[] data(BufferedImage image) {
    return ((DataBufferByte) image.getRaster().getDataBuffer()).getData();
  }

  /** The true points at other frame times, as after a film was read. */
  public static Track truthAt(TrueClip clip, double[] times) {
    Track.Builder b = Track.at(times);
    for (int i = 0; i < times.length; i++) {
      Body body = clip.athlete().at(times[i]);
      for (BodyPoint p : BodyPoint.values()) {
        double[] w = body.at(p);
        Spot s = clip.camera().project(w[0], w[1], w[2]);
        if (clip.camera().sees(s)) {
          b.put(p, i, s, 1);
        }
      }
    }
    return b.build();
  }

  /** The clip with points as read from the film in place of the made-up finder's. */
  public static TrueClip read(TrueClip clip, Track found) {
    return new TrueClip(
        clip.athlete(), clip.camera(), truthAt(clip, found.times()), found, clip.marks(), clip.poleFoot(), clip.poleTop(), clip.pole_m());
  }
}
