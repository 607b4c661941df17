package boundwright.clip.bare;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * MP4, MOV and 3GP: a tree of boxes (ISO 14496-12; the metadata keys are Apple's QuickTime file format). A box that tells of people and places
 * becomes a free box of noughts; a track that is neither picture nor sound (where the phone was, second by second) goes with all its samples.
 */
final class IsoFilm {
  /** The one key that the reading needs: frames a second that were filmed, of a film that plays slowed. */
  private static final String KEPT_KEY = "com.android.capture.fps";

  private static final Set<String> FREE = Set.of("free", "skip");
  private static final int HANDLER_NAME = 24;
  /** From the beginning of a picture's sample description to the name of what encoded it, and its length. */
  private static final int ENCODER_NAME = 50;
  private static final int ENCODER_LENGTH = 32;

  private final FilmBytes bytes;
  private boolean dataTrack;

  IsoFilm(FilmBytes bytes) {
    this.bytes = bytes;
  }

  private record Box(String type, long at, long body, long end) {}

  void strip() throws IOException {
    boolean fragments = false;
    for (Box b : boxes(0, bytes.size(), true)) {
      if (b.type.equals("moov")) {
        inMovie(b);
      } else if (b.type.equals("moof")) {
        fragments = true;
        inFragment(b);
      } else {
        tidy(b);
      }
    }
    if (fragments && dataTrack) {
      throw new DamagedException(0); // samples of fragments are not listed in one place
    }
  }

  private void inFragment(Box fragment) throws IOException {
    for (Box b : boxes(fragment)) {
      if (b.type.equals("traf")) {
        inFragment(b);
      } else {
        tidy(b);
      }
    }
  }

  private void inMovie(Box movie) throws IOException {
    for (Box b : boxes(movie)) {
      if (b.type.equals("trak")) {
        inTrack(b);
      } else {
        tidy(b);
      }
    }
  }

  private void tidy(Box b) throws IOException {
    if (b.type.equals("uuid")) {
      free(b);
    } else if (b.type.equals("udta")) {
      inUserData(b);
    } else if (b.type.equals("meta")) {
      metadata(b);
    } else if (FREE.contains(b.type)) {
      bytes.blank(b.body, b.end);
    }
  }

  private void inUserData(Box data) throws IOException {
    List<Box> told;
    try {
      told = boxes(data);
    } catch (DamagedException e) {
      free(data); // some devices keep in it what is no box
      return;
    }
    for (Box b : told) {
      if (b.type.equals("meta")) {
        metadata(b);
      } else {
        free(b);
      }
    }
  }

  private void inTrack(Box track) throws IOException {
    for (Box b : boxes(track)) {
      if (b.type.equals("mdia")) {
        String handler = handler(b);
        if (!handler.equals("vide") && !handler.equals("soun")) {
          dataTrack = true;
          blankSamples(b);
          free(track);
          return;
        }
        inMedia(b, handler);
      } else {
        tidy(b);
      }
    }
  }

  private String handler(Box media) throws IOException {
    for (Box b : boxes(media)) {
      if (b.type.equals("hdlr")) {
        return bytes.word(b.body + 8);
      }
    }
    return "";
  }

  private void inMedia(Box media, String handler) throws IOException {
    for (Box b : boxes(media)) {
      switch (b.type) {
        case "hdlr" -> bytes.blank(Math.min(b.body + HANDLER_NAME, b.end), b.end);
        case "minf", "stbl" -> inMedia(b, handler);
        case "stsd" -> encoders(b, handler);
        default -> tidy(b);
      }
    }
  }

  private void encoders(Box descriptions, String handler) throws IOException {
    if (handler.equals("vide")) {
      for (Box b : boxes(descriptions.body + 8, descriptions.end, false)) {
        if (b.at + ENCODER_NAME + ENCODER_LENGTH <= b.end) {
          bytes.blank(b.at + ENCODER_NAME, b.at + ENCODER_NAME + ENCODER_LENGTH);
        }
      }
    }
  }

  /** Keys and their values: all go but {@link #KEPT_KEY}. */
  private void metadata(Box meta) throws IOException {
    if (meta.end - meta.body < 8) {
      free(meta);
      return;
    }
    boolean bare = bytes.word(meta.body + 4).equals("hdlr"); // QuickTime's own has no version before the first box
    long first = meta.body + (bare ? 0 : 4);
    Box handler = null;
    Box keys = null;
    Box values = null;
    for (Box b : boxes(first, meta.end, false)) {
      switch (b.type) {
        case "hdlr" -> handler = b;
        case "keys" -> keys = b;
        case "ilst" -> values = b;
        default -> {}
      }
    }
    Box kept = handler == null || keys == null || values == null ? null : value(keys, values);
    if (handler == null || kept == null) {
      free(meta);
      return;
    }
    ByteBuffer saved = bytes.read(handler.at, (int) (handler.end - handler.at));
    ByteBuffer data = bytes.read(kept.body, (int) (kept.end - kept.body));
    int keyLength = 8 + KEPT_KEY.length();
    int length = saved.remaining() + 16 + keyLength + 8 + 8 + data.remaining();
    int left = (int) (meta.end - first) - length;
    if (left != 0 && left < 8) {
      free(meta);
      return;
    }
    ByteBuffer out = ByteBuffer.allocate(length + left);
    out.put(saved);
    out.putInt(16 + keyLength).put(letters("keys")).putInt(0).putInt(1).putInt(keyLength).put(letters("mdta")).put(letters(KEPT_KEY));
    out.putInt(16 + data.remaining()).put(letters("ilst")).putInt(8 + data.remaining()).putInt(1).put(data);
    if (left >= 8) {
      out.putInt(left).put(letters("free"));
    }
    int name = HANDLER_NAME + 8;
    for (int i = name; i < saved.limit(); i++) {
      out.put(i, (byte) 0);
    }
    bytes.write(first, out.array());
  }

  private @Nullable Box value(Box keys, Box values) throws IOException {
    long at = keys.body + 8;
    int number = 0;
    for (long n = bytes.number4(keys.body + 4); n > 0 && at + 8 <= keys.end; n--) {
      long length = bytes.number4(at);
      if (length < 8 || at + length > keys.end) {
        throw new DamagedException(at);
      }
      number++;
      if (length == 8 + KEPT_KEY.length() && StandardCharsets.ISO_8859_1.decode(bytes.read(at + 8, KEPT_KEY.length())).toString().equals(KEPT_KEY)) {
        for (Box b : boxes(values)) {
          if (bytes.number4(b.at + 4) == number) {
            return b;
          }
        }
      }
      at += length;
    }
    return null;
  }

  private void blankSamples(Box media) throws IOException {
    Box sizes = null;
    Box chunks = null;
    Box perChunk = null;
    for (Box info : boxes(media)) {
      for (Box table : info.type.equals("minf") ? boxes(info) : List.<Box>of()) {
        for (Box b : table.type.equals("stbl") ? boxes(table) : List.<Box>of()) {
          switch (b.type) {
            case "stsz" -> sizes = b;
            case "stco", "co64" -> chunks = b;
            case "stsc" -> perChunk = b;
            default -> {}
          }
        }
      }
    }
    if (sizes != null && chunks != null && perChunk != null) {
      new Samples(sizes, chunks, perChunk).blank();
    }
  }

  /** Where the samples of a track lie: sizes, beginnings of chunks, and how many samples a chunk has from which chunk on. */
  private final class Samples {
    private final Box sizes;
    private final Box chunks;
    private final Box perChunk;

    Samples(Box sizes, Box chunks, Box perChunk) {
      this.sizes = sizes;
      this.chunks = chunks;
      this.perChunk = perChunk;
    }

    void blank() throws IOException {
      boolean wide = chunks.type.equals("co64");
      long all = bytes.number4(chunks.body + 4);
      long entries = bytes.number4(perChunk.body + 4);
      long sample = 0;
      long entry = 0;
      for (long chunk = 0; chunk < all; chunk++) {
        while (entry + 1 < entries && bytes.number4(perChunk.body + 8 + 12 * (entry + 1)) <= chunk + 1) {
          entry++;
        }
        long samples = entries == 0 ? 0 : bytes.number4(perChunk.body + 8 + 12 * entry + 4);
        long length = 0;
        for (long i = 0; i < samples; i++) {
          length += size(sample++);
          if (length > bytes.size()) {
            throw new DamagedException(sizes.at);
          }
        }
        long from = wide ? bytes.number8(chunks.body + 8 + 8 * chunk) : bytes.number4(chunks.body + 8 + 4 * chunk);
        bytes.blank(from, from + length);
      }
    }

    private long size(long sample) throws IOException {
      long same = bytes.number4(sizes.body + 4);
      if (same == 0 && sample >= bytes.number4(sizes.body + 8)) {
        throw new DamagedException(sizes.at);
      }
      return same != 0 ? same : bytes.number4(sizes.body + 12 + 4 * sample);
    }
  }

  private void free(Box b) throws IOException {
    bytes.word(b.at + 4, "free");
    bytes.blank(b.body, b.end);
  }

  private static byte[] letters(String word) {
    return word.getBytes(StandardCharsets.ISO_8859_1);
  }

  private List<Box> boxes(Box of) throws IOException {
    return boxes(of.body, of.end, false);
  }

  /** Boxes one after the other; a film that broke off ends within its last box. */
  private List<Box> boxes(long from, long to, boolean top) throws IOException {
    List<Box> out = new ArrayList<>();
    long at = from;
    while (at + 8 <= to) {
      long length = bytes.number4(at);
      String type = bytes.word(at + 4);
      long body = at + 8;
      if (length == 0 && !top) {
        return out; // QuickTime ends a list of user data with four noughts
      }
      if (length == 0) {
        length = to - at;
      } else if (length == 1) {
        length = bytes.number8(at + 8);
        body = at + 16;
      }
      if (top && length > to - at && !type.equals("moov")) {
        length = to - at;
      }
      if (length < body - at || length > to - at) {
        throw new DamagedException(at);
      }
      out.add(new Box(type, at, body, at + length));
      at += length;
    }
    return out;
  }
}
