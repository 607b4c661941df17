package boundwright.clip.film;

import java.nio.file.Path;
import java.util.Arrays;
import org.bytedeco.ffmpeg.avformat.AVIndexEntry;
import org.bytedeco.ffmpeg.avformat.AVStream;
import org.bytedeco.ffmpeg.global.avcodec;
import org.bytedeco.ffmpeg.global.avformat;
import org.jspecify.annotations.Nullable;

/**
 * A long film to be glanced through: frames are decoded roughly, and only those that somebody looks at become pictures, small or whole.
 * Not for use by two threads at once.
 */
public final class Glance implements AutoCloseable {
  /** Longest film [s]. */
  public static final double MOST_S = 7200;
  /** Longer side of the small picture [px]. */
  public static final int SMALL = 192;

  private final Film film;
  private final int width;
  private final int height;
  private final Upright small;
  private final byte[] smallBytes;
  private @Nullable Upright whole;
  private byte @Nullable [] wholeBytes;

  private Glance(Film film) {
    this.film = film;
    FilmFacts facts = film.facts();
    boolean swapped = facts.turnedDeg() % 180 != 0;
    width = swapped ? facts.height() : facts.width();
    height = swapped ? facts.width() : facts.height();
    double less = (double) SMALL / Math.max(width, height);
    int w = Math.max(2, (int) Math.round(width * less) & ~1);
    int h = Math.max(2, (int) Math.round(height * less) & ~1);
    small = new Upright(w, h, film.turn());
    smallBytes = new byte[3 * w * h];
  }

  /**
   * Opens a film.
   *
   * @throws boundwright.quantity.RefusedException as {@link Film#open(Path)}, with {@link #MOST_S} as the longest
   */
  public static Glance open(Path file) {
    Film film = Film.rough(file, MOST_S);
    try {
      return new Glance(film);
    } catch (RuntimeException e) {
      film.close();
      throw e;
    }
  }

  /** What the file says of itself. */
  public FilmFacts facts() {
    return film.facts();
  }

  /** How long the file says it is [s]; 0 when it does not say. */
  public double statedSeconds() {
    return film.statedSeconds();
  }

  /** Usual time between two key pictures by the file's index [s]; NaN without one. */
  public double keySpacing_s() {
    AVStream stream = film.stream();
    int n = avformat.avformat_index_get_entries_count(stream);
    double[] gaps = new double[n];
    int found = 0;
    long before = Long.MIN_VALUE;
    for (int i = 0; i < n; i++) {
      AVIndexEntry entry = avformat.avformat_index_get_entry(stream, i);
      if ((entry.flags() & AVIndexEntry.AVINDEX_KEYFRAME) != 0) {
        if (before != Long.MIN_VALUE) {
          gaps[found++] = Film.seconds(entry.timestamp() - before, stream.time_base().num(), stream.time_base().den());
        }
        before = entry.timestamp();
      }
    }
    if (found == 0 || found >= n - 2) {
      // pictures that are all key pictures, or none known: nothing can be left out
      return Double.NaN;
    }
    Arrays.sort(gaps, 0, found);
    return gaps[found >> 1];
  }

  /** Goes to the last key picture at or before a time [s]. */
  public void seek(double to_s) {
    film.seek(to_s);
  }

  /** Whether only key pictures are decoded from here on; the others are not even read. */
  public void keysOnly(boolean only) {
    film.stream().discard(only ? avcodec.AVDISCARD_NONKEY : avcodec.AVDISCARD_DEFAULT);
    film.natives().decoder.skip_frame(only ? avcodec.AVDISCARD_NONKEY : avcodec.AVDISCARD_DEFAULT);
  }

  /** Decodes the next frame and answers its own time [s]; NaN after the last. */
  public double next() {
    return film.advance() ? film.lastSeconds() : Double.NaN;
  }

  /** The frame decoded last, made small; its bytes are used again for the next. */
  public Picture small() {
    return small.picture(film.natives().frame, smallBytes);
  }

  /** The frame decoded last as it is shown; its bytes are used again for the next. */
  public Picture picture() {
    Upright up = whole;
    byte[] to = wholeBytes;
    if (up == null || to == null) {
      up = new Upright(width, height, film.turn());
      to = film.buffer();
      whole = up;
      wholeBytes = to;
    }
    return up.picture(film.natives().frame, to);
  }

  /** Whether the file ends before it says it does. */
  public boolean brokenOff() {
    return film.brokenOff();
  }

  @Override
  public void close() {
    small.close();
    if (whole != null) {
      whole.close();
    }
    film.close();
  }
}
