package boundwright.clip.learn;

import boundwright.clip.propose.ContactNet;
import java.io.ByteArrayOutputStream;
import java.io.DataInputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;

/**
 * Weights taught on this machine, with what they were taught from and how they compared. As bytes field by field in
 * {@code docs/formats.md}.
 *
 * @param net the weights
 * @param day when
 * @param seed of everything drawn
 * @param clips numbers of the clips that were learned from
 * @param putRight how many of them were put right by hand
 * @param comparison on clips set aside
 */
public record Taught(ContactNet net, LocalDate day, long seed, List<Long> clips, int putRight, Comparison comparison) {
  private static final int MAGIC = 0x42574c57;
  private static final int FORM = 1;

  /** Copies the list. */
  public Taught {
    clips = List.copyOf(clips);
  }

  /** The file. */
  public byte[] bytes() {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (DataOutputStream out = new DataOutputStream(bytes)) {
      out.writeInt(MAGIC);
      out.writeInt(FORM);
      out.writeInt(ContactNet.RECIPE);
      out.writeUTF(ContactNet.SUM);
      out.writeUTF(day.toString());
      out.writeLong(seed);
      out.writeInt(putRight);
      out.writeInt(clips.size());
      for (long id : clips) {
        out.writeLong(id);
      }
      Comparison c = comparison;
      out.writeInt(c.clips());
      out.writeBoolean(c.whole());
      for (double v : new double[] {c.gain_low(), c.gain(), c.gain_high()}) {
        out.writeDouble(v);
      }
      for (Figures f : List.of(c.before(), c.after(), c.madeUpBefore(), c.madeUpAfter())) {
        for (int v : new int[] {f.known(), f.right(), f.off(), f.wrongFoot(), f.missed(), f.extra(), f.byHand()}) {
          out.writeInt(v);
        }
        out.writeDouble(f.framesOff());
      }
      byte[] weights = net.bytes();
      out.writeInt(weights.length);
      out.write(weights);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return Sealed.with(bytes.toByteArray());
  }

  /** SHA-256 of the file, its name in the data folder. */
  public String sum() {
    return Sealed.hex(bytes());
  }

  /**
   * Reads weights.
   *
   * @throws IOException if the file is damaged, of a later form, or was taught from other weights than those of this program
   */
  public static Taught read(byte[] file) throws IOException {
    try (DataInputStream in = Sealed.open(file)) {
      if (in.readInt() != MAGIC) {
        throw new IOException("the file does not begin as weights do");
      }
      int form = in.readInt();
      int recipe = form == FORM ? in.readInt() : ContactNet.RECIPE;
      if (form != FORM || recipe != ContactNet.RECIPE) {
        throw new IOException("form " + form + " of recipe " + recipe + ", where this program reads form " + FORM + " of recipe " + ContactNet.RECIPE);
      }
      if (!in.readUTF().equals(ContactNet.SUM)) {
        throw new IOException("they were taught from other weights than those of this program");
      }
      LocalDate day = LocalDate.parse(in.readUTF());
      long seed = in.readLong();
      int putRight = in.readInt();
      List<Long> clips = new ArrayList<>();
      for (int n = in.readInt(); n > 0; n--) {
        clips.add(in.readLong());
      }
      int aside = in.readInt();
      boolean whole = in.readBoolean();
      double low = in.readDouble();
      double gain = in.readDouble();
      double high = in.readDouble();
      Comparison c = new Comparison(aside, whole, figures(in), figures(in), low, gain, high, figures(in), figures(in));
      return new Taught(ContactNet.of(in.readNBytes(in.readInt())), day, seed, clips, putRight, c);
    } catch (DateTimeException | IllegalArgumentException e) {
      throw new IOException(e.getMessage(), e);
    }
  }

  private static Figures figures(DataInputStream in) throws IOException {
    return new Figures(in.readInt(), in.readInt(), in.readInt(), in.readInt(), in.readInt(), in.readInt(), in.readInt(), in.readDouble());
  }
}
