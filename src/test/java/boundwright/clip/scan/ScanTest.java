package boundwright.clip.scan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import boundwright.ChildProgram;
import boundwright.clip.FoundClip;
import boundwright.clip.camera.CameraPath;
import boundwright.clip.film.Film;
import boundwright.clip.track.Spot;
import boundwright.clip.truth.Mp4Writer;
import boundwright.clip.truth.PaintedRunner;
import boundwright.clip.truth.Painter;
import boundwright.quantity.RefusedException;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Whole scans in the child process, of films painted by the tests. */
class ScanTest {
  @TempDir Path folder = Path.of("");

  private final PaintedRunner runner = new PaintedRunner();

  @BeforeAll
  static void weights() {
    PaintedRunner.weightsOrSkip();
  }

  private BufferedImage frame(double t, boolean second) {
    Painter p = runner.at(t);
    return (second ? p.add(runner.athlete().at(t + 0.1), 3) : p).image();
  }

  private Path film(String name, int frames, boolean second, int shiftEach) {
    Path file = folder.resolve(name);
    double start = runner.start();
    try (Mp4Writer out = Mp4Writer.open(file, 1280, 720, 90_000, 0)) {
      for (int i = 0; i < frames; i++) {
        BufferedImage image = frame(start + i / 60.0, second);
        if (shiftEach != 0) {
          BufferedImage moved = new BufferedImage(1280, 720, BufferedImage.TYPE_3BYTE_BGR);
          Graphics2D g = moved.createGraphics();
          g.drawImage(image, -60 + i * shiftEach, 0, 1400, 720, null);
          g.dispose();
          image = moved;
        }
        out.write(image, 1500L * i);
      }
    }
    return file;
  }

  private static FoundClip scan(ScanOrder order) throws InterruptedException {
    return ScanProcess.scan(order, p -> {});
  }

  @Test
  void everyFrameHasItsOwnTimeAndItsPicture() throws Exception {
    Path file = film("run.mp4", 12, false, 0);
    Path stills = folder.resolve("stills");
    List<Integer> told = new ArrayList<>();
    FoundClip clip = ScanProcess.scan(ScanOrder.of(file, PaintedRunner.WEIGHTS).withStills(stills), told::add);
    double[] times = clip.track().times();
    long[] pts = Film.times(file).pts();
    assertThat(times).containsExactly(Arrays.stream(pts).mapToDouble(p -> p / 90_000.0).toArray());
    assertThat(told).isSorted().last().isEqualTo(1000);
    for (int i = 0; i < 12; i++) {
      BufferedImage still = ImageIO.read(Stills.file(stills, i).toFile());
      assertThat(still.getWidth()).isEqualTo(Stills.WIDE);
      assertThat(still.getHeight()).isEqualTo(540);
    }
    assertThat(clip.camera()).isEqualTo(CameraPath.stood());
  }

  @Test
  void aPictureKeepsItsColours() throws Exception {
    Path file = folder.resolve("colours.mp4");
    BufferedImage image = frame(runner.start(), false);
    try (Mp4Writer out = Mp4Writer.open(file, 1280, 720, 90_000, 0)) {
      out.write(image, 0);
      out.write(image, 1500);
      out.write(image, 3000);
    }
    Path stills = folder.resolve("stills");
    scan(ScanOrder.of(file, PaintedRunner.WEIGHTS).withStills(stills));
    BufferedImage still = ImageIO.read(Stills.file(stills, 1).toFile());
    for (int[] at : new int[][] {{40, 40}, {640, 700}, {1200, 400}}) {
      int a = image.getRGB(at[0], at[1]);
      int b = still.getRGB(at[0] * 3 / 4, at[1] * 3 / 4);
      for (int shift = 0; shift <= 16; shift += 8) {
        assertThat(Math.abs((a >> shift & 0xff) - (b >> shift & 0xff))).as("colour at %s", Arrays.toString(at)).isLessThan(16);
      }
    }
  }

  @Test
  void twoPeopleAreSaid() throws Exception {
    FoundClip clip = scan(ScanOrder.of(film("two.mp4", 6, true, 0), PaintedRunner.WEIGHTS));
    assertThat(clip.remarks()).anyMatch(r -> r.contains("2 people are in the picture"));
  }

  @Test
  void aCameraThatMovedIsFollowed() throws Exception {
    FoundClip clip = scan(ScanOrder.of(film("moved.mp4", 24, false, 3), PaintedRunner.WEIGHTS));
    assertThat(clip.camera().kind()).isNotEqualTo(CameraPath.Kind.STOOD);
    assertThat(clip.camera().followed()).isTrue();
    // the picture as a whole goes 3 px to the right with each frame; how far the camera turned for that hangs on its lens
    int last = clip.camera().frames() - 1;
    for (Spot at : List.of(new Spot(300, 250), new Spot(700, 420), new Spot(1000, 600))) {
      Spot then = clip.camera().carry(last, new Spot(at.x() + 3 * last, at.y()));
      assertThat(then.to(clip.camera().carry(0, at))).as("a point of the ground, first and last frame, in the common picture [px]").isLessThan(2);
    }
  }

  @Test
  void whatCannotBeReadIsRefusedInASentence() throws Exception {
    Path whole = film("whole.mp4", 6, false, 0);
    Path cut = folder.resolve("cut.mp4");
    byte[] bytes = Files.readAllBytes(whole);
    Files.write(cut, Arrays.copyOf(bytes, bytes.length / 2));
    Path text = Files.writeString(folder.resolve("text.mp4"), "R R L\n");
    Path empty = Files.createFile(folder.resolve("empty.mp4"));
    Path nobody = folder.resolve("nobody.mp4");
    try (Mp4Writer out = Mp4Writer.open(nobody, 1280, 720, 90_000, 0)) {
      BufferedImage scenery = runner.empty().image();
      for (int i = 0; i < 6; i++) {
        out.write(scenery, 1500L * i);
      }
    }
    for (Path file : List.of(cut, text, empty, nobody)) {
      assertThatThrownBy(() -> scan(ScanOrder.of(file, PaintedRunner.WEIGHTS)))
          .as("%s", file.getFileName())
          .isInstanceOf(RefusedException.class)
          .hasMessageMatching("(?s).{20,}[.:] .{10,}\\.");
    }
  }

  @Test
  void anInterruptEndsTheChild() throws Exception {
    Path file = film("long.mp4", 120, false, 0);
    Thread self = Thread.currentThread();
    assertThatThrownBy(
            () -> ScanProcess.scan(ScanOrder.of(file, PaintedRunner.WEIGHTS), perMille -> {
              if (perMille > 100) {
                self.interrupt();
              }
            }))
        .isInstanceOf(InterruptedException.class);
    assertThat(ProcessHandle.current().children().filter(c -> c.info().commandLine().orElse("").contains("ScanChild")).filter(ProcessHandle::isAlive).count())
        .as("children left").isLessThanOrEqualTo(1);
  }

  @Test
  void aChildThatHangsIsEnded() throws Exception {
    Process child = ChildProgram.start(Hangs.class);
    List<Integer> told = new ArrayList<>();
    assertThatThrownBy(() -> ScanProcess.answer(child, "hangs.mp4", Duration.ofSeconds(3), told::add))
        .isInstanceOf(RefusedException.class)
        .hasMessageContaining("hangs.mp4 came to a standstill")
        .hasMessageContaining("Read the clip again");
    assertThat(told).containsExactly(10);
    assertThat(child.isAlive()).isFalse();
  }

  /** A child that tells how far it is and then nothing more. */
  static final class Hangs {
    private Hangs() {}

    public static void main(String[] args) throws InterruptedException {
      System.out.write(new byte[] {ScanChild.PROGRESS, 0, 0, 0, 10}, 0, 5);
      System.out.flush();
      Thread.sleep(600_000);
    }
  }

  @Test
  void aChildThatDiesGivesASentence() {
    Path file = film("dies.mp4", 6, false, 0);
    Path noFolder = folder.resolve("weights-that-are-a-file");
    assertThatThrownBy(() -> {
          Files.writeString(noFolder, "x");
          scan(ScanOrder.of(file, noFolder));
        })
        .isInstanceOf(RefusedException.class);
  }
}
