package boundwright.clip.session;

import boundwright.clip.Box;
import java.io.DataInputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;

/** A rep of a film on its way from the child process. */
final class CutBytes {
  private CutBytes() {}

  static void write(DataOutputStream out, FilmRep rep) throws IOException {
    for (double v :
        new double[] {
          rep.from_s(), rep.to_s(), rep.run_s(), rep.box().x(), rep.box().y(), rep.box().width(), rep.box().height(), rep.speed(), rep.bounce(),
          rep.sure()
        }) {
      out.writeDouble(v);
    }
    out.writeBoolean(rep.toTheRight());
    out.writeBoolean(rep.landed());
    for (double share : rep.clothes().shares()) {
      out.writeFloat((float) share);
    }
    out.writeInt(rep.stills().size());
    for (double t : rep.stills()) {
      out.writeDouble(t);
    }
  }

  static FilmRep read(DataInputStream in) throws IOException {
    double[] v = new double[10];
    for (int i = 0; i < v.length; i++) {
      v[i] = in.readDouble();
    }
    boolean right = in.readBoolean();
    boolean landed = in.readBoolean();
    double[] shares = new double[Clothes.BINS];
    for (int i = 0; i < shares.length; i++) {
      shares[i] = in.readFloat();
    }
    List<Double> stills = new ArrayList<>();
    for (int n = in.readInt(); n > 0; n--) {
      stills.add(in.readDouble());
    }
    return new FilmRep(v[0], v[1], v[2], new Box(v[3], v[4], v[5], v[6]), right, v[7], v[8], landed, v[9], Clothes.of(shares), stills);
  }
}
