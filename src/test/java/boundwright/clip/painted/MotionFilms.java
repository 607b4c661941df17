package boundwright.clip.painted;

import boundwright.clip.real.TruthFile;
import boundwright.clip.truth.Camera;
import boundwright.clip.truth.Mp4Writer;
import boundwright.clip.truth.PaintedPlace;
import boundwright.clip.truth.Painter;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

/**
 * Paints open motion of people who walk and run to films with truth files beside them.
 *
 * <p>Run: {@code bench/clip motion FOLDER [FPS [HEIGHT]]}, then {@code bench/clip real FOLDER}. The data are looked for at
 * {@code ../shared/data/motion} or where the property {@code motion} points.
 */
public final class MotionFilms {
  /** Walks, and the one run of the data. */
  static final String[] CUTS = {"002_01_0", "002_02_0", "007_01_0", "006_04_0", "006_05_0", "006_02_1", "002_03_0"};
  private static final int TICKS = 90_000;

  private MotionFilms() {}

  public static void main(String[] args) throws IOException {
    Path data = OpenMotion.file().orElseThrow(() -> new IOException("open motion is not here: see the class"));
    double fps = args.length > 1 ? Double.parseDouble(args[1]) : 60;
    int high = args.length > 2 ? Integer.parseInt(args[2]) : 720;
    Files.createDirectories(Path.of(args[0]));
    for (String cut : CUTS) {
      write(OpenMotion.of(data, cut), cut, Path.of(args[0]), fps, high);
    }
  }

  private static void write(OpenMotion motion, String name, Path folder, double fps, int high) throws IOException {
    double focal = 1000.0 * high / 720;
    double middle = motion.startX() + motion.way() / 2;
    Camera camera = new Camera(middle, 7, 1.3, name.hashCode() % 2 == 0, 0, 0, 0, focal, 0, high * 16 / 9 / 2 * 2, high);
    PaintedPlace place = new PaintedPlace(camera, PaintedPlace.Kind.RICH, 7);
    Path film = folder.resolve("motion-" + name + ".mp4");
    try (Mp4Writer to = Mp4Writer.open(film, camera.width(), camera.high(), TICKS, 0)) {
      PaintedPlace.Person person = new PaintedPlace.Person(motion::body, Painter.Kit.USUAL);
      for (int i = 0; i / fps <= motion.length_s(); i++) {
        to.write(place.rgb(List.of(person), List.of(i / fps), 0.002), Math.round(i * TICKS / fps));
      }
    }
    TruthFile truth = new TruthFile(1, false, null, motion.contacts(fps), Double.NaN, List.of());
    Files.writeString(TruthFile.beside(film), truth.text("painted, moved by open motion " + name));
    System.out.println(film);
  }
}
