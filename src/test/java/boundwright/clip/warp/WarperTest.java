package boundwright.clip.warp;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import boundwright.clip.film.Film;
import boundwright.clip.film.Frame;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The map that is written beside a warped film is the one its pictures were made with: white dots are found where it says. */
class WarperTest {
  private static final int W = 640;
  private static final int H = 400;
  private static final int[][] DOTS = {{250, 190}, {330, 230}, {400, 180}};
  private static final int FRAMES = 6;
  @TempDir Path folder;

  /** A dark picture with three white dots, seen for a fifth of a second by a camera that is led to the right. */
  private static final class Dots implements StillSource {
    private int frame;

    @Override
    public int width() {
      return W;
    }

    @Override
    public int height() {
      return H;
    }

    @Override
    public double focal() {
      return 500;
    }

    @Override
    public double[] follow(double time_s) {
      return new double[] {300 + 200 * time_s, 200};
    }

    @Override
    public @Nullable Still next() {
      if (frame == FRAMES) {
        return null;
      }
      byte[] rgb = new byte[3 * W * H];
      for (int[] d : DOTS) {
        for (int y = d[1] - 3; y <= d[1] + 3; y++) {
          for (int x = d[0] - 3; x <= d[0] + 3; x++) {
            for (int c = 0; c < 3; c++) {
              rgb[3 * (y * W + x) + c] = (byte) 255;
            }
          }
        }
      }
      return new Still(frame++ / 30.0, rgb);
    }

    @Override
    public void close() {}
  }

  @Test
  void dotsAreWhereTheMapPutsThemThroughPanTiltZoomAndShake() throws IOException {
    Path out = folder.resolve("dots.mp4");
    Path maps = folder.resolve("dots.camera");
    WarpOptions o = WarpOptions.of(List.of("size=400x260", "zoom=1.3", "shake=2", "tilt=2", "seed=4"), W);
    assertThat(new Warper(new Dots(), o, 1).write(out, maps, (FRAMES - 1) / 30.0)).isEqualTo(FRAMES);
    List<String> lines = Files.readAllLines(maps).stream().filter(l -> !l.startsWith("#")).toList();
    assertThat(lines).hasSize(FRAMES);
    double moved = 0;
    try (Film film = Film.open(out)) {
      for (Frame f = film.next(); f != null; f = film.next()) {
        String[] words = lines.get(f.index()).split(" ");
        double[] m = new double[9];
        for (int i = 0; i < 9; i++) {
          m[i] = Double.parseDouble(words[6 + i]);
        }
        moved = Math.max(moved, Math.abs(m[2]));
        for (int[] d : DOTS) {
          double[] seen = brightest(f.picture().rgb(), m, d);
          assertThat(Math.hypot(seen[0] - d[0], seen[1] - d[1])).as("frame %d, dot %d %d", f.index(), d[0], d[1]).isCloseTo(0, within(0.7));
        }
      }
    }
    assertThat(moved).as("the camera turned at all [px]").isGreaterThan(20);
  }

  /** Middle of what is bright within 12 px of a dot, carried to the still picture. */
  private static double[] brightest(byte[] rgb, double[] m, int[] dot) {
    double sum = 0;
    double x = 0;
    double y = 0;
    for (int v = 0; v < 260; v++) {
      for (int u = 0; u < 400; u++) {
        int bright = rgb[3 * (v * 400 + u)] & 0xff;
        double z = m[6] * u + m[7] * v + m[8];
        double sx = (m[0] * u + m[1] * v + m[2]) / z;
        double sy = (m[3] * u + m[4] * v + m[5]) / z;
        if (bright > 60 && Math.hypot(sx - dot[0], sy - dot[1]) < 12) {
          sum += bright;
          x += bright * sx;
          y += bright * sy;
        }
      }
    }
    return new double[] {x / sum, y / sum};
  }
}
