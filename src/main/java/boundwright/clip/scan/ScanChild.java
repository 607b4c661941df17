package boundwright.clip.scan;

import boundwright.clip.Box;
import boundwright.clip.FoundClip;
import boundwright.clip.film.Stretch;
import boundwright.clip.pose.Weights;
import boundwright.quantity.RefusedException;
import java.io.BufferedOutputStream;
import java.io.DataOutputStream;
import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import org.jspecify.annotations.Nullable;

/**
 * The child process: scans one film and answers on its standard output, one letter and its content at a time:
 * {@code P} per mille done, {@code R} a sentence of refusal, {@code F} the found clip.
 */
public final class ScanChild {
  static final int PROGRESS = 'P';
  static final int REFUSED = 'R';
  static final int FOUND = 'F';

  private ScanChild() {}

  /** Film, weights folder, size, threads, whether to skip, frame of the box, box as x,y,width,height or nothing, stills folder or nothing, from and to [s]. */
  public static void main(String[] args) throws IOException {
    // native libraries may print: only this stream reaches the parent's reader
    try (DataOutputStream out = new DataOutputStream(new BufferedOutputStream(new FileOutputStream(FileDescriptor.out)))) {
      System.setOut(System.err);
      try {
        FoundClip clip = Scanner.scan(order(args), new Teller(out)::tell);
        byte[] bytes = FoundBytes.of(clip);
        out.writeByte(FOUND);
        out.writeInt(bytes.length);
        out.write(bytes);
      } catch (RefusedException e) {
        out.writeByte(REFUSED);
        out.writeUTF(e.getMessage());
      }
    }
  }

  private static ScanOrder order(String[] args) {
    return new ScanOrder(
        Path.of(args[0]), Path.of(args[1]), Weights.Size.valueOf(args[2]), box(args[6]), Integer.parseInt(args[5]),
        Integer.parseInt(args[3]), Boolean.parseBoolean(args[4]), args[7].isEmpty() ? null : Path.of(args[7]),
        new Stretch(Double.parseDouble(args[8]), Double.parseDouble(args[9])));
  }

  private static @Nullable Box box(String text) {
    if (text.isEmpty()) {
      return null;
    }
    String[] part = text.split(",", -1);
    return new Box(
        Double.parseDouble(part[0]), Double.parseDouble(part[1]), Double.parseDouble(part[2]), Double.parseDouble(part[3]));
  }

  /** Tells progress when it has grown by a hundredth. */
  private static final class Teller {
    private final DataOutputStream out;
    private int told = -10;

    Teller(DataOutputStream out) {
      this.out = out;
    }

    void tell(int perMille) {
      if (perMille < told + 10) {
        return;
      }
      told = perMille;
      try {
        out.writeByte(PROGRESS);
        out.writeInt(perMille);
        out.flush();
      } catch (IOException e) {
        throw new UncheckedIOException("nobody listens any more", e);
      }
    }
  }
}
