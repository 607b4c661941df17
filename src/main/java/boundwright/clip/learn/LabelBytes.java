package boundwright.clip.learn;

import boundwright.clip.FoundClip;
import boundwright.clip.learn.Label.End;
import boundwright.clip.learn.Label.Stand;
import boundwright.clip.scan.FoundBytes;
import boundwright.footfall.Foot;
import boundwright.quantity.RefusedException;
import java.io.ByteArrayOutputStream;
import java.io.DataInputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;

/** A label as bytes, field by field in {@code docs/formats.md}. */
public final class LabelBytes {
  private static final int MAGIC = 0x42574c42;
  private static final int FORM = 1;

  private LabelBytes() {}

  /** Writes a label. */
  public static byte[] of(Label label) {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (DataOutputStream out = new DataOutputStream(bytes)) {
      out.writeInt(MAGIC);
      out.writeInt(FORM);
      out.writeUTF(label.agreed().toString());
      out.writeDouble(label.slowed());
      out.writeBoolean(label.putRight());
      out.writeDouble(label.from_s());
      out.writeDouble(label.to_s());
      out.writeInt(label.stands().size());
      for (Stand s : label.stands()) {
        out.writeBoolean(s.foot() == Foot.LEFT);
        out.writeBoolean(s.bothFeet());
        for (End e : List.of(s.down(), s.up())) {
          out.writeDouble(e.time_s());
          out.writeDouble(e.sd_s());
          out.writeBoolean(e.byHand());
        }
      }
      out.writeInt(label.exchanged().length);
      for (boolean e : label.exchanged()) {
        out.writeBoolean(e);
      }
      byte[] points = FoundBytes.of(label.points());
      out.writeInt(points.length);
      out.write(points);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return Sealed.with(bytes.toByteArray());
  }

  /**
   * Reads a label.
   *
   * @param name of the file, for the refusal
   * @throws RefusedException if it is damaged, or of a later form
   */
  public static Label read(byte[] file, String name) {
    try (DataInputStream in = Sealed.open(file)) {
      if (in.readInt() != MAGIC) {
        throw new IOException("it does not begin as a label does");
      }
      int form = in.readInt();
      if (form != FORM) {
        throw new RefusedException(
            "The agreed contacts in " + name + " were written in form " + form + "; this version reads form " + FORM + ". Use the newer version of the program.");
      }
      LocalDate day = LocalDate.parse(in.readUTF());
      double slowed = in.readDouble();
      boolean putRight = in.readBoolean();
      double from = in.readDouble();
      double to = in.readDouble();
      List<Stand> stands = new ArrayList<>();
      for (int n = in.readInt(); n > 0; n--) {
        Foot foot = in.readBoolean() ? Foot.LEFT : Foot.RIGHT;
        stands.add(new Stand(foot, in.readBoolean(), end(in), end(in)));
      }
      boolean[] exchanged = new boolean[in.readInt()];
      for (int i = 0; i < exchanged.length; i++) {
        exchanged[i] = in.readBoolean();
      }
      FoundClip points = FoundBytes.read(in.readNBytes(in.readInt()));
      if (exchanged.length != points.track().frames()) {
        throw new IOException(exchanged.length + " frames of the legs for " + points.track().frames() + " of the athlete");
      }
      return new Label(day, slowed, putRight, from, to, stands, exchanged, points);
    } catch (IOException | DateTimeException | IllegalArgumentException e) {
      throw new RefusedException(
          "The agreed contacts in " + name + " are damaged (" + e.getMessage() + "). Look at the clip and say once more that its contacts are right.", e);
    }
  }

  /**
   * Whether a hand changed a contact, from the first bytes of a label; nothing else of it is looked at.
   *
   * @throws IOException if they are not those of a label
   */
  public static boolean putRight(InputStream file) throws IOException {
    DataInputStream in = new DataInputStream(file);
    if (in.readInt() != MAGIC || in.readInt() != FORM) {
      throw new IOException("not a label of form " + FORM);
    }
    in.readUTF();
    in.readDouble();
    return in.readBoolean();
  }

  private static End end(DataInputStream in) throws IOException {
    return new End(in.readDouble(), in.readDouble(), in.readBoolean());
  }
}
