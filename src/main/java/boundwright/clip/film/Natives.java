package boundwright.clip.film;

import org.bytedeco.ffmpeg.avcodec.AVCodecContext;
import org.bytedeco.ffmpeg.avcodec.AVPacket;
import org.bytedeco.ffmpeg.avformat.AVFormatContext;
import org.bytedeco.ffmpeg.avutil.AVFrame;
import org.bytedeco.ffmpeg.global.avcodec;
import org.bytedeco.ffmpeg.global.avformat;
import org.bytedeco.ffmpeg.global.avutil;
import org.bytedeco.ffmpeg.global.swscale;

/** What one open film holds outside the Java heap. Freed once, in close, also when opening stopped half way. */
final class Natives implements AutoCloseable {
  static {
    avutil.av_log_set_level(avutil.AV_LOG_QUIET);
    // loaded here, before any other thread runs: two threads that load libraries can wait for each other for ever
    swscale.swscale_version();
  }

  final AVFormatContext format = new AVFormatContext(null);
  AVCodecContext decoder = new AVCodecContext(null);
  final AVPacket packet = avcodec.av_packet_alloc();
  final AVFrame frame = avutil.av_frame_alloc();

  @Override
  public void close() {
    avutil.av_frame_free(frame);
    avcodec.av_packet_free(packet);
    if (!decoder.isNull()) {
      avcodec.avcodec_free_context(decoder);
    }
    if (!format.isNull()) {
      avformat.avformat_close_input(format);
    }
  }
}
