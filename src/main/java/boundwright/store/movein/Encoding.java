package boundwright.store.movein;

import boundwright.quantity.RefusedException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;

/** How letters are written as bytes. */
public enum Encoding {
  /** As most programs write today. */
  UTF_8("UTF-8", StandardCharsets.UTF_8),
  /** "Unicode text" of spreadsheets. */
  UTF_16LE("UTF-16", StandardCharsets.UTF_16LE),
  /** The same with the bytes of each letter turned round. */
  UTF_16BE("UTF-16, turned", StandardCharsets.UTF_16BE),
  /** Older programs of western Europe; Windows-1252 is Latin-1 with letters in place of control characters. */
  LATIN_1("Latin-1", Charset.forName("windows-1252"));

  private static final int LOOKED_AT = 4096;

  private final String label;
  private final Charset charset;

  Encoding(String label, Charset charset) {
    this.label = label;
    this.charset = charset;
  }

  /** As it is called on the screen. */
  public String label() {
    return label;
  }

  /**
   * What a file is most likely written in: by its byte order mark; else UTF-16 where one byte of most pairs is nought; else UTF-8 where every
   * byte fits; else Latin-1, in which every file can be read.
   */
  static Encoding of(byte[] file) {
    if (begins(file, 0xEF, 0xBB, 0xBF)) {
      return UTF_8;
    }
    if (begins(file, 0xFF, 0xFE)) {
      return UTF_16LE;
    }
    if (begins(file, 0xFE, 0xFF)) {
      return UTF_16BE;
    }
    int pairs = Math.min(file.length, LOOKED_AT) / 2;
    int evenNoughts = 0;
    int oddNoughts = 0;
    for (int i = 0; i < pairs; i++) {
      evenNoughts += file[2 * i] == 0 ? 1 : 0;
      oddNoughts += file[2 * i + 1] == 0 ? 1 : 0;
    }
    if (oddNoughts > pairs / 2 && evenNoughts == 0) {
      return UTF_16LE;
    }
    if (evenNoughts > pairs / 2 && oddNoughts == 0) {
      return UTF_16BE;
    }
    try {
      decode(StandardCharsets.UTF_8, file);
      return UTF_8;
    } catch (CharacterCodingException e) {
      return LATIN_1;
    }
  }

  private static boolean begins(byte[] file, int... mark) {
    for (int i = 0; i < mark.length; i++) {
      if (i >= file.length || (file[i] & 0xFF) != mark[i]) {
        return false;
      }
    }
    return true;
  }

  /**
   * The text, without a byte order mark.
   *
   * @throws RefusedException if it is not written so
   */
  String text(byte[] file) {
    try {
      String text = decode(charset, file);
      return text.startsWith("\uFEFF") ? text.substring(1) : text;
    } catch (CharacterCodingException e) {
      throw new RefusedException("The file is not written in " + label + ", so it cannot be read so. Choose another reading, or save it as CSV in UTF-8.", e);
    }
  }

  private static String decode(Charset charset, byte[] file) throws CharacterCodingException {
    return charset.newDecoder().decode(ByteBuffer.wrap(file)).toString();
  }
}
