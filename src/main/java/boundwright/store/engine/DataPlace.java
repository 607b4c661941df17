package boundwright.store.engine;

import boundwright.clip.keep.BucketAddress;
import boundwright.quantity.RefusedException;
import java.nio.file.Path;
import org.jspecify.annotations.Nullable;

/**
 * Where a store is: backups always in a folder, rows in a database file in that folder or in a PostgreSQL, films in that folder or in a bucket.
 * Each club has a place of its own.
 *
 * @param folder the data folder
 * @param database the PostgreSQL, or null for a file in the folder
 * @param films the bucket with the films, or null if they are in the folder
 */
public record DataPlace(Path folder, @Nullable PostgresAddress database, @Nullable BucketAddress films) {
  /** As the other, the films in the folder. */
  public DataPlace(Path folder, @Nullable PostgresAddress database) {
    this(folder, database, null);
  }

  /** The same with the films in a bucket, or in the folder. */
  public DataPlace withFilms(@Nullable BucketAddress in) {
    return new DataPlace(folder, database, in);
  }

  /** Everything in one folder. */
  public static DataPlace of(Path folder) {
    return new DataPlace(folder, null);
  }

  /**
   * The place of another club beside this one's: a folder below, and a schema of its own.
   *
   * @param number of the club, from 2; this place is the first's
   */
  public DataPlace club(long number) {
    if (number < 2) {
      throw new RefusedException("Club " + number + " has no place of its own: further clubs are numbered from 2.");
    }
    return new DataPlace(
        folder.resolve("clubs").resolve(Long.toString(number)), database == null ? null : database.club(number), films == null ? null : films.club(number));
  }

  /** What sentences call it; never a password. */
  @Override
  public String toString() {
    return database == null ? folder.toString() : database.toString();
  }
}
