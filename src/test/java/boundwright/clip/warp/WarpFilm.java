package boundwright.clip.warp;

import boundwright.clip.film.Film;
import boundwright.clip.film.FilmFacts;
import boundwright.clip.real.TruthFile;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;

/**
 * Makes panned film with known truth from a still one.
 *
 * <p>Run: {@code bench/clip warp FILM OUT.mp4 [size=960x600] [view=60] [scale=1] [follow=yes] [tilt=0] [zoom=1] [shake=0] [shutter=0] [seed=1]}.
 * FILM is a file with a truth file beside it, or {@code painted:SEED} with {@code fps=}, {@code steps=}, {@code place=rich|plain|wall}, {@code distance=}
 * [m], {@code high=} (rows of a phone's picture: how fine the still one is), {@code wide=}.
 * Writes OUT.mp4, OUT.txt (contacts, as of the still film) and OUT.camera (each frame's map).
 */
public final class WarpFilm {
  private WarpFilm() {}

  public static void main(String[] args) throws IOException {
    Path weights = Path.of(System.getProperty("weights", "target/bench-clip/weights"));
    Path out = Path.of(args[1]);
    List<String> options = Arrays.asList(args).subList(2, args.length);
    if (args[0].startsWith("painted:")) {
      painted(args[0].substring("painted:".length()), out, options);
      return;
    }
    Path film = Path.of(args[0]);
    FilmFacts facts = Film.times(film).facts();
    WarpOptions o = WarpOptions.of(options, facts.width());
    TruthFile truth = TruthFile.read(TruthFile.beside(film));
    try (StillSource source = new FilmSource(film, weights, o.viewDeg())) {
      say(new Warper(source, o, truth.slowed()).write(out, maps(out), facts.seconds()), out);
    }
    Files.writeString(TruthFile.beside(out), truth.text("as " + film.getFileName() + ", seen by a turning camera: " + String.join(" ", options)));
  }

  static void painted(String seed, Path out, List<String> options) throws IOException {
    List<String> mine = options.stream().filter(s -> PaintedSource.knows(s)).toList();
    List<String> rest = options.stream().filter(s -> !PaintedSource.knows(s)).toList();
    try (PaintedSource source = PaintedSource.of(Long.parseLong(seed), mine)) {
      WarpOptions o = WarpOptions.of(rest, source.width());
      Warper warper = new Warper(source, o, 1);
      say(warper.write(out, maps(out), source.length_s()), out);
      TruthFile truth = source.truth((t, s) -> warper.sees(t, source.length_s(), s.x(), s.y()));
      Files.writeString(TruthFile.beside(out), truth.text("painted, seed " + seed + ", seen by a turning camera: " + String.join(" ", options)));
      Files.writeString(
          maps(out), "# marks on the athlete's line: metres, point of the still picture\n" + source.marks(), java.nio.file.StandardOpenOption.APPEND);
    }
  }

  private static Path maps(Path out) {
    String name = out.getFileName().toString();
    return out.resolveSibling(name.substring(0, name.lastIndexOf('.')) + ".camera");
  }

  private static void say(int frames, Path out) {
    System.err.println(frames + " frames written to " + out + ", truth beside it");
  }
}
