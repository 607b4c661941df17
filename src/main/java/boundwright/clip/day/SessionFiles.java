package boundwright.clip.day;

import boundwright.clip.desk.FilmFolder;
import boundwright.clip.keep.FilmStore;
import boundwright.clip.session.CutOrder;
import boundwright.clip.session.FilmRep;
import boundwright.quantity.RefusedException;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;

/** Where films of sessions and the pictures of their reps lie: one folder a film. */
final class SessionFiles extends FilmFolder {
  /** So much of the disk stays free for everything else [bytes]. */
  private static final long SPARE_BYTES = 1L << 30;

  private final Path weights;

  SessionFiles(Path folder, Path weights, FilmStore store) {
    super(folder, store);
    this.weights = weights;
  }

  CutOrder order(SessionFilm film, Path file) {
    return new CutOrder(file, weights, film.reached_s(), kept().newPictures(film.id()));
  }

  /** Keeps the pictures of a rep that was found; they are written before it is told. */
  void keepStills(long id, FilmRep rep) {
    kept().keepPictures(id, "rep-" + Math.round(1000 * rep.from_s()));
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

  /** Deletes the pictures of a rep. */
  void dropStills(SessionRep rep) {
    Set<String> names = new HashSet<>();
    for (double t : rep.cut().stills()) {
      names.add(String.valueOf(still(Path.of(""), rep, t).getFileName()));
    }
    kept().dropPictures(rep.filmId(), names::contains);
  }

  private static Path still(Path folder, SessionRep rep, double time_s) {
    return CutOrder.still(folder, rep.cut().from_s(), time_s);
  }

  Optional<Path> still(SessionRep rep, int number) {
    List<Double> times = rep.cut().stills();
    if (number < 0 || number >= times.size()) {
      return Optional.empty();
    }
    Path file = still(kept().pictures(rep.filmId()), rep, times.get(number));
    return Files.exists(file) ? Optional.of(file) : Optional.empty();
  }

  /** What is kept of a film, the film itself included [bytes]. */
  long bytes(long id) {
    return kept().bytes(id);
  }
}
