package boundwright.clip.film;

import boundwright.quantity.RefusedException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Locale;
import org.bytedeco.ffmpeg.avcodec.AVCodecParameters;
import org.bytedeco.ffmpeg.avformat.AVIndexEntry;
import org.bytedeco.ffmpeg.avformat.AVStream;
import org.bytedeco.ffmpeg.avutil.AVDictionary;
import org.bytedeco.ffmpeg.avutil.AVDictionaryEntry;
import org.bytedeco.ffmpeg.avutil.AVFrame;
import org.bytedeco.ffmpeg.avutil.AVRational;
import org.bytedeco.ffmpeg.global.avcodec;
import org.bytedeco.ffmpeg.global.avformat;
import org.bytedeco.ffmpeg.global.avutil;
import org.jspecify.annotations.Nullable;

/**
 * An open film, read once from the first frame to the last. Each frame has the presentation time the file gives it;
 * uneven spacing stays as it is. Not for use by two threads at once.
 */
public final class Film implements AutoCloseable {
  /** Longest side of the picture that is read [px]; 8K films are above it. */
  public static final int MAX_SIDE_PX = 4096;

  /** Longest film of one rep that is read [s], measured as played; of a part of a longer film, the part. */
  public static final double MAX_SECONDS = 60;

  /** A file of a kind without index is called broken off if it ends this much before it says it does [s]. */
  private static final double SHORT_S = 0.5;

  /** Two times nearer than this are the same [s]: a stretch's ends are written as decimals. */
  private static final double SAME_S = 1e-4;

  /** After the last packet a decoder has a few pictures left; more errors than this mean that it is stuck. */
  private static final int MAX_DRAIN_ERRORS = 64;

  private final String name;
  private final Natives natives = new Natives();
  private final Stretch stretch;
  /** Longest that is read [s]. */
  private final double most_s;
  private final AVStream stream;
  private final Turn turn;
  private final int storedWidth;
  private final int storedHeight;
  private @Nullable Upright upright;
  private byte @Nullable [] own;
  private boolean draining;
  private boolean brokenOff;
  private boolean closed;
  private int drainErrors;
  private int frames;
  private long firstPts;
  private long lastPts;
  /** Latest end of any packet of any track [s]. */
  private double packetsEnd_s = Double.NaN;

  private Film(Path file, boolean rough, Stretch stretch, double most_s) {
    name = FilmFile.name(file);
    this.stretch = stretch;
    this.most_s = most_s;
    boolean opened = false;
    try {
      FilmFile.check(file);
      stream = Opened.video(natives, file, name);
      AVCodecParameters coded = stream.codecpar();
      turn = Opened.turn(coded);
      storedHeight = coded.height();
      storedWidth = Opened.squareWidth(coded);
      refuseTooLarge(Math.max(storedWidth, storedHeight));
      refuseTooLong(stretch.isPart() ? stretch.seconds() : statedSeconds());
      Opened.decoder(natives, stream, name, rough);
      brokenOff = indexPastEnd();
      if (stretch.from_s() > 0) {
        seek(stretch.from_s());
      }
      opened = true;
    } finally {
      if (!opened) {
        natives.close();
      }
    }
  }

  /**
   * Opens a film.
   *
   * @throws RefusedException if there is no such file, it is empty or no film, has no index or no picture, is larger than
   *     {@link #MAX_SIDE_PX} or longer than {@link #MAX_SECONDS}
   */
  public static Film open(Path file) {
    return open(file, Stretch.WHOLE);
  }

  /**
   * Opens a part of a film, which may be longer than {@link #MAX_SECONDS} itself. Frames count from 0 at the part's first.
   *
   * @throws RefusedException as {@link #open(Path)}, the part in place of the film
   */
  public static Film open(Path file, Stretch stretch) {
    return new Film(file, false, stretch, MAX_SECONDS);
  }

  /** A film to be glanced through, at most so long [s]. */
  static Film rough(Path file, double most_s) {
    return new Film(file, true, Stretch.WHOLE, most_s);
  }

  /**
   * Times of all frames, decoded but never turned into pictures.
   *
   * @throws RefusedException as {@link #open} and {@link #next}
   */
  public static FilmTimes times(Path file) {
    try (Film film = new Film(file, true, Stretch.WHOLE, MAX_SECONDS)) {
      long[] pts = new long[256];
      while (film.advance()) {
        if (film.frames > pts.length) {
          pts = Arrays.copyOf(pts, 2 * pts.length);
        }
        pts[film.frames - 1] = film.lastPts;
      }
      return new FilmTimes(film.facts(), Arrays.copyOf(pts, film.frames), film.brokenOff);
    }
  }

  static double seconds(long pts, int num, int den) {
    return (double) pts * num / den;
  }

  /** What the file says of itself; frames and seconds count what has been read so far. */
  public FilmFacts facts() {
    AVCodecParameters coded = stream.codecpar();
    return new FilmFacts(avcodec.avcodec_get_name(coded.codec_id()).getString(StandardCharsets.UTF_8),
        turn.swaps() ? storedHeight : storedWidth, turn.swaps() ? storedWidth : storedHeight, turn.deg(),
        stream.time_base().num(), stream.time_base().den(), frames, frames == 0 ? 0 : seconds(lastPts - firstPts), captureFps());
  }

  /** How many frames the file's header promises; 0 when it does not say. For showing progress only. */
  public long promisedFrames() {
    long all = stream.nb_frames();
    double whole = statedSeconds();
    return stretch.isPart() && whole > 0 ? (long) (all * Math.min(1, stretch.seconds() / whole)) : all;
  }

  /** How long the file says it is [s]; 0 when it does not say. */
  double statedSeconds() {
    long ticks = natives.format.duration();
    return ticks == avutil.AV_NOPTS_VALUE ? 0 : ticks / (double) avutil.AV_TIME_BASE;
  }

  /** Goes to the last key picture at or before a time [s]; where the file has no index, to where it gets nearest. */
  void seek(double to_s) {
    AVRational base = stream.time_base();
    long pts = (long) Math.floor(to_s * base.den() / base.num());
    if (avformat.av_seek_frame(natives.format, stream.index(), pts, avformat.AVSEEK_FLAG_BACKWARD) >= 0) {
      avcodec.avcodec_flush_buffers(natives.decoder);
      draining = false;
    }
  }

  AVStream stream() {
    return stream;
  }

  Turn turn() {
    return turn;
  }

  Natives natives() {
    return natives;
  }

  /** Time of the frame that was decoded last [s]. */
  double lastSeconds() {
    return seconds(lastPts);
  }

  /**
   * Whether the file ends before it says it does, or parts of it could not be decoded. Known for sure once {@link #next}
   * has given null.
   */
  public boolean brokenOff() {
    return brokenOff;
  }

  /**
   * The next frame in the order shown, or null after the last; its picture is overwritten by the next.
   *
   * @throws RefusedException if a frame has no time of its own, the film runs on past {@link #MAX_SECONDS}, or it ended
   *     without a single picture
   */
  public @Nullable Frame next() {
    if (own == null) {
      own = buffer();
    }
    return next(own);
  }

  /** A buffer for one picture of this film, see {@link #next(byte[])}. */
  public byte[] buffer() {
    return new byte[3 * storedWidth * storedHeight];
  }

  /**
   * The next frame in the order shown, or null after the last.
   *
   * @param into its picture's bytes, see {@link #buffer}
   * @throws RefusedException as {@link #next()}
   */
  public @Nullable Frame next(byte[] into) {
    if (!advance()) {
      return null;
    }
    if (upright == null) {
      upright = new Upright(storedWidth, storedHeight, turn);
    }
    return new Frame(frames - 1, lastPts, seconds(lastPts), upright.picture(natives.frame, into));
  }

  @Override
  public void close() {
    if (closed) {
      return;
    }
    closed = true;
    if (upright != null) {
      upright.close();
    }
    natives.close();
  }

  private void refuseTooLarge(int side) {
    if (side > MAX_SIDE_PX) {
      throw new RefusedException("The picture of \"" + name + "\" is " + side + " px on its long side; the limit is " + MAX_SIDE_PX
          + " px. Film in 4K or below, or save a smaller copy of it, and try again.");
    }
    if (side <= 0 || storedHeight <= 0) {
      throw new RefusedException("\"" + name + "\" does not say how large its picture is, or is damaged at its start. Copy the film again.");
    }
  }

  private void refuseTooLong(double seconds) {
    if (seconds > most_s) {
      throw new RefusedException(String.format(Locale.ROOT,
          "\"%s\" is %.1f s long; the limit is %.0f s. %s, and try again.", name, seconds, most_s,
          most_s > MAX_SECONDS ? "Cut it in two" : "Cut it to the one run you want read, or take it as the film of a session"));
    }
  }

  /** Whether the index names bytes the file does not have. */
  private boolean indexPastEnd() {
    long size = avformat.avio_size(natives.format.pb());
    int entries = avformat.avformat_index_get_entries_count(stream);
    for (int i = entries - 1; size > 0 && i >= 0; i--) {
      AVIndexEntry entry = avformat.avformat_index_get_entry(stream, i);
      if (entry.pos() + entry.size() > size) {
        return true;
      }
    }
    return false;
  }

  /** Decodes the next frame into the native frame; false after the last. */
  boolean advance() {
    if (closed) {
      throw new IllegalStateException("the film is closed");
    }
    while (true) {
      int code = avcodec.avcodec_receive_frame(natives.decoder, natives.frame);
      if (code == 0) {
        double time = seconds(natives.frame.best_effort_timestamp());
        if (time < stretch.from_s() - SAME_S) {
          continue;
        }
        if (time > stretch.to_s() + SAME_S) {
          return ended();
        }
        take();
        return true;
      }
      if (code == avutil.AVERROR_EOF() || (draining && code == avutil.AVERROR_EAGAIN())) {
        return ended();
      }
      if (code != avutil.AVERROR_EAGAIN()) {
        brokenOff = true;
      }
      if (!draining) {
        feed();
      } else if (++drainErrors > MAX_DRAIN_ERRORS) {
        return ended();
      }
    }
  }

  private boolean ended() {
    if (frames == 0) {
      throw new RefusedException("Not one picture of \"" + name + "\" can be decoded; the file is damaged. Copy the film from the phone again.");
    }
    return false;
  }

  private void take() {
    long pts = natives.frame.best_effort_timestamp();
    if (pts == avutil.AV_NOPTS_VALUE) {
      throw new RefusedException("Frame " + frames + " of \"" + name + "\" has no time of its own, and guessing it from a frame rate would "
          + "falsify every contact time. Take the phone's original file, not a converted one.");
    }
    if (natives.frame.decode_error_flags() != 0 || (natives.frame.flags() & AVFrame.AV_FRAME_FLAG_CORRUPT) != 0) {
      brokenOff = true;
    }
    if (frames == 0) {
      firstPts = pts;
    }
    lastPts = pts;
    frames++;
    refuseTooLong(seconds(lastPts - firstPts));
  }

  /** Gives the decoder one more packet, or tells it that there is none. */
  private void feed() {
    while (true) {
      int code = avformat.av_read_frame(natives.format, natives.packet);
      if (code < 0) {
        brokenOff |= code != avutil.AVERROR_EOF() || endsShort();
        avcodec.avcodec_send_packet(natives.decoder, null);
        draining = true;
        return;
      }
      try {
        notePacketEnd();
        if (natives.packet.stream_index() != stream.index()) {
          continue;
        }
        if ((natives.packet.flags() & avcodec.AV_PKT_FLAG_CORRUPT) != 0) {
          brokenOff = true;
          continue;
        }
        if (avcodec.avcodec_send_packet(natives.decoder, natives.packet) < 0) {
          brokenOff = true;
        }
        return;
      } finally {
        avcodec.av_packet_unref(natives.packet);
      }
    }
  }

  private void notePacketEnd() {
    if (natives.packet.pts() != avutil.AV_NOPTS_VALUE) {
      AVRational base = natives.format.streams(natives.packet.stream_index()).time_base();
      double end = seconds(natives.packet.pts() + natives.packet.duration(), base.num(), base.den());
      packetsEnd_s = Double.isNaN(packetsEnd_s) ? end : Math.max(packetsEnd_s, end);
    }
  }

  /** Whether the packets of all tracks ended well before the length the file states. */
  private boolean endsShort() {
    long stated = natives.format.duration();
    long start = natives.format.start_time();
    if (stated == avutil.AV_NOPTS_VALUE || Double.isNaN(packetsEnd_s)) {
      return false;
    }
    double end = (stated + (start == avutil.AV_NOPTS_VALUE ? 0 : start)) / (double) avutil.AV_TIME_BASE;
    return end - packetsEnd_s > SHORT_S;
  }

  private double seconds(long pts) {
    return seconds(pts, stream.time_base().num(), stream.time_base().den());
  }

  private double captureFps() {
    for (AVDictionary tags : new AVDictionary[] {natives.format.metadata(), stream.metadata()}) {
      AVDictionaryEntry entry = tags == null ? null : avutil.av_dict_get(tags, "com.android.capture.fps", null, 0);
      if (entry != null) {
        try {
          return Double.parseDouble(entry.value().getString(StandardCharsets.UTF_8));
        } catch (NumberFormatException e) {
          return Double.NaN;
        }
      }
    }
    return Double.NaN;
  }
}
