package boundwright.clip.film;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import org.bytedeco.ffmpeg.avcodec.AVCodec;
import org.bytedeco.ffmpeg.avcodec.AVCodecContext;
import org.bytedeco.ffmpeg.avcodec.AVPacket;
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
import org.bytedeco.javacpp.BytePointer;
import org.bytedeco.javacpp.PointerPointer;

/** An MP4 with one second of silence and no picture. */
public final class Sound {
  private static final int RATE_HZ = 48_000;
  private static final int BLOCK = 1024;

  private Sound() {}

  public static Path write(Path file) {
    AVFormatContext format = new AVFormatContext(null);
    avformat.avformat_alloc_output_context2(format, (AVOutputFormat) null, "mp4", null);
    AVCodec codec = avcodec.avcodec_find_encoder(avcodec.AV_CODEC_ID_AAC);
    AVCodecContext encoder = avcodec.avcodec_alloc_context3(codec);
    AVRational base = new AVRational().num(1).den(RATE_HZ);
    encoder.sample_rate(RATE_HZ).sample_fmt(avutil.AV_SAMPLE_FMT_FLTP).time_base(base).bit_rate(64_000);
    avutil.av_channel_layout_default(encoder.ch_layout(), 1);
    encoder.flags(encoder.flags() | avcodec.AV_CODEC_FLAG_GLOBAL_HEADER);
    need(avcodec.avcodec_open2(encoder, codec, (PointerPointer<?>) null));
    AVStream stream = avformat.avformat_new_stream(format, codec);
    need(avcodec.avcodec_parameters_from_context(stream.codecpar(), encoder));
    AVIOContext io = new AVIOContext(null);
    need(avformat.avio_open(io, new BytePointer(file.toString(), StandardCharsets.UTF_8), avformat.AVIO_FLAG_WRITE));
    format.pb(io);
    need(avformat.avformat_write_header(format, (AVDictionary) null));
    AVFrame frame = avutil.av_frame_alloc();
    frame.nb_samples(BLOCK).format(avutil.AV_SAMPLE_FMT_FLTP).sample_rate(RATE_HZ);
    avutil.av_channel_layout_default(frame.ch_layout(), 1);
    need(avutil.av_frame_get_buffer(frame, 0));
    avutil.av_samples_set_silence(frame.extended_data(), 0, BLOCK, 1, avutil.AV_SAMPLE_FMT_FLTP);
    AVPacket packet = avcodec.av_packet_alloc();
    for (int block = 0; block <= RATE_HZ / BLOCK; block++) {
      boolean last = block == RATE_HZ / BLOCK;
      frame.pts((long) block * BLOCK);
      need(avcodec.avcodec_send_frame(encoder, last ? null : frame));
      while (avcodec.avcodec_receive_packet(encoder, packet) == 0) {
        avcodec.av_packet_rescale_ts(packet, base, stream.time_base());
        need(avformat.av_interleaved_write_frame(format, packet));
      }
    }
    need(avformat.av_write_trailer(format));
    avformat.avio_closep(format.pb());
    avformat.avformat_free_context(format);
    avcodec.avcodec_free_context(encoder);
    avutil.av_frame_free(frame);
    avcodec.av_packet_free(packet);
    return file;
  }

  private static void need(int code) {
    if (code < 0) {
      throw new IllegalStateException("the test sound could not be written: " + code);
    }
  }
}
