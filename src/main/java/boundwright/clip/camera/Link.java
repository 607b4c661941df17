package boundwright.clip.camera;

/**
 * The same corners of the background in two pictures.
 *
 * @param from number of the earlier picture among those that were followed
 * @param to number of the later one
 * @param a x and y of each corner in the earlier picture [small px]
 * @param b the same in the later one
 */
@SuppressWarnings("ArrayRecordComponent")
record Link(int from, int to, float[] a, float[] b) {
  int size() {
    return a.length / 2;
  }
}
