package boundwright.clip.warp;

import org.jspecify.annotations.Nullable;

/** A film whose camera stood still, and how wide it looked. */
interface StillSource extends AutoCloseable {
  /** Of the picture [px]. */
  int width();

  /** Of the picture [px]. */
  int height();

  /** Focal length [px]; the optical axis goes through the middle of the picture. */
  double focal();

  /** Where the athlete's hips are [px], smooth enough to be followed by hand: x, y. */
  double[] follow(double time_s);

  /** The next frame or null: its bytes (red, green, blue) are used again for the one after it. */
  @Nullable Still next();

  @Override
  void close();

  /** @param time_s in the film [s] */
  @SuppressWarnings("ArrayRecordComponent") // pixels on their way between neighbours, never compared
  record Still(double time_s, byte[] rgb) {}
}
