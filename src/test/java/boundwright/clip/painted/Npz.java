package boundwright.clip.painted;

import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;

/** Reads arrays out of a numpy archive: a zip of files with a text header (NEP 1, numpy.lib.format). Only what open motion needs. */
final class Npz implements AutoCloseable {
  private static final Pattern DESCR = Pattern.compile("'descr': '([<|=])([iuU])([0-9]+)'");
  private static final Pattern SHAPE = Pattern.compile("'shape': \\(([0-9, ]*)\\)");
  private final ZipFile zip;

  Npz(Path file) throws IOException {
    zip = new ZipFile(file.toFile());
  }

  /** One array: its shape and its bytes after the header. */
  @SuppressWarnings("ArrayRecordComponent") // never compared
  private record Raw(char kind, int size, int[] shape, ByteBuffer bytes) {
    int count() {
      return Arrays.stream(shape).reduce(1, (a, b) -> a * b);
    }
  }

  private Raw raw(String name) throws IOException {
    ZipEntry entry = zip.getEntry(name + ".npy");
    if (entry == null) {
      throw new IOException("no array " + name);
    }
    try (InputStream in = zip.getInputStream(entry)) {
      ByteBuffer all = ByteBuffer.wrap(in.readAllBytes()).order(ByteOrder.LITTLE_ENDIAN);
      boolean wide = all.get(6) > 1;
      int length = wide ? all.getInt(8) : all.getShort(8) & 0xffff;
      int from = wide ? 12 : 10;
      String header = new String(all.array(), from, length, StandardCharsets.US_ASCII);
      Matcher d = DESCR.matcher(header);
      Matcher s = SHAPE.matcher(header);
      if (!d.find() || !s.find() || header.contains("'fortran_order': True")) {
        throw new IOException("array " + name + " is of a kind that is not read here: " + header);
      }
      int[] shape = Arrays.stream(s.group(1).split(",")).map(String::strip).filter(x -> !x.isEmpty()).mapToInt(Integer::parseInt).toArray();
      return new Raw(d.group(2).charAt(0), Integer.parseInt(d.group(3)), shape, all.slice(from + length, all.capacity() - from - length).order(ByteOrder.LITTLE_ENDIAN));
    }
  }

  /** Whole numbers, the last axis running fastest. */
  int[] numbers(String name) throws IOException {
    Raw r = raw(name);
    int[] out = new int[r.count()];
    for (int i = 0; i < out.length; i++) {
      out[i] =
          switch (r.size) {
            case 1 -> r.kind == 'u' ? r.bytes.get(i) & 0xff : r.bytes.get(i);
            case 2 -> r.kind == 'u' ? r.bytes.getShort(2 * i) & 0xffff : r.bytes.getShort(2 * i);
            case 4 -> r.bytes.getInt(4 * i);
            default -> throw new IOException(name + " has numbers of " + r.size + " bytes");
          };
    }
    return out;
  }

  String[] texts(String name) throws IOException {
    Raw r = raw(name);
    String[] out = new String[r.count()];
    for (int i = 0; i < out.length; i++) {
      StringBuilder text = new StringBuilder();
      for (int k = 0; k < r.size && r.bytes.getInt(4 * (i * r.size + k)) != 0; k++) {
        text.appendCodePoint(r.bytes.getInt(4 * (i * r.size + k)));
      }
      out[i] = text.toString();
    }
    return out;
  }

  @Override
  public void close() throws IOException {
    zip.close();
  }
}
