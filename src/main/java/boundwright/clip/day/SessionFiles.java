package boundwright.clip.day;

import boundwright.clip.session.CutOrder;
import boundwright.quantity.RefusedException;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** Where films of sessions and the pictures of their reps lie: one folder a film. */
final class SessionFiles {
  /** So much of the disk stays free for everything else [bytes]. */
  private static final long SPARE_BYTES = 1L << 30;

  private final Path folder;
  private final Path weights;

  SessionFiles(Path folder, Path weights) {
    this.folder = folder;
    this.weights = weights;
  }

  private Path of(long id) {
    return folder.resolve(Long.toString(id));
  }

  Path stills(long id) {
    return of(id).resolve("stills");
  }

  Path film(long id) {
    try (Stream<Path> all = Files.list(of(id))) {
      return all.filter(p -> String.valueOf(p.getFileName()).startsWith("film.")).findFirst().orElse(of(id).resolve("film.mp4"));
    } catch (IOException e) {
      return of(id).resolve("film.mp4");
    }
  }

  CutOrder order(SessionFilm film) {
    return new CutOrder(film(film.id()), weights, film.reached_s(), stills(film.id()));
  }

  /** Writes what arrives to a file of its own, piece by piece, so that a broken-off upload leaves no film and no film fills the memory. */
  Path receive(InputStream film, String fileName) {
    Path to = null;
    boolean whole = false;
    try {
      Files.createDirectories(folder);
      to = Files.createTempFile(folder, "arriving", ".part");
      long n = 0;
      try (OutputStream out = Files.newOutputStream(to)) {
        byte[] buffer = new byte[1 << 16];
        for (int got = film.read(buffer); got >= 0; got = film.read(buffer)) {
          n += got;
          if (n > SessionDesk.MAX_FILM_BYTES) {
            throw new RefusedException(
                String.format(
                    Locale.ROOT, "The film %s is larger than %d GB. Film in 720p, which is enough, or cut the film in two.", fileName,
                    SessionDesk.MAX_FILM_BYTES >> 30));
          }
          if ((n & ((1 << 26) - 1)) < got && free() < SPARE_BYTES) {
            throw full(fileName);
          }
          out.write(buffer, 0, got);
        }
      }
      if (n == 0) {
        throw new RefusedException("The film " + fileName + " is empty (0 bytes). Copy it from the phone again.");
      }
      whole = true;
      return to;
    } catch (IOException e) {
      throw new UncheckedIOException("the film could not be written", e);
    } finally {
      if (!whole && to != null) {
        drop(to);
      }
    }
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
      Files.createDirectories(folder);
      return Files.getFileStore(folder).getUsableSpace();
    } catch (IOException e) {
      return Long.MAX_VALUE;
    }
  }

  void keep(Path arrived, long id, String fileName) {
    int dot = fileName.lastIndexOf('.');
    String ending = dot < 0 ? "" : fileName.substring(dot + 1).toLowerCase(Locale.ROOT);
    try {
      Files.createDirectories(of(id));
      Files.move(arrived, of(id).resolve("film." + (ending.matches("[a-z0-9]{1,5}") ? ending : "mp4")), StandardCopyOption.ATOMIC_MOVE);
    } catch (IOException e) {
      throw new UncheckedIOException("the film could not be kept", e);
    }
  }

  void drop(@Nullable Path file) {
    try {
      if (file != null) {
        Files.deleteIfExists(file);
      }
    } catch (IOException e) {
      throw new UncheckedIOException("a film could not be deleted", e);
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

  void remove(long id) {
    if (!Files.exists(of(id))) {
      return;
    }
    try (Stream<Path> all = Files.walk(of(id))) {
      all.sorted(Comparator.reverseOrder()).toList().forEach(this::drop);
    } catch (IOException e) {
      throw new UncheckedIOException("the film's folder could not be listed", e);
    }
  }
}
