package boundwright.clip.film;

/**
 * What a film says of itself. Times of frames are never made from these: each frame has its own.
 *
 * @param codec short name of the coding, for example {@code h264}
 * @param width of the picture as shown, after turning [px]
 * @param height of the picture as shown [px]
 * @param turnedDeg by how much the stored picture is turned clockwise to be shown: 0, 90, 180 or 270
 * @param timeBaseNum numerator of the unit of the presentation times
 * @param timeBaseDen denominator of it
 * @param frames frames read with a picture
 * @param seconds from the first frame's time to the last one's [s]
 * @param captureFps frames per second at which the phone filmed, from the file's own tag; NaN when it has none
 */
public record FilmFacts(
    String codec, int width, int height, int turnedDeg, int timeBaseNum, int timeBaseDen, int frames, double seconds, double captureFps) {

  /** Frames shown in a second, over the whole film; NaN for fewer than two frames. */
  public double shownFps() {
    return frames < 2 || !(seconds > 0) ? Double.NaN : (frames - 1) / seconds;
  }

  /**
   * How many times slower the film plays than its own tag says it was filmed; 1 where it has no tag, or the two are within
   * a tenth of each other (judgement: phones do not keep their rate better).
   */
  public double slowedByTag() {
    double times = captureFps / shownFps();
    return times > 1.1 && times <= 40 ? Math.rint(times * 1000) / 1000 : 1;
  }
}
