package boundwright.clip.learn;

import boundwright.clip.FoundClip;
import boundwright.clip.camera.CameraPath;
import boundwright.clip.film.FilmFacts;
import boundwright.clip.learn.Label.End;
import boundwright.clip.learn.Label.Stand;
import boundwright.clip.propose.StepSamples;
import boundwright.clip.track.BodyPoint;
import boundwright.clip.track.Spot;
import boundwright.clip.track.Track;
import boundwright.footfall.Foot;
import java.io.ByteArrayInputStream;
import java.io.DataInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.zip.GZIPInputStream;

/**
 * Clips of the made-up athlete that no training of the shipped weights saw ({@code training/contacts/further.py}; invented, nobody's
 * movement). Two of three are rehearsed while a coach's clips are learned, so that nothing is forgotten; every third is only read, with
 * the old and the new weights.
 *
 * @param lesson the clip
 * @param label the same with its contacts, as if a coach had put it right
 */
record MadeUp(Lesson lesson, Label label) {
  private static final String FILE = "/clip/made-up.bin";
  private static final String SUM = "2538656e9e46dea8e5c14235f800f5927e3690225977b00080bc3962b53ac0ff";
  private static final int MAGIC = 0x42574d55;
  private static final int FORM = 1;
  /** Every so many is read only. */
  private static final int CHECK_EVERY = 3;
  /** Time between samples given to the clips [s]: steps then take .2 to .8 s. */
  private static final double SAMPLE_S = 0.01;
  /** Both feet down within this time and down to the end are a landing [s]. */
  private static final double TOGETHER_S = 0.12;
  private static final double PX_A_METRE = 100;
  private static final LocalDate DAY = LocalDate.of(2026, 11, 29);

  /** Those that are rehearsed. */
  static List<MadeUp> rehearsed() {
    return some(false);
  }

  /** Those that are only read. */
  static List<MadeUp> checks() {
    return some(true);
  }

  private static List<MadeUp> some(boolean check) {
    List<MadeUp> out = new ArrayList<>();
    List<MadeUp> all = Holder.ALL;
    for (int i = 0; i < all.size(); i++) {
      if ((i % CHECK_EVERY == CHECK_EVERY - 1) == check) {
        out.add(all.get(i));
      }
    }
    return out;
  }

  private static final class Holder {
    private static final List<MadeUp> ALL = load();
  }

  private static List<MadeUp> load() {
    try (InputStream file = MadeUp.class.getResourceAsStream(FILE)) {
      if (file == null) {
        throw new IllegalStateException("the made-up clips are missing from the program");
      }
      byte[] bytes = file.readAllBytes();
      if (!Sealed.hex(bytes).equals(SUM)) {
        throw new IllegalStateException("the made-up clips have the sum " + Sealed.hex(bytes) + ", not " + SUM);
      }
      DataInputStream in = new DataInputStream(new GZIPInputStream(new ByteArrayInputStream(bytes)));
      if (in.readInt() != MAGIC || in.readInt() != FORM) {
        throw new IllegalStateException("the made-up clips are of another form than " + FORM);
      }
      List<MadeUp> out = new ArrayList<>();
      for (int n = in.readInt(); n > 0; n--) {
        out.add(read(in));
      }
      return List.copyOf(out);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static MadeUp read(DataInputStream in) throws IOException {
    int n = in.readInt();
    double density = in.readFloat();
    float[][] points = new float[n][StepSamples.WIDTH];
    for (int k = 0; k < StepSamples.WIDTH; k++) {
      int mm = 0;
      for (int i = 0; i < n; i++) {
        mm += in.readShort();
        points[i][k] = mm / 1000f;
      }
    }
    float[][] said = new float[4][n];
    for (float[] row : said) {
      for (int i = 0; i < n; i++) {
        row[i] = in.readUnsignedByte() / 255f;
      }
    }
    double[] times = new double[n];
    float[] all = new float[n];
    float[] legs = new float[n];
    boolean[] exchanged = new boolean[n];
    for (int i = 0; i < n; i++) {
      times[i] = i * SAMPLE_S;
      all[i] = 1;
      legs[i] = 1 - said[3][i];
      exchanged[i] = said[2][i] > 0.5;
    }
    Track.Builder track = Track.at(times);
    for (int p = 0; p < StepSamples.ofNetwork().size(); p++) {
      BodyPoint point = StepSamples.ofNetwork().get(p);
      for (int i = 0; i < n; i++) {
        track.put(point, i, new Spot(PX_A_METRE * points[i][2 * p], -PX_A_METRE * points[i][2 * p + 1]), 0.9);
      }
    }
    Lesson lesson = new Lesson(new StepSamples(times, points, density), new float[][] {said[0], said[1], said[2]}, all, legs);
    FilmFacts film = new FilmFacts("made up", 1280, 720, 0, 1, 100, n, n * SAMPLE_S, Double.NaN);
    // nobody knows where the ground is in these: feet and times stand by the network alone
    FoundClip clip = new FoundClip(film, 0, track.build(), n, List.of(), CameraPath.of(CameraPath.Kind.LOST));
    return new MadeUp(lesson, new Label(DAY, 1, true, 0, times[n - 1], stands(said, n), exchanged, clip));
  }

  private static List<Stand> stands(float[][] said, int n) {
    List<Stand> out = new ArrayList<>();
    for (Foot foot : Foot.values()) {
      float[] on = said[foot == Foot.LEFT ? 0 : 1];
      End down = End.OPEN;
      boolean stood = on[0] > 0.5;
      for (int i = 1; i < n; i++) {
        if (on[i] > 0.5 && on[i - 1] <= 0.5) {
          down = at(on, i);
          stood = true;
        } else if (on[i] <= 0.5 && on[i - 1] > 0.5) {
          out.add(new Stand(foot, false, down, at(on, i)));
          down = End.OPEN;
          stood = false;
        }
      }
      if (stood) {
        out.add(new Stand(foot, false, down, End.OPEN));
      }
    }
    out.sort(Comparator.comparingDouble(s -> s.down().known() ? s.down().time_s() : s.up().known() ? s.up().time_s() - 1 : -1));
    int last = out.size() - 1;
    if (last > 0 && landed(out.get(last - 1), out.get(last))) {
      out.set(last - 1, new Stand(out.get(last - 1).foot(), true, out.get(last - 1).down(), End.OPEN));
      out.remove(last);
    }
    return out;
  }

  private static boolean landed(Stand a, Stand b) {
    return a.foot() != b.foot() && a.down().known() && !a.up().known() && !b.up().known() && b.down().time_s() - a.down().time_s() < TOGETHER_S;
  }

  /** Where the share passes a half between a sample and the one before it. */
  private static End at(float[] on, int i) {
    double share = (0.5 - on[i - 1]) / (on[i] - on[i - 1]);
    return new End((i - 1 + share) * SAMPLE_S, 0.3 * SAMPLE_S, true);
  }
}
