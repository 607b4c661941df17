package boundwright.clip.scan;

import boundwright.clip.Box;
import boundwright.clip.film.Film;
import boundwright.clip.film.Stretch;
import boundwright.clip.pose.Weights;
import boundwright.quantity.RefusedException;
import java.nio.file.Path;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/**
 * What to scan and how.
 *
 * @param film the file
 * @param weights folder of the networks' weights
 * @param size which landmark network
 * @param box drawn round the athlete in frame {@code boxFrame}, or null to search
 * @param boxFrame number of that frame of the film, from 0
 * @param threads that the network may use, 1 to 16
 * @param skip whether frames are left out while both feet are high, and after the athlete went out of the picture
 * @param stills folder into which the frames are written as pictures, or null for none
 * @param stretch which part of the film, at most {@link Film#MAX_SECONDS} of it; frames count from 0 at its first
 */
public record ScanOrder(
    Path film, Path weights, Weights.Size size, @Nullable Box box, int boxFrame, int threads, boolean skip,
    @Nullable Path stills, Stretch stretch) {

  /** Refuses a thread count or a frame number out of range. */
  public ScanOrder {
    if (threads < 1 || threads > 16) {
      throw new RefusedException("The network cannot use " + threads + " threads: 1 to 16.");
    }
    if (boxFrame < 0) {
      throw new RefusedException(String.format(Locale.ROOT, "The box is drawn in frame %d; frames count from 0.", boxFrame));
    }
  }

  /** The whole film. */
  public ScanOrder(
      Path film, Path weights, Weights.Size size, @Nullable Box box, int boxFrame, int threads, boolean skip, @Nullable Path stills) {
    this(film, weights, size, box, boxFrame, threads, skip, stills, Stretch.WHOLE);
  }

  /** The same for a part of the film. */
  public ScanOrder withStretch(Stretch part) {
    return new ScanOrder(film, weights, size, box, boxFrame, threads, skip, stills, part);
  }

  /** The same with pictures. */
  public ScanOrder withStills(Path folder) {
    return new ScanOrder(film, weights, size, box, boxFrame, threads, skip, folder, stretch);
  }

  /** The same with a box drawn in a frame. */
  public ScanOrder withBox(@Nullable Box drawn, int frame) {
    return new ScanOrder(film, weights, size, drawn, frame, threads, skip, stills, stretch);
  }

  /** A search of the whole picture with the usual network. */
  public static ScanOrder of(Path film, Path weights) {
    return new ScanOrder(film, weights, Weights.Size.FULL, null, 0, 1, true, null);
  }
}
