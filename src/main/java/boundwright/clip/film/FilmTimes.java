package boundwright.clip.film;

/**
 * The times of all frames of a film, read without making a picture of any.
 *
 * @param facts what the file says of itself, frames and seconds counted over the whole film
 * @param pts presentation times in units of the time base, in the order shown; not copied
 * @param brokenOff whether the file ends before it says it does, or parts of it could not be decoded
 */
@SuppressWarnings("ArrayRecordComponent")
public record FilmTimes(FilmFacts facts, long[] pts, boolean brokenOff) {

  /** Time of a frame [s]; {@code frame} from 0 to below {@code pts.length}. */
  public double seconds(int frame) {
    return Film.seconds(pts[frame], facts.timeBaseNum(), facts.timeBaseDen());
  }
}
