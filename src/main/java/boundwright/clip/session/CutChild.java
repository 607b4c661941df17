package boundwright.clip.session;

import boundwright.quantity.RefusedException;
import java.io.BufferedOutputStream;
import java.io.DataOutputStream;
import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;

/**
 * The child process that cuts one film: answers on its standard output, one letter and its content at a time: {@code P} how far, of how
 * much, {@code S} a rep, {@code R} a sentence of refusal, {@code E} the end.
 */
public final class CutChild {
  static final int REACHED = 'P';
  static final int REP = 'S';
  static final int REFUSED = 'R';
  static final int END = 'E';

  private CutChild() {}

  /** Film, weights folder, where to begin [s], stills folder or nothing. */
  public static void main(String[] args) throws IOException {
    // native libraries may print: only this stream reaches the parent's reader
    try (DataOutputStream out = new DataOutputStream(new BufferedOutputStream(new FileOutputStream(FileDescriptor.out)))) {
      System.setOut(System.err);
      try {
        int looks =
            Cutter.cut(new CutOrder(Path.of(args[0]), Path.of(args[1]), Double.parseDouble(args[2]), args[3].isEmpty() ? null : Path.of(args[3])), new Teller(out));
        out.writeByte(END);
        out.writeInt(looks);
      } catch (RefusedException e) {
        out.writeByte(REFUSED);
        out.writeUTF(e.getMessage());
      }
    }
  }

  private record Teller(DataOutputStream out) implements Cutter.Listener {
    @Override
    public void reached(double time_s, double of_s) {
      try {
        out.writeByte(REACHED);
        out.writeDouble(time_s);
        out.writeDouble(of_s);
        out.flush();
      } catch (IOException e) {
        throw new UncheckedIOException("nobody listens any more", e);
      }
    }

    @Override
    public void rep(FilmRep rep) {
      try {
        out.writeByte(REP);
        CutBytes.write(out, rep);
        out.flush();
      } catch (IOException e) {
        throw new UncheckedIOException("nobody listens any more", e);
      }
    }
  }
}
