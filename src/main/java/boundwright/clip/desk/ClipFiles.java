package boundwright.clip.desk;

import boundwright.clip.FoundClip;
import boundwright.clip.contact.Contact;
import boundwright.clip.reading.ClipReading;
import boundwright.clip.reading.ReadContact;
import boundwright.clip.scan.Stills;
import boundwright.clip.track.Track;
import boundwright.quantity.Estimate;
import boundwright.quantity.RefusedException;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

/** Where films and pictures lie: one folder a clip. */
final class ClipFiles {
  /** Pictures beside a contact that are kept when the film goes, on each side. */
  private static final int BESIDE = 4;

  private final Path folder;

  ClipFiles(Path folder) {
    this.folder = folder;
  }

  Path weights() {
    return folder.resolve("weights");
  }

  private Path of(long id) {
    return folder.resolve(Long.toString(id));
  }

  Path stills(long id) {
    return of(id).resolve("stills");
  }

  /** Whether the coach said that the camera stood: an empty file of that name. */
  boolean stood(long id) {
    return Files.exists(of(id).resolve("stood"));
  }

  void stood(long id, boolean stood) {
    try {
      Path file = of(id).resolve("stood");
      if (!stood) {
        Files.deleteIfExists(file);
      } else if (!Files.exists(file)) {
        Files.createDirectories(of(id));
        Files.createFile(file);
      }
    } catch (IOException e) {
      throw ClipDesk.trouble("what was said of the camera could not be kept", e);
    }
  }

  Path film(long id) {
    try (Stream<Path> all = Files.list(of(id))) {
      return all.filter(p -> String.valueOf(p.getFileName()).startsWith("film.")).findFirst().orElse(of(id).resolve("film.mp4"));
    } catch (IOException e) {
      return of(id).resolve("film.mp4");
    }
  }

  Optional<Path> still(long id, int frame) {
    Path file = Stills.file(stills(id), frame);
    return Files.exists(file) ? Optional.of(file) : Optional.empty();
  }

  /** Writes what arrives to a file of its own first, so that a broken-off upload leaves no clip. */
  Path receive(InputStream film, String fileName) {
    Path to = null;
    try {
      Files.createDirectories(folder);
      to = Files.createTempFile(folder, "arriving", ".part");
      long n = 0;
      try (OutputStream out = Files.newOutputStream(to)) {
        byte[] buffer = new byte[1 << 16];
        for (int got = film.read(buffer); got >= 0; got = film.read(buffer)) {
          n += got;
          if (n > ClipDesk.MAX_FILM_BYTES) {
            throw new RefusedException(
                String.format(
                    Locale.ROOT, "The film %s is larger than %d MB. Film one rep, from run-up to sand, and at most a minute.", fileName,
                    ClipDesk.MAX_FILM_BYTES >> 20));
          }
          out.write(buffer, 0, got);
        }
      }
      if (n == 0) {
        throw new RefusedException("The film " + fileName + " is empty (0 bytes). Copy it from the phone again.");
      }
      return to;
    } catch (IOException e) {
      drop(to);
      throw ClipDesk.trouble("the film could not be written", e);
    } catch (RefusedException e) {
      drop(to);
      throw e;
    }
  }

  void keep(Path arrived, long id, String fileName) {
    int dot = fileName.lastIndexOf('.');
    String ending = dot < 0 ? "" : fileName.substring(dot + 1).toLowerCase(Locale.ROOT);
    try {
      Files.createDirectories(of(id));
      Files.move(arrived, of(id).resolve("film." + (ending.matches("[a-z0-9]{1,5}") ? ending : "mp4")), StandardCopyOption.ATOMIC_MOVE);
    } catch (IOException e) {
      throw ClipDesk.trouble("the film could not be kept", e);
    }
  }

  void drop(@org.jspecify.annotations.Nullable Path arrived) {
    if (arrived != null) {
      try {
        Files.deleteIfExists(arrived);
      } catch (IOException e) {
        throw ClipDesk.trouble("a part of a film could not be deleted", e);
      }
    }
  }

  /** Numbers of the film's frames that show a contact or its edges. */
  static Set<Integer> framesOfContacts(FoundClip points, ClipReading reading, double slowed) {
    Set<Integer> keep = new HashSet<>();
    Track track = points.track();
    for (ReadContact r : reading.contacts()) {
      Contact c = r.contact();
      double from = edge(c.touchdown_s(), c.middle_s());
      double to = edge(c.toeOff_s(), c.middle_s());
      for (int i = 0; i < track.frames(); i++) {
        double before = track.time(Math.max(0, i - BESIDE)) / slowed;
        double after = track.time(Math.min(track.frames() - 1, i + BESIDE)) / slowed;
        if (after >= from && before <= to) {
          keep.add(points.firstFrame() + i);
        }
      }
    }
    return keep;
  }

  private static double edge(@org.jspecify.annotations.Nullable Estimate time, double otherwise) {
    return time == null ? otherwise : time.p50();
  }

  void dropFilm(long id, Set<Integer> keep) {
    delete(List.of(film(id)));
    try (Stream<Path> all = Files.list(stills(id))) {
      delete(all.filter(p -> !keep.contains(frameOf(p))).toList());
    } catch (IOException e) {
      throw ClipDesk.trouble("pictures could not be listed", e);
    }
  }

  private static int frameOf(Path still) {
    String name = String.valueOf(still.getFileName());
    return name.matches("\\d{5}\\.jpg") ? Integer.parseInt(name.substring(0, 5)) : -1;
  }

  void remove(long id) {
    if (!Files.exists(of(id))) {
      return;
    }
    try (Stream<Path> all = Files.walk(of(id))) {
      delete(all.sorted(Comparator.reverseOrder()).toList());
    } catch (IOException e) {
      throw ClipDesk.trouble("the clip's folder could not be listed", e);
    }
  }

  private static void delete(List<Path> files) {
    try {
      for (Path f : files) {
        Files.deleteIfExists(f);
      }
    } catch (IOException e) {
      throw ClipDesk.trouble("a file could not be deleted", e);
    }
  }
}
