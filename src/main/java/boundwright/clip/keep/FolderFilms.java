package boundwright.clip.keep;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.List;
import java.util.function.Predicate;
import java.util.stream.Stream;

/** Films in a folder: one folder for each, with the film, and its pictures in a folder below. */
public final class FolderFilms implements FilmStore {
  private static final String PICTURES = "stills";

  private final Path folder;

  /** @param folder made when the first film comes */
  public FolderFilms(Path folder) {
    this.folder = folder;
  }

  private record Lying(Path path) implements Brought {
    @Override
    public void close() {
      // it stays where it lies
    }
  }

  private Path of(long id) {
    return folder.resolve(Long.toString(id));
  }

  @Override
  public void keep(Path arrived, long id, String ending) {
    try {
      Files.createDirectories(of(id));
      Files.move(arrived, of(id).resolve("film." + ending), StandardCopyOption.ATOMIC_MOVE);
    } catch (IOException e) {
      throw new UncheckedIOException("the film could not be kept", e);
    }
  }

  @Override
  public Brought film(long id) {
    return new Lying(file(id));
  }

  /** The film itself, whatever its ending; there may be none any more. */
  private Path file(long id) {
    try (Stream<Path> all = Files.list(of(id))) {
      return all.filter(p -> String.valueOf(p.getFileName()).startsWith("film.")).findFirst().orElse(of(id).resolve("film.mp4"));
    } catch (IOException e) {
      return of(id).resolve("film.mp4");
    }
  }

  @Override
  public Path pictures(long id) {
    return of(id).resolve(PICTURES);
  }

  @Override
  public Path newPictures(long id) {
    return pictures(id);
  }

  @Override
  public void keepPictures(long id, String pack) {
    // they lie where they are kept
  }

  @Override
  public void forgetNewPictures(long id) {
    // a film that is read again writes over them
  }

  @Override
  public void dropPictures(long id, Predicate<String> which) {
    if (!Files.isDirectory(pictures(id))) {
      return;
    }
    try (Stream<Path> all = Files.list(pictures(id))) {
      for (Path p : all.filter(p -> which.test(String.valueOf(p.getFileName()))).toList()) {
        Files.deleteIfExists(p);
      }
    } catch (IOException e) {
      throw new UncheckedIOException("a picture could not be deleted", e);
    }
  }

  @Override
  public void dropFilm(long id) {
    try {
      Files.deleteIfExists(file(id));
    } catch (IOException e) {
      throw new UncheckedIOException("a film could not be deleted", e);
    }
  }

  @Override
  public void remove(long id) {
    Trees.delete(of(id));
  }

  @Override
  public long bytes(long id) {
    return Trees.bytes(List.of(of(id)));
  }
}
