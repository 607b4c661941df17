package boundwright.clip.film;

import org.bytedeco.ffmpeg.avutil.AVFrame;
import org.bytedeco.ffmpeg.global.avutil;
import org.bytedeco.ffmpeg.global.swscale;
import org.bytedeco.ffmpeg.swscale.SwsContext;
import org.bytedeco.javacpp.BytePointer;
import org.bytedeco.javacpp.DoublePointer;
import org.bytedeco.javacpp.IntPointer;
import org.bytedeco.javacpp.PointerPointer;
import org.jspecify.annotations.Nullable;

/** From a decoded frame in whatever pixel format to red, green, blue, square pixels and upright. */
final class Upright implements AutoCloseable {
  private record Source(int width, int height, int format, int colours, int range) {}

  private final int width;
  private final int height;
  private final Turn turn;
  private final BytePointer rgb;
  private final PointerPointer<BytePointer> planes;
  private final IntPointer strides;
  private final byte @Nullable [] stored;
  private @Nullable Source source;
  private @Nullable SwsContext scaler;

  /**
   * @param width of the stored picture with square pixels [px]
   * @param height [px]
   */
  Upright(int width, int height, Turn turn) {
    this.width = width;
    this.height = height;
    this.turn = turn;
    int bytes = Math.multiplyExact(3 * width, height);
    // the scaler's vector code may write a little past the end of a row
    rgb = new BytePointer(bytes + 64L);
    planes = new PointerPointer<BytePointer>(4).put(0, rgb);
    planes.put(1, (BytePointer) null).put(2, (BytePointer) null).put(3, (BytePointer) null);
    strides = new IntPointer(3 * width, 0, 0, 0);
    stored = turn.equals(Turn.NONE) ? null : new byte[bytes];
  }

  /** The frame as shown, written into {@code shown}. */
  Picture picture(AVFrame frame, byte[] shown) {
    Picture out = new Picture(turn.swaps() ? height : width, turn.swaps() ? width : height, shown);
    int done = swscale.sws_scale(scalerFor(frame), frame.data(), frame.linesize(), 0, frame.height(), planes, strides);
    if (done <= 0) {
      throw new IllegalStateException("colour conversion failed: " + done);
    }
    if (stored == null) {
      rgb.position(0).get(shown, 0, 3 * width * height);
    } else {
      rgb.position(0).get(stored);
      turn.apply(stored, width, height, shown);
    }
    return out;
  }

  private SwsContext scalerFor(AVFrame frame) {
    Source now = new Source(frame.width(), frame.height(), frame.format(), frame.colorspace(), frame.color_range());
    if (scaler != null && now.equals(source)) {
      return scaler;
    }
    close(scaler);
    scaler = null;
    SwsContext made = swscale.sws_getContext(now.width, now.height, now.format, width, height, avutil.AV_PIX_FMT_RGB24,
        swscale.SWS_BILINEAR | swscale.SWS_ACCURATE_RND, null, null, (DoublePointer) null);
    if (made == null) {
      throw new IllegalStateException("no colour conversion from pixel format " + now.format);
    }
    int full = now.range == avutil.AVCOL_RANGE_JPEG || now.format == avutil.AV_PIX_FMT_YUVJ420P
        || now.format == avutil.AV_PIX_FMT_YUVJ422P || now.format == avutil.AV_PIX_FMT_YUVJ444P ? 1 : 0;
    IntPointer coefficients = swscale.sws_getCoefficients(now.colours);
    swscale.sws_setColorspaceDetails(made, coefficients, full, coefficients, 1, 0, 1 << 16, 1 << 16);
    scaler = made;
    source = now;
    return made;
  }

  private static void close(@Nullable SwsContext scaler) {
    if (scaler != null) {
      swscale.sws_freeContext(scaler);
    }
  }

  @Override
  public void close() {
    close(scaler);
    scaler = null;
    planes.close();
    strides.close();
    rgb.close();
  }
}
