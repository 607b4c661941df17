package boundwright.clip.camera;

import boundwright.clip.Box;
import org.jspecify.annotations.Nullable;

/** Finds corners in a picture and finds them again in another one. What a library has to do for following the ground, and no more. */
interface Corners {
  /** A picture prepared for it; what is inside is the library's own. */
  interface Seen {}

  /**
   * Corners found again.
   *
   * @param a x and y of each corner in the first picture [small px]
   * @param b the same in the other one
   * @param fits which of them follow one map of the plane
   * @param map that map from the first to the other picture, row by row, ninth number 1; null if too few fit
   */
  @SuppressWarnings("ArrayRecordComponent")
  record Found(float[] a, float[] b, boolean[] fits, double @Nullable [] map) {
    int fitting() {
      int n = 0;
      for (boolean f : fits) {
        n += f ? 1 : 0;
      }
      return n;
    }
  }

  /** Prepares a picture; {@code hidden} is where the athlete is [small px], or null. */
  Seen see(Gray picture, @Nullable Box hidden);

  /** How many corners can be held on to. */
  int corners(Seen picture);

  /**
   * Finds the corners of a picture again in another one.
   *
   * @param most how many are looked for at most
   * @param guess map from the first to the other picture as far as known
   * @param near whether the guess is good to about two pixels
   */
  Found again(Seen from, Seen to, int most, double[] guess, boolean near);
}
