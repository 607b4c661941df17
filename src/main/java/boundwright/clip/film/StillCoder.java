package boundwright.clip.film;

import org.bytedeco.ffmpeg.avcodec.AVCodec;
import org.bytedeco.ffmpeg.avcodec.AVCodecContext;
import org.bytedeco.ffmpeg.avcodec.AVPacket;
import org.bytedeco.ffmpeg.avutil.AVFrame;
import org.bytedeco.ffmpeg.avutil.AVRational;
import org.bytedeco.ffmpeg.global.avcodec;
import org.bytedeco.ffmpeg.global.avutil;
import org.bytedeco.ffmpeg.global.swscale;
import org.bytedeco.ffmpeg.swscale.SwsContext;
import org.bytedeco.javacpp.BytePointer;
import org.bytedeco.javacpp.DoublePointer;
import org.bytedeco.javacpp.IntPointer;
import org.bytedeco.javacpp.PointerPointer;

/**
 * Makes JPEG pictures of one size, smaller where wide. About three times quicker than the platform's own writer, which
 * matters because a clip has a thousand. For one thread; natives go with {@link #close}.
 */
public final class StillCoder implements AutoCloseable {
  /** Quantiser of the coding, 2 (best) to 31; 4 keeps the edge of a shoe clean (judgement). */
  private static final int QUANTISER = 4;

  private final int width;
  private final int height;
  private final AVCodecContext coder;
  private final AVFrame frame = avutil.av_frame_alloc();
  private final AVPacket packet = avcodec.av_packet_alloc();
  private final SwsContext scaler;
  private final BytePointer rgb;
  private final PointerPointer<BytePointer> planes;
  private final IntPointer strides;

  /**
   * For pictures of {@code width} by {@code height} pixels.
   *
   * @param widest width of the JPEG picture is at most this [px]; the height follows
   */
  public StillCoder(int width, int height, int widest) {
    this.width = width;
    this.height = height;
    int w = Math.min(width, widest) & ~1;
    int h = Math.max(2, (int) Math.round((double) height * w / width) & ~1);
    AVCodec codec = avcodec.avcodec_find_encoder(avcodec.AV_CODEC_ID_MJPEG);
    coder = avcodec.avcodec_alloc_context3(codec);
    coder.width(w).height(h).pix_fmt(avutil.AV_PIX_FMT_YUVJ420P).time_base(new AVRational().num(1).den(25)).thread_count(1);
    coder.flags(coder.flags() | avcodec.AV_CODEC_FLAG_QSCALE).global_quality(avutil.FF_QP2LAMBDA * QUANTISER);
    need(avcodec.avcodec_open2(coder, codec, (PointerPointer<?>) null));
    frame.width(w).height(h).format(avutil.AV_PIX_FMT_YUVJ420P).quality(avutil.FF_QP2LAMBDA * QUANTISER);
    need(avutil.av_frame_get_buffer(frame, 0));
    scaler =
        swscale.sws_getContext(
            width, height, avutil.AV_PIX_FMT_RGB24, w, h, avutil.AV_PIX_FMT_YUVJ420P, swscale.SWS_FAST_BILINEAR, null, null,
            (DoublePointer) null);
    // the scaler reads a little past the end of the last row
    rgb = new BytePointer(3L * width * height + 64);
    planes = new PointerPointer<BytePointer>(4).put(0, rgb);
    planes.put(1, (BytePointer) null).put(2, (BytePointer) null).put(3, (BytePointer) null);
    strides = new IntPointer(3 * width, 0, 0, 0);
  }

  /** Takes a picture in; the caller may use it again afterwards. */
  public void take(Picture picture) {
    if (picture.width() != width || picture.height() != height) {
      throw new IllegalArgumentException(picture.width() + " x " + picture.height() + " where " + width + " x " + height + " was said");
    }
    rgb.position(0).put(picture.rgb(), 0, 3 * width * height);
  }

  /** The picture last taken in, as JPEG. */
  public byte[] jpeg() {
    need(avutil.av_frame_make_writable(frame));
    need(swscale.sws_scale(scaler, planes, strides, 0, height, frame.data(), frame.linesize()));
    need(avcodec.avcodec_send_frame(coder, frame));
    need(avcodec.avcodec_receive_packet(coder, packet));
    byte[] out = new byte[packet.size()];
    packet.data().get(out);
    avcodec.av_packet_unref(packet);
    return out;
  }

  private static void need(int code) {
    if (code < 0) {
      throw new IllegalStateException("a picture could not be coded: " + code);
    }
  }

  @Override
  public void close() {
    avcodec.avcodec_free_context(coder);
    avutil.av_frame_free(frame);
    avcodec.av_packet_free(packet);
    swscale.sws_freeContext(scaler);
    rgb.close();
    planes.close();
    strides.close();
  }
}
