package boundwright.clip.keep;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.Clock;
import java.util.List;
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
  private static final Pattern PACK = Pattern.compile("((?:clips|sessions)/\\d+)/stills-[A-Za-z0-9-]+\\.zip");

  private final @Nullable Bucket bucket;
  private final Scratch scratch;
  private final FilmStore clips;
  private final FilmStore sessions;

  private KeptFilms(Path folder, @Nullable Bucket bucket, Clock clock) {
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

  /** Told of one file after another. */
  public interface Taker {
    /** Takes one, named as it would be in a data folder; the file is there until this returns. */
    void take(String name, Path file) throws IOException;
  }

  /** Whether the bucket holds anything here. */
  public boolean any() {
    Bucket asked = bucket;
    return asked != null && Stream.of(CLIPS, SESSIONS).anyMatch(kind -> !asked.list(asked.prefix() + kind + "/").isEmpty());
  }

  /** Brings every film and picture of the bucket, one after another. */
  public void each(Taker taker) throws IOException {
    Bucket asked = bucket;
    if (asked == null) {
      return;
    }
    for (String kind : List.of(CLIPS, SESSIONS)) {
      for (Bucket.Held held : asked.list(asked.prefix() + kind + "/")) {
        String name = held.key().substring(asked.prefix().length());
        Path file = scratch.file("part");
        try {
          if (asked.get(held.key(), file)) { // a clip may be taken back meanwhile
            bring(name, file, taker);
          }
        } finally {
          Trees.delete(file);
        }
      }
    }
  }

  private void bring(String name, Path file, Taker taker) throws IOException {
    Matcher pack = PACK.matcher(name);
    if (FILM.matcher(name).matches()) {
      taker.take(name, file);
    } else if (pack.matches()) {
      Path pictures = scratch.folder().resolve("each");
      try {
        Pack.read(file, pictures, any -> true);
        for (Path picture : Pack.files(pictures)) {
          taker.take(pack.group(1) + "/stills/" + picture.getFileName(), picture);
        }
      } finally {
        Trees.delete(pictures);
      }
    }
  }

  /**
   * Puts the films and pictures of a data folder into the bucket; the folder stays as it is.
   *
   * @return how many files were put
   */
  public int putAll(Path dataFolder) throws IOException {
    int put = 0;
    for (String kind : List.of(CLIPS, SESSIONS)) {
      Path all = dataFolder.resolve(kind);
      FilmStore to = kind.equals(CLIPS) ? clips : sessions;
      for (Path one : Files.isDirectory(all) ? folders(all) : List.<Path>of()) {
        long id = Long.parseLong(String.valueOf(one.getFileName()));
        for (Path film : Pack.files(one).stream().filter(f -> String.valueOf(f.getFileName()).startsWith("film.")).toList()) {
          String ending = String.valueOf(film.getFileName()).substring("film.".length());
          to.keep(Files.copy(film, scratch.file(ending), StandardCopyOption.REPLACE_EXISTING), id, ending);
          put++;
        }
        List<Path> pictures = Pack.files(one.resolve("stills"));
        if (!pictures.isEmpty()) {
          Path there = Files.createDirectories(to.newPictures(id));
          for (Path picture : pictures) {
            Files.copy(picture, there.resolve(String.valueOf(picture.getFileName())), StandardCopyOption.REPLACE_EXISTING);
          }
          to.keepPictures(id, "all");
          put += pictures.size();
        }
      }
    }
    return put;
  }

  private static List<Path> folders(Path all) throws IOException {
    try (Stream<Path> found = Files.list(all)) {
      return found.filter(f -> String.valueOf(f.getFileName()).matches("\\d{1,18}")).sorted().toList();
    }
  }

  @Override
  public void close() {
    scratch.close();
    if (bucket != null) {
      bucket.close();
    }
  }
}
