package boundwright.clip.warp;

import boundwright.clip.truth.Mp4Writer;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;

/** Looks at a still film through a turning camera, frame by frame, and writes down each frame's map. */
final class Warper {
  private static final int TICKS = 90_000;

  private final StillSource source;
  private final WarpOptions o;
  private final CameraMove move;
  private final double slowed;
  private final byte[] out;

  Warper(StillSource source, WarpOptions options, double slowed) {
    this.source = source;
    this.o = options;
    this.slowed = slowed;
    move = new CameraMove(source, options);
    out = new byte[3 * options.width() * options.height()];
  }

  /** Writes film and maps; {@code length_s} is how long the film is [s]. */
  int write(Path film, Path maps, double length_s) throws IOException {
    int frames = 0;
    try (Mp4Writer to = Mp4Writer.open(film, o.width(), o.height(), TICKS, 0);
        PrintWriter text = new PrintWriter(Files.newBufferedWriter(maps))) {
      text.printf(Locale.ROOT, "# still picture %d x %d, focal length %.1f px; made picture %d x %d%n", source.width(), source.height(), source.focal(), o.width(), o.height());
      text.println("# frame, time [s], pan, tilt, roll [degrees], focal length [px], then the map of the middle row's moment from a point of this");
      text.println("# frame to one of the still picture (9 numbers, row by row), then pan and tilt [degrees] of the first and of the last row's moment");
      double first = Double.NaN;
      long before = Long.MIN_VALUE;
      for (StillSource.Still s = source.next(); s != null; s = source.next()) {
        first = Double.isNaN(first) ? s.time_s() : first;
        double share0 = length_s > 0 ? (s.time_s() - first) / length_s : 0;
        look(s, share0, length_s);
        long pts = Math.max(before + 1, Math.round((s.time_s() - first) * TICKS));
        to.write(out, pts);
        before = pts;
        note(text, frames, s.time_s(), share0, length_s, first);
        frames++;
      }
    }
    return frames;
  }

  /** Whether a point of the still picture is a twentieth of the width inside the made one at a time. */
  boolean sees(double time_s, double length_s, double x, double y) {
    double[] m = move.map(lookAt(time_s, time_s / length_s, length_s, 0.5));
    double det = m[0] * (m[4] * m[8] - m[5] * m[7]) - m[1] * (m[3] * m[8] - m[5] * m[6]) + m[2] * (m[3] * m[7] - m[4] * m[6]);
    double[] i = {
      m[4] * m[8] - m[5] * m[7], m[2] * m[7] - m[1] * m[8], m[1] * m[5] - m[2] * m[4],
      m[5] * m[6] - m[3] * m[8], m[0] * m[8] - m[2] * m[6], m[2] * m[3] - m[0] * m[5],
      m[3] * m[7] - m[4] * m[6], m[1] * m[6] - m[0] * m[7], m[0] * m[4] - m[1] * m[3]
    };
    double z = (i[6] * x + i[7] * y + i[8]) / det;
    double u = (i[0] * x + i[1] * y + i[2]) / det / z;
    double v = (i[3] * x + i[4] * y + i[5]) / det / z;
    double edge = o.width() / 20.0;
    return u > edge && u < o.width() - edge && v > 0 && v < o.height();
  }

  private CameraMove.Look lookAt(double time_s, double share, double length_s, double rowShare) {
    double later = o.shutter_s() * slowed * (rowShare - 0.5);
    return move.at(time_s + later, share + (length_s > 0 ? later / length_s : 0));
  }

  private void look(StillSource.Still s, double share, double length_s) {
    int w = o.width();
    int h = o.height();
    double[] m = move.map(lookAt(s.time_s(), share, length_s, 0.5));
    for (int v = 0; v < h; v++) {
      if (o.shutter_s() > 0 && v % 4 == 0) {
        m = move.map(lookAt(s.time_s(), share, length_s, (v + 2.0) / h));
      }
      row(s.rgb(), m, v, w);
    }
  }

  private void row(byte[] from, double[] m, int v, int w) {
    int sw = source.width();
    int sh = source.height();
    double x0 = m[1] * v + m[2];
    double y0 = m[4] * v + m[5];
    double z0 = m[7] * v + m[8];
    int at = 3 * v * w;
    for (int u = 0; u < w; u++) {
      double z = m[6] * u + z0;
      double x = Math.max(0, Math.min(sw - 1.001, (m[0] * u + x0) / z));
      double y = Math.max(0, Math.min(sh - 1.001, (m[3] * u + y0) / z));
      int ix = (int) x;
      int iy = (int) y;
      int fx = (int) (256 * (x - ix));
      int fy = (int) (256 * (y - iy));
      int a = 3 * (iy * sw + ix);
      int b = a + 3 * sw;
      for (int c = 0; c < 3; c++) {
        int top = (from[a + c] & 0xff) * (256 - fx) + (from[a + 3 + c] & 0xff) * fx;
        int low = (from[b + c] & 0xff) * (256 - fx) + (from[b + 3 + c] & 0xff) * fx;
        out[at++] = (byte) ((top * (256 - fy) + low * fy + 32768) >> 16);
      }
    }
  }

  private void note(PrintWriter text, int frame, double t, double share, double length_s, double first) {
    CameraMove.Look mid = lookAt(t, share, length_s, 0.5);
    CameraMove.Look top = lookAt(t, share, length_s, 0);
    CameraMove.Look low = lookAt(t, share, length_s, 1);
    text.printf(
        Locale.ROOT, "%d %.6f %.5f %.5f %.5f %.3f", frame, t - first, Math.toDegrees(mid.pan()), Math.toDegrees(mid.tilt()), Math.toDegrees(mid.roll()), mid.focal());
    for (double v : move.map(mid)) {
      text.printf(Locale.ROOT, " %.9g", v);
    }
    text.printf(
        Locale.ROOT, " %.5f %.5f %.5f %.5f%n", Math.toDegrees(top.pan()), Math.toDegrees(top.tilt()), Math.toDegrees(low.pan()), Math.toDegrees(low.tilt()));
  }
}
