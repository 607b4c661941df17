package boundwright.clip.keep;

import java.nio.file.Path;
import java.util.function.Predicate;

/**
 * Where the films of one kind and their pictures are kept, each film by a number. Every method may throw {@link FilmsAwayException}; whatever
 * it was asked for was then not done, or not to its end, and can be asked for again.
 */
public interface FilmStore {
  /** A film as a file of this machine, while it is looked at. */
  interface Brought extends AutoCloseable {
    /** The file; only to be read. */
    Path path();

    /** The film is not looked at any more; what was brought for it is deleted. */
    @Override
    void close();
  }

  /** Says where to bring a film from. */
  interface Source {
    /** Brings it, see {@link FilmStore#film}. */
    Brought bring() throws InterruptedException;
  }

  /**
   * Keeps a film that arrived; when this returns it is kept, and the file is gone from where it arrived.
   *
   * @param ending of the file, such as {@code mov}, small letters and digits
   */
  void keep(Path arrived, long id, String ending);

  /**
   * Brings a film to this machine.
   *
   * @throws boundwright.quantity.RefusedException if there is none (any more)
   */
  Brought film(long id) throws InterruptedException;

  /** A folder of this machine with the pictures that are kept of a film; it may be missing. */
  Path pictures(long id);

  /** A folder of this machine into which pictures of a film are to be written; {@link #keepPictures} keeps them. */
  Path newPictures(long id);

  /**
   * Keeps what was written into {@link #newPictures}.
   *
   * @param pack what belongs together, letters, digits and -; a pack of the same name is replaced
   */
  void keepPictures(long id, String pack);

  /** What was written into {@link #newPictures} and was not kept may go. */
  void forgetNewPictures(long id);

  /** Drops pictures by their file's name. */
  void dropPictures(long id, Predicate<String> which);

  /** Drops the film itself, if it is there. */
  void dropFilm(long id);

  /** Drops the film and all pictures of it. */
  void remove(long id);

  /** What a film and its pictures take [bytes]. */
  long bytes(long id);
}
