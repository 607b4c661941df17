package boundwright.clip.desk;

import boundwright.clip.FoundClip;
import boundwright.clip.contact.Contact;
import boundwright.clip.keep.FilmStore;
import boundwright.clip.pose.Weights;
import boundwright.clip.reading.ClipReading;
import boundwright.clip.reading.ReadContact;
import boundwright.clip.scan.Stills;
import boundwright.clip.track.Track;
import boundwright.quantity.Estimate;
import boundwright.quantity.RefusedException;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** Where films and pictures lie: one folder a clip. */
final class ClipFiles extends FilmFolder {
  /** Pictures beside a contact that are kept when the film goes, on each side. */
  private static final int BESIDE = 4;

  ClipFiles(Path folder, FilmStore store) {
    super(folder, store);
  }

  Path weights() {
    return Weights.folder(folder());
  }

  /** The contacts that a coach agreed to. */
  Path label(long id) {
    return of(id).resolve("agreed.label");
  }

  /** The name of the weights that a clip is read with since a hand touched it; no file for those of the program. */
  Path readBy(long id) {
    return of(id).resolve("read-by");
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
      throw new UncheckedIOException("what was said of the camera could not be kept", e);
    }
  }

  Optional<Path> still(long id, int frame) {
    Path file = Stills.file(kept().pictures(id), frame);
    return Files.exists(file) ? Optional.of(file) : Optional.empty();
  }

  /** Takes the film of one rep in. */
  Path receive(InputStream film, String fileName) {
    return receive(
        film,
        fileName,
        (bytes, piece) -> {
          if (bytes > ClipDesk.MAX_FILM_BYTES) {
            throw new RefusedException(
                String.format(
                    Locale.ROOT, "The film %s is larger than %d MB. Film one rep, from run-up to sand, and at most a minute.", fileName,
                    ClipDesk.MAX_FILM_BYTES >> 20));
          }
        });
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

  private static double edge(@Nullable Estimate time, double otherwise) {
    return time == null ? otherwise : time.p50();
  }

  void dropFilm(long id, Set<Integer> keep) {
    kept().dropPictures(id, name -> !keep.contains(frameOf(name)));
    kept().dropFilm(id);
  }

  private static int frameOf(String name) {
    return name.matches("\\d{5}\\.jpg") ? Integer.parseInt(name.substring(0, 5)) : -1;
  }
}
