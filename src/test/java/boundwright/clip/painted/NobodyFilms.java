package boundwright.clip.painted;

import boundwright.clip.truth.Camera;
import boundwright.clip.truth.Mp4Writer;
import boundwright.clip.truth.PaintedPlace;
import boundwright.clip.truth.Painter;
import boundwright.clip.truth.Stroller;
import java.awt.Color;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/**
 * Films in which no contact of anybody may be found: an empty runway, and people who stand beside it.
 *
 * <p>Run: {@code bench/clip nobody FOLDER}; then {@code bench/clip real FOLDER}.
 */
public final class NobodyFilms {
  private static final double FPS = 30;
  private static final double LENGTH_S = 4;

  private NobodyFilms() {}

  public static void main(String[] args) throws IOException {
    Path folder = Path.of(args[0]);
    write(folder.resolve("empty-runway.mp4"), List.of());
    List<PaintedPlace.Person> crowd = new ArrayList<>();
    for (int i = 0; i < 6; i++) {
      Stroller one = new Stroller(3.5 + 1.1 * i, 0);
      Color shirt = new Color(60 + 30 * i, 200 - 25 * i, 90 + 20 * i);
      double aside = 1.4 + 0.3 * (i % 3);
      double later = 1.7 * i;
      crowd.add(
          new PaintedPlace.Person(
              t -> one.at(t + later).moved(0, -aside),
              new Painter.Kit(new Color(150 + 10 * i, 100 + 10 * i, 80 + 8 * i), shirt, new Color(40, 40, 60), Color.WHITE, Color.BLACK)));
    }
    write(folder.resolve("standing-crowd.mp4"), crowd);
  }

  private static void write(Path film, List<PaintedPlace.Person> people) throws IOException {
    Camera camera = new Camera(7, 10, 1.4, true, 0, 0, 0, 1000, 0, 1280, 720);
    PaintedPlace place = new PaintedPlace(camera, PaintedPlace.Kind.RICH, 5);
    try (Mp4Writer to = Mp4Writer.open(film, 1280, 720, 90_000, 0)) {
      for (int i = 0; i < FPS * LENGTH_S; i++) {
        to.write(place.rgb(people, List.of(i / FPS), 0), Math.round(i * 90_000 / FPS));
      }
    }
    String name = film.getFileName().toString();
    Files.writeString(film.resolveSibling(name.replace(".mp4", ".txt")), "# painted; nobody runs\nnobody\n");
  }
}
