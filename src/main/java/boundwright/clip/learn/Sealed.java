package boundwright.clip.learn;

import java.io.ByteArrayInputStream;
import java.io.DataInputStream;
import java.io.IOException;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Arrays;
import java.util.HexFormat;

/** Bytes with their SHA-256 behind them, so that a damaged file is known before a word of it is believed. */
final class Sealed {
  private static final int SUM_BYTES = 32;

  private Sealed() {}

  static byte[] with(byte[] content) {
    byte[] out = Arrays.copyOf(content, content.length + SUM_BYTES);
    System.arraycopy(sum(content), 0, out, content.length, SUM_BYTES);
    return out;
  }

  static DataInputStream open(byte[] file) throws IOException {
    if (file.length < SUM_BYTES) {
      throw new IOException("it has " + file.length + " bytes");
    }
    byte[] content = Arrays.copyOf(file, file.length - SUM_BYTES);
    if (!MessageDigest.isEqual(sum(content), Arrays.copyOfRange(file, content.length, file.length))) {
      throw new IOException("its checksum is another");
    }
    return new DataInputStream(new ByteArrayInputStream(content));
  }

  static String hex(byte[] content) {
    return HexFormat.of().formatHex(sum(content));
  }

  private static byte[] sum(byte[] content) {
    try {
      return MessageDigest.getInstance("SHA-256").digest(content);
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException(e);
    }
  }
}
