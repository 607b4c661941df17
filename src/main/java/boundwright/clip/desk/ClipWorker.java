package boundwright.clip.desk;

import boundwright.clip.FoundClip;
import boundwright.clip.keep.FilmStore;
import boundwright.clip.keep.FilmsAwayException;
import boundwright.clip.scan.ScanOrder;
import boundwright.quantity.RefusedException;
import java.nio.file.Path;
import java.util.Optional;
import java.util.function.LongConsumer;
import org.jspecify.annotations.Nullable;

/** Reads the films of clips as the queue hands them over: brings the film, has it read, keeps pictures and body points. */
final class ClipWorker {
  /** The pictures of a clip go together. */
  private static final String PACK = "all";

  private final ClipRepository clips;
  private final ClipFiles files;
  private final FilmParts parts;
  private final ClipDesk.Scan scan;
  private final LongConsumer dropFilm;

  /** @param dropFilm drops a film that was read, where films are not kept */
  ClipWorker(ClipRepository clips, ClipFiles files, FilmParts parts, ClipDesk.Scan scan, LongConsumer dropFilm) {
    this.clips = clips;
    this.files = files;
    this.parts = parts;
    this.scan = scan;
    this.dropFilm = dropFilm;
  }

  /**
   * Reads one clip, see {@link ClipQueue.Worker}.
   *
   * @throws FilmsAwayException if the store of the films cannot be reached; the clip waits again then
   */
  void read(long id) throws InterruptedException {
    if (!clips.claim(id)) {
      return;
    }
    ClipRecord clip = clips.find(id).orElse(null);
    if (clip == null) {
      return;
    }
    try {
      if (!readNow(clip)) {
        return;
      }
    } catch (FilmsAwayException e) {
      clips.state(id, ClipState.WAITING, 0, null);
      throw e;
    } catch (RefusedException e) {
      clips.state(id, ClipState.REFUSED, 0, e.getMessage());
      return;
    } catch (RuntimeException e) {
      clips.state(
          id, ClipState.REFUSED, 0,
          "The program failed while it read the clip (" + e + "). Have it read again; if it fails again, report this with the lines that the program wrote.");
      throw e;
    } finally {
      files.kept().forgetNewPictures(id);
    }
    // outside: a film that cannot be dropped is still a film that was read
    if (!clips.keepFilms()) {
      dropFilm.accept(id);
    }
  }

  /** Whether there still was such a clip at the end. */
  private boolean readNow(ClipRecord clip) throws InterruptedException {
    long id = clip.id();
    Optional<FilmParts.Part> part = parts.of(id);
    FilmStore.Source film = part.map(FilmParts.Part::film).orElse(() -> files.kept().film(id));
    FoundClip points = null;
    String refused = null;
    try (FilmStore.Brought brought = film.bring()) {
      Path file = brought.path();
      try {
        points = scan.scan(order(clip, file, part.orElse(null)), stoppable(id));
      } catch (RefusedException e) {
        // the coach knows the film by the name it came with, not by the one it lies under here
        refused = String.valueOf(e.getMessage()).replace(String.valueOf(file.getFileName()), clip.fileName());
      }
    }
    // also of a film that was refused: a box round the athlete is drawn on them
    files.kept().keepPictures(id, PACK);
    if (points != null) {
      clips.found(id, points);
    } else {
      clips.state(id, ClipState.REFUSED, 0, refused);
    }
    if (clips.find(id).isEmpty()) {
      // removed while it was read: nothing of it stays
      files.remove(id);
    }
    return points != null;
  }

  private ClipDesk.Progress stoppable(long id) {
    Thread self = Thread.currentThread();
    return perMille -> {
      if (!clips.progress(id, perMille)) {
        self.interrupt();
      }
    };
  }

  private ScanOrder order(ClipRecord clip, Path film, FilmParts.@Nullable Part part) {
    ScanOrder whole = ScanOrder.of(film, files.weights());
    ScanOrder order = part == null ? whole : whole.withStretch(part.stretch());
    return order.withStills(files.kept().newPictures(clip.id())).withBox(clip.box(), clip.boxFrame());
  }
}
