package boundwright.clip.day;

import boundwright.clip.desk.FilmFolder;
import boundwright.clip.session.CutOrder;
import boundwright.quantity.RefusedException;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;

/** Where films of sessions and the pictures of their reps lie: one folder a film. */
final class SessionFiles extends FilmFolder {
  /** So much of the disk stays free for everything else [bytes]. */
  private static final long SPARE_BYTES = 1L << 30;

  private final Path weights;

  SessionFiles(Path folder, Path weights) {
    super(folder);
    this.weights = weights;
  }

  CutOrder order(SessionFilm film) {
    return new CutOrder(film(film.id()), weights, film.reached_s(), stills(film.id()));
  }

  /** Takes the film of a session in, as long as the disk has room. */
  Path receive(InputStream film, String fileName) {
    return receive(
        film,
        fileName,
        (bytes, piece) -> {
          if (bytes > SessionDesk.MAX_FILM_BYTES) {
            throw new RefusedException(
                String.format(
                    Locale.ROOT, "The film %s is larger than %d GB. Film in 720p, which is enough, or cut the film in two.", fileName,
                    SessionDesk.MAX_FILM_BYTES >> 30));
          }
          if ((bytes & ((1 << 26) - 1)) < piece && free() < SPARE_BYTES) {
            throw full(fileName);
          }
        });
  }

  private RefusedException full(String fileName) {
    return new RefusedException(
        String.format(
            Locale.ROOT, "The disk has %.1f GB left, too little for %s. Drop films of sessions that are done, and send it again.",
            free() / 1e9, fileName));
  }

  /** Free on the disk of the films [bytes]. */
  long free() {
    try {
      Files.createDirectories(folder());
      return Files.getFileStore(folder()).getUsableSpace();
    } catch (IOException e) {
      return Long.MAX_VALUE;
    }
  }

  void dropFilm(long id) {
    drop(film(id));
  }

  /** Deletes the pictures of a rep. */
  void dropStills(SessionRep rep) {
    for (double t : rep.cut().stills()) {
      drop(CutOrder.still(stills(rep.filmId()), rep.cut().from_s(), t));
    }
  }

  Optional<Path> still(SessionRep rep, int number) {
    List<Double> times = rep.cut().stills();
    if (number < 0 || number >= times.size()) {
      return Optional.empty();
    }
    Path file = CutOrder.still(stills(rep.filmId()), rep.cut().from_s(), times.get(number));
    return Files.exists(file) ? Optional.of(file) : Optional.empty();
  }

  /** What lies there of a film, the film itself included [bytes]. */
  long bytes(long id) {
    try (Stream<Path> all = Files.walk(of(id))) {
      return all.filter(Files::isRegularFile).mapToLong(SessionFiles::size).sum();
    } catch (IOException e) {
      return 0;
    }
  }

  private static long size(Path file) {
    try {
      return Files.size(file);
    } catch (IOException e) {
      return 0;
    }
  }
}
