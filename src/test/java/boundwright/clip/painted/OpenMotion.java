package boundwright.clip.painted;

import boundwright.clip.real.TruthFile;
import boundwright.clip.track.Joint;
import boundwright.clip.truth.Body;
import boundwright.footfall.Foot;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * Cuts of open motion capture that move the painted athlete: people who walk and run. The data (CMU Graphics Lab Motion Capture Database, created with
 * funding from NSF EIA-0196217; may not be resold) lie beside the project where they are there at all, and never in it. When a foot stands was
 * set by a rule on its height and speed: good to some frames.
 */
final class OpenMotion {
  static final double RATE = 120;
  private static final int POINTS = 17;
  private static final Joint[] JOINTS = {Joint.SHOULDER, Joint.ELBOW, Joint.WRIST, Joint.HIP, Joint.KNEE, Joint.ANKLE, Joint.HEEL, Joint.TOE};
  /** A shorter stand is taken for a fault of the rule [frames]. */
  private static final int SHORTEST = 9;

  private final int[] mm;
  private final int[] stands;
  private final int from;
  private final int frames;
  private final double ground;

  private OpenMotion(int[] mm, int[] stands, int from, int frames) {
    this.mm = mm;
    this.stands = stands;
    this.from = from;
    this.frames = frames;
    // the cuts' own heights are counted from different places: the ground is where the feet are lowest, a few frames aside
    double[] low = new double[frames];
    for (int i = 0; i < frames; i++) {
      low[i] = Math.min(Math.min(raw(i, 13, 1), raw(i, 14, 1)), Math.min(raw(i, 15, 1), raw(i, 16, 1)));
    }
    Arrays.sort(low);
    ground = low[frames / 20] - 0.02;
  }

  /** Where the data lie, if they do: beside the project, or where {@code motion} points. */
  static Optional<Path> file() {
    for (String at : new String[] {System.getProperty("motion", ""), "shared/data/motion/motion-120hz.npz", "../shared/data/motion/motion-120hz.npz"}) {
      if (!at.isEmpty() && Files.isRegularFile(Path.of(at))) {
        return Optional.of(Path.of(at));
      }
    }
    return Optional.empty();
  }

  /** A cut by its name in the data. */
  static OpenMotion of(Path file, String name) throws IOException {
    try (Npz data = new Npz(file)) {
      String[] names = data.texts("name");
      int[] frames = data.numbers("frames");
      int from = 0;
      for (int i = 0; i < names.length; i++) {
        if (names[i].equals(name)) {
          return new OpenMotion(data.numbers("position_mm"), data.numbers("contact"), from, frames[i]);
        }
        from += frames[i];
      }
    }
    throw new IOException("no cut " + name);
  }

  double length_s() {
    return (frames - 1) / RATE;
  }

  private double raw(int frame, int point, int axis) {
    return mm[((from + frame) * POINTS + point) * 3 + axis] / 1000.0;
  }

  private double[] at(double t, int point) {
    double f = Math.max(0, Math.min(frames - 1.001, t * RATE));
    int i = (int) f;
    double b = f - i;
    double[] out = new double[3];
    for (int axis = 0; axis < 3; axis++) {
      out[axis] = (1 - b) * raw(i, point, axis) + b * raw(i + 1, point, axis);
    }
    out[1] -= ground;
    return out;
  }

  /** The body at a time [s]; ears, eyes and fingers are set beside what was measured. */
  Body body(double t) {
    double[] nose = at(t, 0);
    Body.Maker out = Body.maker(nose);
    for (int k = 0; k < JOINTS.length; k++) {
      out.put(JOINTS[k], Foot.LEFT, at(t, 1 + 2 * k));
      out.put(JOINTS[k], Foot.RIGHT, at(t, 2 + 2 * k));
    }
    return out.withFingers();
  }

  /** How far the hips come [m], with their sign. */
  double way() {
    return at(length_s(), 7)[0] - at(0, 7)[0];
  }

  double startX() {
    return at(0, 7)[0];
  }

  /** Contacts in frames of a film of so many a second; a stand that the cut begins or ends with is open there. */
  List<TruthFile.Known> contacts(double fps) {
    List<TruthFile.Known> out = new ArrayList<>();
    for (Foot foot : Foot.values()) {
      int column = foot == Foot.LEFT ? 0 : 1;
      int begin = -1;
      for (int i = 0; i <= frames; i++) {
        boolean stood = i < frames && stands[2 * (from + i) + column] > 127;
        if (stood && begin < 0) {
          begin = i;
        } else if (!stood && begin >= 0) {
          if (i - begin >= SHORTEST) {
            out.add(new TruthFile.Known(foot, begin == 0 ? Double.NaN : begin * fps / RATE, i == frames ? Double.NaN : i * fps / RATE));
          }
          begin = -1;
        }
      }
    }
    // what stood from the beginning comes first, what leaves first before the other
    out.sort(Comparator.comparingDouble(k -> Double.isNaN(k.down()) ? k.up() - 1e6 : k.down()));
    return out;
  }
}
