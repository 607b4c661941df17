package boundwright.clip.truth;

import java.awt.image.BufferedImage;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import org.bytedeco.ffmpeg.avcodec.AVCodec;
import org.bytedeco.ffmpeg.avcodec.AVCodecContext;
import org.bytedeco.ffmpeg.avcodec.AVPacket;
import org.bytedeco.ffmpeg.avcodec.AVPacketSideData;
import org.bytedeco.ffmpeg.avformat.AVFormatContext;
import org.bytedeco.ffmpeg.avformat.AVIOContext;
import org.bytedeco.ffmpeg.avformat.AVOutputFormat;
import org.bytedeco.ffmpeg.avformat.AVStream;
import org.bytedeco.ffmpeg.avutil.AVDictionary;
import org.bytedeco.ffmpeg.avutil.AVFrame;
import org.bytedeco.ffmpeg.avutil.AVRational;
import org.bytedeco.ffmpeg.global.avcodec;
import org.bytedeco.ffmpeg.global.avformat;
import org.bytedeco.ffmpeg.global.avutil;
import org.bytedeco.ffmpeg.global.swscale;
import org.bytedeco.ffmpeg.swscale.SwsContext;
import org.bytedeco.javacpp.BytePointer;
import org.bytedeco.javacpp.DoublePointer;
import org.bytedeco.javacpp.IntPointer;
import org.bytedeco.javacpp.PointerPointer;

/** Writes an MP4 with H.264 pictures, without B-frames, each at the time it is told. Needs no outside tool. */
public final class Mp4Writer implements AutoCloseable {
  private static final String H264 = "libopenh264";

  private final AVFormatContext format = new AVFormatContext(null);
  private final AVCodecContext encoder;
  private final AVStream stream;
  private final AVFrame frame = avutil.av_frame_alloc();
  private final AVPacket packet = avcodec.av_packet_alloc();
  private final SwsContext scaler;
  private final AVRational timeBase;
  private final BytePointer rgb;
  private final PointerPointer<BytePointer> planes;
  private final IntPointer strides;
  private final int width;
  private final int height;

  /**
   * @param width of the picture as stored [px], even
   * @param height [px], even
   * @param ticksPerSecond the time base is one over this
   * @param rotationDeg by how much the stored picture is to be turned clockwise to be shown
   */
  private Mp4Writer(Path file, int width, int height, int ticksPerSecond, int rotationDeg, String captureFps, String coder, int keyEvery) {
    avutil.av_log_set_level(avutil.AV_LOG_QUIET);
    this.width = width;
    this.height = height;
    timeBase = new AVRational().num(1).den(ticksPerSecond);
    need(avformat.avformat_alloc_output_context2(format, (AVOutputFormat) null, "mp4", null));
    AVCodec codec = avcodec.avcodec_find_encoder_by_name(coder);
    encoder = avcodec.avcodec_alloc_context3(codec);
    encoder.width(width).height(height).pix_fmt(avutil.AV_PIX_FMT_YUV420P).bit_rate(8_000_000).gop_size(keyEvery).max_b_frames(0);
    encoder.time_base(timeBase).framerate(new AVRational().num(30).den(1));
    encoder.flags(encoder.flags() | avcodec.AV_CODEC_FLAG_GLOBAL_HEADER);
    need(avcodec.avcodec_open2(encoder, codec, (PointerPointer<?>) null));
    stream = avformat.avformat_new_stream(format, codec);
    need(avcodec.avcodec_parameters_from_context(stream.codecpar(), encoder));
    stream.time_base(timeBase);
    if (rotationDeg != 0) {
      turn(rotationDeg);
    }
    AVIOContext io = new AVIOContext(null);
    need(avformat.avio_open(io, new BytePointer(file.toString(), StandardCharsets.UTF_8), avformat.AVIO_FLAG_WRITE));
    format.pb(io);
    AVDictionary options = new AVDictionary(null);
    avutil.av_dict_set(options, "video_track_timescale", Integer.toString(ticksPerSecond), 0);
    if (!captureFps.isEmpty()) {
      avutil.av_dict_set(options, "movflags", "use_metadata_tags", 0);
      AVDictionary tags = new AVDictionary(null);
      avutil.av_dict_set(tags, "com.android.capture.fps", captureFps, 0);
      format.metadata(tags);
    }
    need(avformat.avformat_write_header(format, options));
    avutil.av_dict_free(options);
    frame.width(width).height(height).format(avutil.AV_PIX_FMT_YUV420P);
    need(avutil.av_frame_get_buffer(frame, 0));
    scaler = swscale.sws_getContext(width, height, avutil.AV_PIX_FMT_RGB24, width, height, avutil.AV_PIX_FMT_YUV420P,
        swscale.SWS_BILINEAR, null, null, (DoublePointer) null);
    rgb = new BytePointer(3L * width * height + 64);
    planes = new PointerPointer<BytePointer>(4).put(0, rgb);
    planes.put(1, (BytePointer) null).put(2, (BytePointer) null).put(3, (BytePointer) null);
    strides = new IntPointer(3 * width, 0, 0, 0);
  }

  public static Mp4Writer open(Path file, int width, int height, int ticksPerSecond, int rotationDeg) {
    return new Mp4Writer(file, width, height, ticksPerSecond, rotationDeg, "", H264, 12);
  }

  /** With the tag in which a phone notes the rate it filmed at. */
  public static Mp4Writer open(Path file, int width, int height, int ticksPerSecond, int rotationDeg, String captureFps) {
    return new Mp4Writer(file, width, height, ticksPerSecond, rotationDeg, captureFps, H264, 12);
  }

  /** For long films: a whole picture every {@code keyEvery} frames only, as phones do. */
  public static Mp4Writer openLong(Path file, int width, int height, int ticksPerSecond, int keyEvery) {
    return new Mp4Writer(file, width, height, ticksPerSecond, 0, "", H264, keyEvery);
  }

  /** MPEG-4 part 2, which can be larger than the H.264 coder's limit. */
  public static Mp4Writer openLarge(Path file, int width, int height, int ticksPerSecond) {
    return new Mp4Writer(file, width, height, ticksPerSecond, 0, "", "mpeg4", 12);
  }

  /** @param pts in ticks, above that of the frame before */
  public void write(BufferedImage image, long pts) {
    byte[] bytes = new byte[3 * width * height];
    int n = 0;
    for (int pixel : image.getRGB(0, 0, width, height, null, 0, width)) {
      bytes[n++] = (byte) (pixel >> 16);
      bytes[n++] = (byte) (pixel >> 8);
      bytes[n++] = (byte) pixel;
    }
    write(bytes, pts);
  }

  /**
   * @param bytes red, green, blue, row by row
   * @param pts in ticks, above that of the frame before
   */
  public void write(byte[] bytes, long pts) {
    rgb.put(bytes, 0, 3 * width * height);
    need(avutil.av_frame_make_writable(frame));
    need(swscale.sws_scale(scaler, planes, strides, 0, height, frame.data(), frame.linesize()));
    frame.pts(pts);
    need(avcodec.avcodec_send_frame(encoder, frame));
    drain();
  }

  /** The picture before once more. */
  public void repeat(long pts) {
    frame.pts(pts);
    need(avcodec.avcodec_send_frame(encoder, frame));
    drain();
  }

  /**
   * The picture before, so many times, coded once: where the same still picture is shown again and again its packets are written again with other
   * times. The first and the frame after the last stand by themselves.
   *
   * @param pts of the first [ticks]
   * @param step from frame to frame [ticks]
   */
  public void still(List<AVPacket> coded, int frames, long pts, long step) {
    if (coded.isEmpty()) {
      for (int i = 0; i < frames; i++) {
        frame.pict_type(i == 0 ? avutil.AV_PICTURE_TYPE_I : avutil.AV_PICTURE_TYPE_NONE);
        frame.pts(pts + i * step);
        need(avcodec.avcodec_send_frame(encoder, frame));
        while (avcodec.avcodec_receive_packet(encoder, packet) == 0) {
          coded.add(avcodec.av_packet_clone(packet));
          writePacket();
        }
      }
    } else {
      for (int i = 0; i < frames; i++) {
        need(avcodec.av_packet_ref(packet, coded.get(i)));
        packet.pts(pts + i * step).dts(pts + i * step);
        writePacket();
      }
    }
    frame.pict_type(avutil.AV_PICTURE_TYPE_I);
    needsWhole = true;
  }

  private boolean needsWhole;

  private void writePacket() {
    avcodec.av_packet_rescale_ts(packet, timeBase, stream.time_base());
    packet.stream_index(0);
    need(avformat.av_interleaved_write_frame(format, packet));
  }

  private void drain() {
    if (needsWhole) {
      needsWhole = false;
      frame.pict_type(avutil.AV_PICTURE_TYPE_NONE);
    }
    while (avcodec.avcodec_receive_packet(encoder, packet) == 0) {
      avcodec.av_packet_rescale_ts(packet, timeBase, stream.time_base());
      packet.stream_index(0);
      need(avformat.av_interleaved_write_frame(format, packet));
    }
  }

  private void turn(int clockwise) {
    int[] matrix = new int[9];
    avutil.av_display_rotation_set(matrix, clockwise);
    PointerPointer<AVPacketSideData> list = new PointerPointer<AVPacketSideData>(1).put(0, (AVPacketSideData) null);
    IntPointer count = new IntPointer(0).put(0, 0);
    AVPacketSideData data = avcodec.av_packet_side_data_new(list, count, avcodec.AV_PKT_DATA_DISPLAYMATRIX, 36, 0);
    new IntPointer(data.data()).put(matrix, 0, 9);
    stream.codecpar().coded_side_data(data).nb_coded_side_data(1);
  }

  private static void need(int code) {
    if (code < 0) {
      throw new IllegalStateException("the test film could not be written: " + code);
    }
  }

  @Override
  public void close() {
    need(avcodec.avcodec_send_frame(encoder, null));
    drain();
    need(avformat.av_write_trailer(format));
    avformat.avio_closep(format.pb());
    avformat.avformat_free_context(format);
    avcodec.avcodec_free_context(encoder);
    avutil.av_frame_free(frame);
    avcodec.av_packet_free(packet);
    swscale.sws_freeContext(scaler);
    rgb.close();
    planes.close();
    strides.close();
  }
}
