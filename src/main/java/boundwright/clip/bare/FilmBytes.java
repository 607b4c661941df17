package boundwright.clip.bare;

import java.io.Closeable;
import java.io.EOFException;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;

/** A film's bytes, read and overwritten in place; numbers are of the most significant byte first unless said otherwise. */
final class FilmBytes implements Closeable {
  private static final int PIECE = 1 << 16;

  private final FileChannel channel;
  private final long size;
  private long blanked;

  FilmBytes(Path film) throws IOException {
    this.channel = FileChannel.open(film, StandardOpenOption.READ, StandardOpenOption.WRITE);
    this.size = channel.size();
  }

  /** Bytes in all. */
  long size() {
    return size;
  }

  /** So many bytes from a place. */
  ByteBuffer read(long at, int count) throws IOException {
    if (at < 0 || count < 0 || at + count > size) {
      throw new DamagedException(at);
    }
    ByteBuffer out = ByteBuffer.allocate(count);
    while (out.hasRemaining()) {
      if (channel.read(out, at + out.position()) < 0) {
        throw new EOFException("the film became shorter while it was read");
      }
    }
    return out.flip();
  }

  /** A number of four bytes without a sign. */
  long number4(long at) throws IOException {
    return Integer.toUnsignedLong(read(at, 4).getInt());
  }

  /** A number of eight bytes. */
  long number8(long at) throws IOException {
    return read(at, 8).getLong();
  }

  /** Four letters. */
  String word(long at) throws IOException {
    return StandardCharsets.ISO_8859_1.decode(read(at, 4)).toString();
  }

  /** Overwrites. */
  void write(long at, byte... bytes) throws IOException {
    if (at < 0 || at + bytes.length > size) {
      throw new DamagedException(at);
    }
    ByteBuffer in = ByteBuffer.wrap(bytes);
    while (in.hasRemaining()) {
      channel.write(in, at + in.position());
    }
  }

  /** Overwrites four letters. */
  void word(long at, String word) throws IOException {
    write(at, word.getBytes(StandardCharsets.ISO_8859_1));
  }

  /**
   * Overwrites with noughts.
   *
   * @throws DamagedException if that lies outside the film, or if more is blanked in all than the film has: its lists lead in circles
   */
  void blank(long from, long to) throws IOException {
    if (from < 0 || to < from || to > size) {
      throw new DamagedException(from);
    }
    blanked += to - from;
    if (blanked > size) {
      throw new DamagedException(from);
    }
    byte[] noughts = new byte[PIECE];
    for (long at = from; at < to; at += PIECE) {
      write(at, to - at < PIECE ? new byte[(int) (to - at)] : noughts);
    }
  }

  @Override
  public void close() throws IOException {
    channel.close();
  }
}
