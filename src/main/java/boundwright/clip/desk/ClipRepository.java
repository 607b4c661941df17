package boundwright.clip.desk;

import boundwright.clip.Box;
import boundwright.clip.FoundClip;
import boundwright.clip.reading.Correction;
import boundwright.clip.reading.Setup;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** Where clips are kept. Each call is one transaction; a change of a clip that is not there does nothing. */
public interface ClipRepository {
  /** Stores a new clip and gives it a number. */
  ClipRecord add(ClipRecord clip);

  /** One clip. */
  Optional<ClipRecord> find(long id);

  /** All clips, newest first. */
  List<ClipRecord> all();

  /** Clips of an athlete, newest first. */
  List<ClipRecord> of(long athleteId);

  /** Sets state, progress and the sentence of refusal. */
  void state(long id, ClipState state, int perMille, @Nullable String trouble);

  /** Sets the state to READING if the clip waits or was being read before; false otherwise, so that nobody reads it. */
  boolean claim(long id);

  /** Sets progress only while the clip is being read; false if it no longer is, so that the reader stops. */
  boolean progress(long id, int perMille);

  /** Keeps the body points, for ever, and sets the state to READ. */
  void found(long id, FoundClip found);

  /** The body points. */
  Optional<FoundClip> points(long id);

  /** Sets marks and scale. */
  void setup(long id, Setup setup);

  /** Sets the box round the athlete. */
  void box(long id, @Nullable Box box, int frame);

  /** Sets all corrections. */
  void corrections(long id, List<Correction> corrections);

  /** Says which rep was logged from it. */
  void logged(long id, long repId);

  /**
   * Keeps how long each contact of the logged rep was on the ground, in place of what was kept before; it counts while the rep is there.
   *
   * @param seconds in order [s]; NaN where an end was not seen well
   */
  void contactTimes(long id, List<Double> seconds);

  /** Says that the film is gone. */
  void filmGone(long id);

  /** Takes the clip out, with points and corrections. */
  void remove(long id);

  /** Whether films are kept after they were read; true until the coach sets it. */
  boolean keepFilms();

  /** Sets {@link #keepFilms}. */
  void keepFilms(boolean keep);
}
