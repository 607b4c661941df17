package boundwright.clip.session;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import org.bytedeco.ffmpeg.avcodec.AVPacket;
import org.bytedeco.ffmpeg.avformat.AVFormatContext;
import org.bytedeco.ffmpeg.avformat.AVIOContext;
import org.bytedeco.ffmpeg.avformat.AVInputFormat;
import org.bytedeco.ffmpeg.avformat.AVOutputFormat;
import org.bytedeco.ffmpeg.avformat.AVStream;
import org.bytedeco.ffmpeg.avutil.AVDictionary;
import org.bytedeco.ffmpeg.global.avcodec;
import org.bytedeco.ffmpeg.global.avformat;
import org.bytedeco.javacpp.BytePointer;
import org.bytedeco.javacpp.PointerPointer;

/** The coded pictures of a film several times over in one file: half an hour is written in seconds, not painted in hours. */
final class Repeated {
  private Repeated() {}

  /** Writes {@code film} so many times, each {@code each_s} after the one before. */
  static void write(Path film, Path to, int times, double each_s) {
    AVFormatContext out = new AVFormatContext(null);
    need(avformat.avformat_alloc_output_context2(out, (AVOutputFormat) null, "mp4", null));
    AVStream stream = avformat.avformat_new_stream(out, null);
    for (int k = 0; k < times; k++) {
      AVFormatContext in = new AVFormatContext(null);
      need(avformat.avformat_open_input(in, new BytePointer("file:" + film.toAbsolutePath(), StandardCharsets.UTF_8), (AVInputFormat) null, (AVDictionary) null));
      need(avformat.avformat_find_stream_info(in, (PointerPointer<?>) null));
      AVStream from = in.streams(0);
      if (k == 0) {
        need(avcodec.avcodec_parameters_copy(stream.codecpar(), from.codecpar()));
        stream.codecpar().codec_tag(0);
        stream.time_base(from.time_base());
        AVIOContext io = new AVIOContext(null);
        need(avformat.avio_open(io, new BytePointer(to.toString(), StandardCharsets.UTF_8), avformat.AVIO_FLAG_WRITE));
        out.pb(io);
        need(avformat.avformat_write_header(out, (AVDictionary) null));
      }
      AVPacket packet = avcodec.av_packet_alloc();
      long shift = Math.round(k * each_s * from.time_base().den() / from.time_base().num());
      while (avformat.av_read_frame(in, packet) >= 0) {
        packet.pts(packet.pts() + shift);
        packet.dts(packet.dts() + shift);
        avcodec.av_packet_rescale_ts(packet, from.time_base(), stream.time_base());
        packet.stream_index(0);
        packet.pos(-1);
        need(avformat.av_interleaved_write_frame(out, packet));
      }
      avcodec.av_packet_free(packet);
      avformat.avformat_close_input(in);
    }
    need(avformat.av_write_trailer(out));
    avformat.avio_closep(out.pb());
    avformat.avformat_free_context(out);
  }

  private static void need(int code) {
    if (code < 0) {
      throw new IllegalStateException("the film could not be repeated: " + code);
    }
  }
}
