package boundwright.clip.keep;

import boundwright.quantity.RefusedException;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Predicate;

/**
 * Films in a bucket: {@code KIND/NUMBER/film.ENDING}, pictures beside it in packs, {@code KIND/NUMBER/stills-NAME.zip}. A film is brought while it is
 * looked at; pictures that a page asks for stay on this machine as long as there is room.
 */
final class BucketFilms implements FilmStore {
  /** Pictures that stay on this machine at most, of each kind [bytes]; those asked for last always do (judgement: some twenty films of a rep). */
  static final long MOST_BYTES = 2L << 30;
  /** Another machine may have read the film again, or dropped pictures. */
  private static final Duration LOOK_EVERY = Duration.ofSeconds(10);

  private static final String FILM = "film.";
  private static final String PACK = "stills-";
  private static final String ZIP = ".zip";

  private final Bucket bucket;
  private final String kind;
  private final Scratch scratch;
  private final Clock clock;
  private final Map<Long, Shown> shown = new LinkedHashMap<>(16, 0.75f, true);

  /** Pictures that were brought: of which packs, and when that was looked at. */
  private record Shown(Map<String, String> packs, Instant looked, long bytes) {}

  BucketFilms(Bucket bucket, String kind, Scratch scratch, Clock clock) {
    this.bucket = bucket;
    this.kind = kind;
    this.scratch = scratch;
    this.clock = clock;
  }

  private record Temporary(Path path) implements Brought {
    @Override
    public void close() {
      Trees.delete(path);
    }
  }

  private String under(long id) {
    return bucket.prefix() + kind + "/" + id + "/";
  }

  private String pack(long id, String name) {
    return under(id) + PACK + name + ZIP;
  }

  @Override
  public void keep(Path arrived, long id, String ending) {
    bucket.put(under(id) + FILM + ending, arrived);
    try {
      Files.deleteIfExists(arrived);
    } catch (IOException e) {
      throw new UncheckedIOException("what arrived could not be deleted", e);
    }
  }

  @Override
  public Brought film(long id) throws InterruptedException {
    List<Bucket.Held> found = bucket.list(under(id) + FILM);
    if (found.isEmpty()) {
      throw gone();
    }
    String key = found.get(0).key();
    Path to = scratch.file(key.substring(key.lastIndexOf('.') + 1));
    boolean there = false;
    try {
      there = bucket.get(key, to);
    } catch (IllegalStateException e) {
      if (Thread.interrupted()) {
        throw new InterruptedException("called off while the film was brought");
      }
      throw e;
    } finally {
      if (!there) {
        Trees.delete(to);
      }
    }
    if (!there) {
      throw gone();
    }
    return new Temporary(to);
  }

  private static RefusedException gone() {
    return new RefusedException("The film is not in the store of the films. It may have been dropped, or never arrived: send it again.");
  }

  private Path folder(String of, long id) {
    return scratch.folder().resolve(kind + "-" + id + "-" + of);
  }

  @Override
  public Path newPictures(long id) {
    return folder("new", id);
  }

  @Override
  public void forgetNewPictures(long id) {
    Trees.delete(newPictures(id));
  }

  @Override
  public void keepPictures(long id, String name) {
    List<Path> files = Pack.files(newPictures(id));
    if (!files.isEmpty()) {
      put(id, name, files);
    }
    forgetNewPictures(id);
  }

  private void put(long id, String name, List<Path> files) {
    Path zip = scratch.file("zip");
    try {
      Pack.write(files, zip);
      bucket.put(pack(id, name), zip);
    } finally {
      Trees.delete(zip);
    }
  }

  @Override
  public synchronized Path pictures(long id) {
    Path folder = folder("shown", id);
    Shown before = shown.get(id);
    if (before != null && Duration.between(before.looked, clock.instant()).abs().compareTo(LOOK_EVERY) < 0) {
      return folder;
    }
    Map<String, String> packs = packs(id);
    long bytes = before == null ? 0 : before.bytes;
    if (before == null || !before.packs.equals(packs)) {
      shown.remove(id);
      Trees.delete(folder);
      packs.keySet().forEach(key -> unpack(key, folder, any -> true));
      bytes = Trees.bytes(List.of(folder));
    }
    shown.put(id, new Shown(packs, clock.instant(), bytes));
    thin();
    return folder;
  }

  /** Names and contents of the packs of a film. */
  private Map<String, String> packs(long id) {
    Map<String, String> packs = new LinkedHashMap<>();
    for (Bucket.Held held : bucket.list(under(id) + PACK)) {
      packs.put(held.key(), held.tag());
    }
    return packs;
  }

  private void unpack(String key, Path into, Predicate<String> wished) {
    Path zip = scratch.file("zip");
    try {
      if (bucket.get(key, zip)) {
        Pack.read(zip, into, wished);
      }
    } finally {
      Trees.delete(zip);
    }
  }

  private void thin() {
    long sum = shown.values().stream().mapToLong(Shown::bytes).sum();
    while (sum > MOST_BYTES && shown.size() > 1) {
      Map.Entry<Long, Shown> oldest = shown.entrySet().iterator().next();
      sum -= oldest.getValue().bytes;
      forget(oldest.getKey());
    }
  }

  private synchronized void forget(long id) {
    shown.remove(id);
    Trees.delete(folder("shown", id));
  }

  @Override
  public void dropPictures(long id, Predicate<String> which) {
    Path left = folder("left", id);
    for (String key : packs(id).keySet()) {
      Trees.delete(left);
      boolean[] any = {false};
      unpack(
          key, left,
          name -> {
            boolean goes = which.test(name);
            any[0] |= goes;
            return !goes;
          });
      List<Path> files = Pack.files(left);
      if (files.isEmpty()) {
        bucket.delete(key);
      } else if (any[0]) {
        put(id, key.substring(under(id).length() + PACK.length(), key.length() - ZIP.length()), files);
      }
    }
    Trees.delete(left);
    forget(id);
  }

  @Override
  public void dropFilm(long id) {
    bucket.list(under(id) + FILM).forEach(held -> bucket.delete(held.key()));
  }

  @Override
  public void remove(long id) {
    bucket.list(under(id)).forEach(held -> bucket.delete(held.key()));
    forget(id);
  }

  @Override
  public long bytes(long id) {
    return bucket.list(under(id)).stream().mapToLong(Bucket.Held::bytes).sum();
  }
}
