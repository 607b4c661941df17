package boundwright.clip.desk;

import boundwright.clip.bare.BareFilm;
import boundwright.clip.keep.FilmStore;
import boundwright.clip.keep.FolderFilms;
import boundwright.clip.keep.Trees;
import boundwright.quantity.RefusedException;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/** Films that came in: what arrives and what is said of each lies in a folder for each number; film and pictures are where the films are kept. */
public class FilmFolder {
  private final Path folder;
  private final FilmStore store;

  /** Films in this folder; it is made when the first comes. */
  public FilmFolder(Path folder) {
    this(folder, new FolderFilms(folder));
  }

  /** Films that arrive in this folder and are kept in that store. */
  public FilmFolder(Path folder, FilmStore store) {
    this.folder = folder;
    this.store = store;
  }

  /** Where film and pictures are kept. */
  public final FilmStore kept() {
    return store;
  }

  /** Asked while a film arrives, so that what is too much is refused before it is written. */
  public interface Limit {
    /**
     * Looks at how much has come.
     *
     * @param bytes so far, the piece that came last included
     * @param piece the piece that came last [bytes]
     * @throws RefusedException if no more is taken
     */
    void check(long bytes, int piece);
  }

  /** The folder of all of them. */
  protected final Path folder() {
    return folder;
  }

  /** What belongs to a film. */
  protected final Path of(long id) {
    return folder.resolve(Long.toString(id));
  }

  /**
   * Writes what arrives to a file of its own, piece by piece, so that a broken-off upload leaves no film and no film fills the memory, and
   * takes out what it says of places, devices and names.
   *
   * @throws RefusedException if the film is empty, the limit says so, or it cannot be made bare
   */
  public final Path receive(InputStream film, String fileName, Limit limit) {
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
          limit.check(n, got);
          out.write(buffer, 0, got);
        }
      }
      if (n == 0) {
        throw new RefusedException("The film " + fileName + " is empty (0 bytes). Copy it from the phone again.");
      }
      BareFilm.strip(to, fileName);
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

  /** Puts what arrived to where films are kept; when this returns it is kept. */
  public final void keep(Path arrived, long id, String fileName) {
    int dot = fileName.lastIndexOf('.');
    String ending = dot < 0 ? "" : fileName.substring(dot + 1).toLowerCase(Locale.ROOT);
    store.keep(arrived, id, ending.matches("[a-z0-9]{1,5}") ? ending : "mp4");
  }

  /** Deletes a file, if there is one. */
  public final void drop(@Nullable Path file) {
    try {
      if (file != null) {
        Files.deleteIfExists(file);
      }
    } catch (IOException e) {
      throw new UncheckedIOException("a file could not be deleted", e);
    }
  }

  /** Deletes all that belongs to a film; where the store of the films cannot be reached nothing is. */
  public final void remove(long id) {
    store.remove(id);
    Trees.delete(of(id));
  }
}
