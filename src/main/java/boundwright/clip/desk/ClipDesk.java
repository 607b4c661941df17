package boundwright.clip.desk;

import boundwright.athlete.Surface;
import boundwright.clip.Box;
import boundwright.clip.FoundClip;
import boundwright.clip.camera.CameraPath;
import boundwright.clip.keep.FilmStore;
import boundwright.clip.reading.ClipReader;
import boundwright.clip.reading.ClipReading;
import boundwright.clip.reading.Correction;
import boundwright.clip.reading.Setup;
import boundwright.clip.scan.ScanOrder;
import boundwright.clip.scan.ScanProcess;
import boundwright.clip.scan.Stills;
import boundwright.flight.Logbook;
import boundwright.flight.Rep;
import boundwright.footfall.Sequence;
import boundwright.quantity.RefusedException;
import boundwright.technique.FootContact;
import boundwright.technique.LookRepository;
import java.io.InputStream;
import java.nio.file.Path;
import java.time.Clock;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.LongConsumer;
import org.jspecify.annotations.Nullable;

/** Everything that a coach does with clips. Safe to use from many threads. */
public final class ClipDesk {
  /** Largest film taken in [bytes]; a minute of a phone's best is below it (judgement). */
  public static final long MAX_FILM_BYTES = 1L << 30;

  private final ClipRepository clips;
  private final ClipQueue queue;
  private final ClipFiles files;
  private final LookRepository looks;
  private final Clock clock;
  private final ClipWorker reader;
  private final ClipLabels labels;
  private final Lessons lessons;
  private final Nods nods;

  /** How a film is read; the program does it in a child process. */
  public interface Scan {
    /** Reads a film; see {@link ScanProcess#scan}. */
    FoundClip scan(ScanOrder order, Progress progress) throws InterruptedException;
  }

  /** Told how much of a film was read. */
  public interface Progress {
    /** Per mille, 0 to 1000. */
    void at(int perMille);
  }

  /** A desk whose films arrive in {@code folder} and are kept in {@code kept}; {@code scan} reads them, {@code parts} tells which are parts of longer films. */
  public ClipDesk(
      ClipRepository clips, ClipQueue queue, Path folder, FilmStore kept, Logbook logbook, LookRepository looks, Clock clock, Scan scan,
      FilmParts parts) {
    this.clips = clips;
    this.queue = queue;
    this.files = new ClipFiles(folder, kept);
    this.looks = looks;
    this.clock = clock;
    TaughtFiles taught = new TaughtFiles(folder);
    this.labels = new ClipLabels(files, taught, clock);
    this.lessons = new Lessons(clips, labels, taught, clock);
    this.nods = new Nods(clips, logbook, parts, labels);
    this.reader = new ClipWorker(clips, files, parts, scan, this::dropFilm);
  }

  /** What agreed clips can teach. */
  public Lessons lessons() {
    return lessons;
  }

  /** Begins to work through the queue. A clip that came in when the program stopped, before it was queued, is queued now. */
  public void start() {
    clips.all().stream()
        .filter(c -> c.state() == ClipState.WAITING)
        .sorted(Comparator.comparingLong(ClipRecord::id))
        .forEach(c -> queue.addMissing(c.id()));
    queue.start(reader::read);
  }

  /**
   * Takes a film in and queues it.
   *
   * @param film read to its end, closed by the caller
   * @throws RefusedException if the film is empty or above {@link #MAX_FILM_BYTES}
   */
  public ClipRecord take(
      long athleteId, @Nullable LocalDate date, String fileName, InputStream film, @Nullable Sequence sequence, int approachSteps,
      Surface surface, @Nullable Double markToSand_m) {
    Path arrived = files.receive(film, fileName);
    ClipRecord kept = null;
    try {
      kept =
          clips.add(
              new ClipRecord(
                  0, athleteId, date == null ? LocalDate.now(clock) : date, fileName, sequence, approachSteps, surface, markToSand_m,
                  ClipState.WAITING, 0, null, true, null, 0, Setup.none(), List.of(), 0, clock.instant()));
      files.keep(arrived, kept.id(), fileName);
    } catch (RuntimeException e) {
      files.drop(arrived);
      if (kept != null) {
        clips.remove(kept.id());
      }
      throw e;
    }
    queue.add(kept.id());
    return kept;
  }

  /**
   * Queues a part of a longer film, see {@link FilmParts}; the film stays where it is.
   *
   * @param clip without number; waiting
   * @param kept told the number before the part is read
   */
  public ClipRecord takePart(ClipRecord clip, LongConsumer kept) {
    ClipRecord added = clips.add(clip);
    kept.accept(added.id());
    queue.add(added.id());
    return added;
  }

  /** All clips, newest first. */
  public List<ClipRecord> all() {
    return clips.all();
  }

  /** One clip. */
  public ClipRecord clip(long id) {
    return clips.find(id).orElseThrow(() -> new RefusedException("There is no clip " + id + ". It may have been removed: look at the list."));
  }

  /** Calls a clip off. */
  public void cancel(long id) {
    if (clip(id).state() == ClipState.WAITING || clip(id).state() == ClipState.READING) {
      clips.state(id, ClipState.CANCELLED, 0, null);
      queue.cancel(id);
    }
  }

  /** Puts a clip into the queue again, with a box round the athlete if one is given. Corrections and marks are kept. */
  public void retry(long id, @Nullable Box box, int frame) {
    ClipRecord clip = clip(id);
    if (!clip.state().canRetry()) {
      throw new RefusedException("Clip " + id + " is " + clip.state().label() + ": wait for it, or call it off first.");
    }
    if (!clip.filmKept()) {
      throw new RefusedException("The film of clip " + id + " was dropped after it was read, so it cannot be read again. Its body points and corrections are kept.");
    }
    labels.drop(id);
    clips.box(id, box, frame);
    clips.state(id, ClipState.WAITING, 0, null);
    queue.add(id);
  }

  /**
   * The clip as it reads now, with marks and corrections.
   *
   * @throws RefusedException if it was not read yet, or marks or corrections cannot hold
   */
  public ClipReading reading(long id) {
    ClipRecord clip = clip(id);
    return read(clip, points(clip));
  }

  /** A clip's points as they read with its marks and corrections, judged by what the coach teaches from its approach. */
  public ClipReading read(ClipRecord clip, FoundClip points) {
    return read(clip, points, clip.setup(), clip.corrections());
  }

  private ClipReading read(ClipRecord clip, FoundClip points, Setup setup, List<Correction> corrections) {
    return ClipReader.read(points, setup, corrections, clip.sequence(), taught(clip), labels.reader(clip));
  }

  /** What a clip is read with now. */
  public Basis basis(ClipRecord clip) {
    return new Basis(stood(clip.id()), labels.reader(clip));
  }

  /** How the foot is taught to meet the ground from the clip's approach. */
  public FootContact taught(ClipRecord clip) {
    return looks.teaching().at(clip.approachSteps());
  }

  /** The raw body points, with what the coach said of the camera. */
  public FoundClip points(ClipRecord clip) {
    FoundClip found = found(clip);
    return files.stood(clip.id()) ? found.onTripod() : found;
  }

  /** Whether only the coach can tell if the camera stood, because the background shows nothing to hold on to. */
  public boolean cameraUnknown(ClipRecord clip) {
    return found(clip).camera().kind() == CameraPath.Kind.PLAIN;
  }

  /** Whether the coach said that the camera stood still. */
  public boolean stood(long id) {
    return files.stood(id);
  }

  private FoundClip found(ClipRecord clip) {
    return clips.points(clip.id()).orElseThrow(
        () -> new RefusedException("Clip " + clip.id() + " is " + clip.state().label() + " and has no body points. Wait until it is read, or have it read again."));
  }

  /** Sets marks and scale, if the clip can be read with them; nothing changes otherwise. */
  public ClipReading setup(long id, Setup setup) {
    return setup(id, setup, stood(id));
  }

  /** The same with the coach's word whether the camera stood still. */
  public ClipReading setup(long id, Setup setup, boolean stood) {
    ClipRecord clip = clip(id);
    FoundClip found = found(clip);
    ClipReading reading = read(clip, stood ? found.onTripod() : found, setup, clip.corrections());
    files.stood(id, stood);
    if (setup.slowed() != clip.setup().slowed()) {
      labels.drop(id);
    }
    clips.setup(id, setup);
    return reading;
  }

  /** Adds a correction, if the clip can be read with it; nothing changes otherwise. */
  public ClipReading correct(long id, Correction correction) {
    ClipRecord clip = clip(id);
    List<Correction> all = new ArrayList<>(clip.corrections());
    all.add(correction);
    ClipReading reading = read(clip, points(clip), clip.setup(), all);
    labels.touch(clip);
    // what was agreed to were other contacts
    labels.drop(id);
    clips.corrections(id, all);
    return reading;
  }

  /** Takes back the last correction; nothing happens if there is none. */
  public void undo(long id) {
    List<Correction> all = new ArrayList<>(clip(id).corrections());
    if (!all.isEmpty()) {
      all.remove(all.size() - 1);
      labels.drop(id);
      clips.corrections(id, all);
    }
  }

  /**
   * Logs the rep after the coach has nodded.
   *
   * @throws RefusedException if it was logged already, or as {@link SeenRep#of}
   */
  public synchronized Rep log(long id, List<String> faults) {
    ClipRecord clip = clip(id);
    Nods.refuseLogged(clip);
    return nods.log(clip, reading(id), faults);
  }

  /**
   * Keeps the contacts as they read now as agreed to: the coach looked at each of them on the clip's page.
   *
   * @throws RefusedException if none has a touchdown
   */
  public synchronized void agree(long id) {
    ClipRecord clip = clip(id);
    FoundClip points = points(clip);
    ClipReading reading = read(clip, points);
    labels.touch(clip);
    labels.keep(clip, points, reading);
  }

  /** Whether the contacts were agreed to as they are. */
  public boolean agreed(long id) {
    return labels.agreed(id);
  }

  /** Takes the logged rep back; the clip stays. Of a rep that was tapped only the lengths are taken back. */
  public synchronized void unlog(long id) {
    nods.takeBack(clip(id));
  }

  /** The picture of a frame of the film, from 0; empty where there is none (any more). */
  public Optional<Path> still(long id, int frame) {
    return files.still(id, frame);
  }

  /** Size of the film's own pictures, known as soon as the first of them was read. */
  public Optional<Stills.Full> pictureSize(long id) {
    return Stills.full(files.kept().pictures(id));
  }

  /** Drops the film and all pictures but those of the contacts. */
  public void dropFilm(long id) {
    ClipRecord clip = clip(id);
    FoundClip points = points(clip);
    ClipReading reading = read(clip, points);
    files.dropFilm(id, ClipFiles.framesOfContacts(points, reading, clip.setup().slowed()));
    clips.filmGone(id);
  }

  /** Removes a clip with all that belongs to it; a logged rep stays. */
  public void remove(long id) {
    cancel(id);
    // first what shows somebody: if that cannot be removed now, the clip is still in the list, to be removed again
    files.remove(id);
    clips.remove(id);
  }

  /** Takes away every clip of an athlete with its film, pictures and points, before the athlete is erased. */
  public void removeAll(long athleteId) {
    clips.of(athleteId).forEach(c -> remove(c.id()));
  }

  /** Whether films are kept after they were read. */
  public boolean keepFilms() {
    return clips.keepFilms();
  }

  /** Sets {@link #keepFilms} for films read from now on. */
  public void keepFilms(boolean keep) {
    clips.keepFilms(keep);
  }
}
