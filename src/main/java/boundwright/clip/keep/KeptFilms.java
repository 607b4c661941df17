package boundwright.clip.keep;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** Where all films of one data folder are kept; close it when done. */
public final class KeptFilms implements AutoCloseable {
  private static final String CLIPS = "clips";
  private static final String SESSIONS = "sessions";
  private static final Pattern FILM = Pattern.compile("(clips|sessions)/(\\d+)/film\\.[a-z0-9]+");

  private final Path folder;
  private final @Nullable Bucket bucket;
  private final Scratch scratch;
  private final FilmStore clips;
  private final FilmStore sessions;

  private KeptFilms(Path folder, @Nullable Bucket bucket, Clock clock) {
    this.folder = folder;
    this.bucket = bucket;
    this.scratch = new Scratch(folder);
    this.clips = bucket == null ? new FolderFilms(folder.resolve(CLIPS)) : new BucketFilms(bucket, CLIPS, scratch, clock);
    this.sessions = bucket == null ? new FolderFilms(folder.resolve(SESSIONS)) : new BucketFilms(bucket, SESSIONS, scratch, clock);
  }

  /**
   * The films of a data folder.
   *
   * @param address the bucket that they are in, or null if they are in the folder
   */
  public static KeptFilms of(Path dataFolder, @Nullable BucketAddress address, Clock clock) {
    return of(dataFolder, address, clock, Bucket.USUAL_PIECE);
  }

  /** As the other; a file larger than {@code piece} [bytes] goes into the bucket in pieces. */
  static KeptFilms of(Path dataFolder, @Nullable BucketAddress address, Clock clock, int piece) {
    KeptFilms films = new KeptFilms(dataFolder, address == null ? null : new Bucket(address, piece), clock);
    films.scratch.sweep();
    return films;
  }

  /** Films of one rep each. */
  public FilmStore clips() {
    return clips;
  }

  /** Films of whole sessions. */
  public FilmStore sessions() {
    return sessions;
  }

  /** Whether they are in a bucket, so that neither backup nor copy of the folder holds them. */
  public boolean elsewhere() {
    return bucket != null;
  }

  /** Whether the data folder itself holds a film. */
  public static boolean anyIn(Path dataFolder) {
    for (String kind : new String[] {CLIPS, SESSIONS}) {
      Path all = dataFolder.resolve(kind);
      if (Files.isDirectory(all)) {
        try (Stream<Path> files = Files.walk(all, 2)) {
          if (files.anyMatch(f -> FILM.matcher(dataFolder.relativize(f).toString().replace('\\', '/')).matches())) {
            return true;
          }
        } catch (IOException e) {
          return true; // who cannot look does not say that there is none
        }
      }
    }
    return false;
  }

  /** Numbers of the clips of one rep whose film is in the bucket. */
  public Set<Long> clipsHeld() {
    Set<Long> held = new TreeSet<>();
    Bucket asked = bucket;
    if (asked != null) {
      for (Bucket.Held h : asked.list(asked.prefix() + CLIPS + "/")) {
        Matcher m = FILM.matcher(h.key().substring(asked.prefix().length()));
        if (m.matches()) {
          held.add(Long.valueOf(m.group(2)));
        }
      }
    }
    return held;
  }

  /** The data folder that they belong to. */
  public Path folder() {
    return folder;
  }

  @Override
  public void close() {
    scratch.close();
    if (bucket != null) {
      bucket.close();
    }
  }
}
