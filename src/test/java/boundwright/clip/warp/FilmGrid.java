package boundwright.clip.warp;

import boundwright.clip.real.Matching;
import boundwright.clip.real.RealFilms;
import boundwright.clip.real.TruthFile;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/**
 * How the reading does by frames a second, size of the picture and movement of the camera, on painted reps through coding and network.
 *
 * <p>Run: {@code bench/clip grid [CLIPS [SEED [ROW-PART]]]}; clips of each row, first seed. Own output.
 */
public final class FilmGrid {
  @SuppressWarnings("ArrayRecordComponent") // never compared
  private record Row(String name, String... options) {}

  private static final List<Row> ROWS =
      List.of(
          new Row("still, 720p, 30 fps", "fps=30", "follow=no", "size=1280x720"),
          new Row("still, 720p, 60 fps", "fps=60", "follow=no", "size=1280x720"),
          new Row("still, 720p, 120 fps", "fps=120", "follow=no", "size=1280x720"),
          new Row("still, 720p, 240 fps", "fps=240", "follow=no", "size=1280x720"),
          new Row("still, 360p, 60 fps", "fps=60", "follow=no", "high=360", "size=640x360"),
          new Row("still, 480p, 60 fps", "fps=60", "follow=no", "high=480", "size=854x480"),
          new Row("still, 1080p, 60 fps", "fps=60", "follow=no", "high=1080", "size=1920x1080"),
          new Row("panned, 720p, 60 fps", "fps=60", "size=1280x720"),
          new Row("panned and zoomed, 720p, 60 fps", "fps=60", "size=1280x720", "zoom=1.3"),
          new Row("panned, zoomed, shaken, 720p, 60 fps", "fps=60", "size=1280x720", "zoom=1.3", "shake=2", "tilt=1"),
          new Row("the same, rows read in 20 ms", "fps=60", "size=1280x720", "zoom=1.3", "shake=2", "tilt=1", "shutter=20"),
          new Row("panned, shaken, plain background, 720p, 60 fps", "fps=60", "size=1280x720", "shake=2", "place=plain"),
          new Row("panned, shaken, bare wall, 720p, 60 fps", "fps=60", "size=1280x720", "shake=2", "place=wall"));

  private FilmGrid() {}

  public static void main(String[] args) throws IOException {
    int clips = args.length > 0 ? Integer.parseInt(args[0]) : 3;
    long seed = args.length > 1 ? Long.parseLong(args[1]) : 1;
    String part = args.length > 2 ? args[2] : "";
    Path folder = Path.of(System.getProperty("folder", "target/bench-clip")).resolve("grid");
    Path weights = Path.of(System.getProperty("weights", "target/bench-clip/weights"));
    Files.createDirectories(folder);
    System.out.println(RealFilms.HEAD);
    for (Row row : ROWS) {
      if (!row.name.contains(part)) {
        continue;
      }
      List<Matching.Result> all = new ArrayList<>();
      for (long s = seed; s < seed + clips; s++) {
        Path film = folder.resolve((row.name + "-" + s).replaceAll("[^a-z0-9]+", "-") + ".mp4");
        if (!Files.exists(TruthFile.beside(film))) {
          WarpFilm.painted(Long.toString(s), film, List.of(row.options));
        }
        all.add(RealFilms.read(film, TruthFile.read(TruthFile.beside(film)), weights, m -> {}));
      }
      System.out.println(RealFilms.row(row.name + ", " + clips + " clips", RealFilms.sum(all), Double.NaN));
    }
  }
}
