package boundwright.clip.film;

import boundwright.quantity.RefusedException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import org.bytedeco.ffmpeg.avcodec.AVCodec;
import org.bytedeco.ffmpeg.avcodec.AVCodecParameters;
import org.bytedeco.ffmpeg.avcodec.AVPacketSideData;
import org.bytedeco.ffmpeg.avformat.AVInputFormat;
import org.bytedeco.ffmpeg.avformat.AVStream;
import org.bytedeco.ffmpeg.avutil.AVDictionary;
import org.bytedeco.ffmpeg.avutil.AVRational;
import org.bytedeco.ffmpeg.global.avcodec;
import org.bytedeco.ffmpeg.global.avformat;
import org.bytedeco.ffmpeg.global.avutil;
import org.bytedeco.javacpp.BytePointer;
import org.bytedeco.javacpp.IntPointer;
import org.bytedeco.javacpp.PointerPointer;

/** Opens the file and the decoder of a film. */
final class Opened {
  /** Kinds of file that are opened; play lists, which can name other files, are not among them. */
  private static final String KINDS = "mov,mp4,m4a,3gp,3g2,mj2,matroska,webm,avi,mpegts";

  private Opened() {}

  /** The stream of pictures of a file, which is open afterwards. */
  static AVStream video(Natives natives, Path file, String name) {
    try (BytePointer url = new BytePointer("file:" + file.toAbsolutePath(), StandardCharsets.UTF_8)) {
      AVDictionary options = new AVDictionary(null);
      avutil.av_dict_set(options, "format_whitelist", KINDS, 0);
      avutil.av_dict_set(options, "protocol_whitelist", "file", 0);
      int code = avformat.avformat_open_input(natives.format, url, (AVInputFormat) null, options);
      avutil.av_dict_free(options);
      if (code < 0) {
        throw FilmFile.unreadable(file);
      }
    }
    if (avformat.avformat_find_stream_info(natives.format, (PointerPointer<?>) null) < 0) {
      throw FilmFile.unreadable(file);
    }
    int best = avformat.av_find_best_stream(natives.format, avutil.AVMEDIA_TYPE_VIDEO, -1, -1, (PointerPointer<?>) null, 0);
    if (best < 0 || (natives.format.streams(best).disposition() & avformat.AV_DISPOSITION_ATTACHED_PIC) != 0) {
      throw new RefusedException("\"" + name + "\" holds no moving picture, only sound or a title picture. Take the film itself and try again.");
    }
    return natives.format.streams(best);
  }

  /**
   * Makes the decoder.
   *
   * @param rough spoils pictures a little, not their times, and is quicker
   */
  static void decoder(Natives natives, AVStream stream, String name, boolean rough) {
    AVCodecParameters coded = stream.codecpar();
    AVCodec codec = avcodec.avcodec_find_decoder(coded.codec_id());
    if (codec == null) {
      throw undecodable(stream, name);
    }
    natives.decoder = avcodec.avcodec_alloc_context3(codec);
    if (avcodec.avcodec_parameters_to_context(natives.decoder, coded) < 0) {
      throw undecodable(stream, name);
    }
    natives.decoder.pkt_timebase(stream.time_base());
    natives.decoder.thread_count(Math.min(4, Runtime.getRuntime().availableProcessors()));
    natives.decoder.max_pixels((long) Film.MAX_SIDE_PX * Film.MAX_SIDE_PX);
    if (rough) {
      natives.decoder.skip_loop_filter(avcodec.AVDISCARD_ALL);
    }
    if (avcodec.avcodec_open2(natives.decoder, codec, (PointerPointer<?>) null) < 0) {
      throw undecodable(stream, name);
    }
  }

  private static RefusedException undecodable(AVStream stream, String name) {
    return new RefusedException("The pictures of \"" + name + "\" are coded as "
        + avcodec.avcodec_get_name(stream.codecpar().codec_id()).getString(StandardCharsets.UTF_8)
        + ", which cannot be read here. Save the film as H.264 or HEVC (the phone's usual settings) and try again.");
  }

  static Turn turn(AVCodecParameters coded) {
    AVPacketSideData data = avcodec.av_packet_side_data_get(coded.coded_side_data(), coded.nb_coded_side_data(), avcodec.AV_PKT_DATA_DISPLAYMATRIX);
    if (data == null || data.isNull() || data.size() < 36) {
      return Turn.NONE;
    }
    int[] matrix = new int[9];
    new IntPointer(data.data()).get(matrix);
    return Turn.of(matrix);
  }

  /** Width with square pixels, for a file whose pixels are not [px]. */
  static int squareWidth(AVCodecParameters coded) {
    AVRational shape = coded.sample_aspect_ratio();
    if (shape.num() <= 0 || shape.den() <= 0) {
      return coded.width();
    }
    return (int) Math.round((double) coded.width() * shape.num() / shape.den());
  }
}
