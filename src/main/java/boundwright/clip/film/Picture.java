package boundwright.clip.film;

/**
 * One decoded picture, turned upright as it is shown.
 *
 * @param width [px]
 * @param height [px]
 * @param rgb red, green, blue, one byte each, row by row from the top left; not copied, because a picture weighs
 *     megabytes: whoever made it may use it again for the next frame
 */
@SuppressWarnings("ArrayRecordComponent")
public record Picture(int width, int height, byte[] rgb) {
  /** Refuses a buffer too small for the size. */
  public Picture {
    if (rgb.length < 3L * width * height) {
      throw new IllegalArgumentException(width + " x " + height + " needs " + 3L * width * height + " bytes, not " + rgb.length);
    }
  }
}
