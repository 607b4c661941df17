package boundwright.clip;

import boundwright.clip.camera.CameraPath;
import boundwright.clip.film.FilmFacts;
import boundwright.clip.track.Track;
import java.util.List;

/**
 * What was read off a film, before any judgement: the raw body points of one athlete, kept for ever, so that everything
 * after it can be computed again.
 *
 * @param film what the file says of itself
 * @param firstFrame number of the film's frame that is frame 0 of the track
 * @param track body points as the network gave them [px], one entry for every frame of the film in which the athlete was
 *     followed, with its presentation time [s]; frames that were skipped on purpose are there without points
 * @param networkFrames how many frames the network looked at
 * @param remarks sentences for the coach, for example that a second person was seen
 * @param camera where the camera looked in each frame of the track
 */
public record FoundClip(FilmFacts film, int firstFrame, Track track, int networkFrames, List<String> remarks, CameraPath camera) {
  /** Copies the remarks. */
  public FoundClip {
    remarks = List.copyOf(remarks);
  }

  /**
   * The same for a coach who knows that the camera stood, on a tripod say. It only counts where the background tells nothing: a camera
   * that was seen to move did.
   */
  public FoundClip onTripod() {
    return camera.kind() == CameraPath.Kind.PLAIN ? new FoundClip(film, firstFrame, track, networkFrames, remarks) : this;
  }

  /** What was read off a film whose camera stood. */
  public FoundClip(FilmFacts film, int firstFrame, Track track, int networkFrames, List<String> remarks) {
    this(film, firstFrame, track, networkFrames, remarks, CameraPath.stood());
  }
}
