package boundwright.clip.scan;

import boundwright.clip.FoundClip;
import boundwright.clip.camera.CameraPath;
import boundwright.clip.film.FilmFacts;
import boundwright.clip.track.BodyPoint;
import boundwright.clip.track.Spot;
import boundwright.clip.track.Track;
import boundwright.quantity.RefusedException;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.DataInputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import java.util.zip.GZIPInputStream;
import java.util.zip.GZIPOutputStream;

/**
 * A found clip as bytes, for the way from the child process and for the store. Points are kept as floats: at 4096 pixels
 * that is exact to a four-thousandth of a pixel.
 */
public final class FoundBytes {
  private static final int VERSION = 2;
  /** Written before cameras were followed: read as cameras that stood. */
  private static final int STILL_VERSION = 1;
  /** What clips of that version say of a camera that moved, and what is true of it. */
  private static final String NOT_TRUE = " Lengths from marks do not hold; feet and times do. Put the phone on a stand.";

  private static final String TRUE = " Have the clip read again: the camera is followed now.";

  private FoundBytes() {}

  /** Writes a clip. */
  public static byte[] of(FoundClip clip) {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (DataOutputStream out = new DataOutputStream(new GZIPOutputStream(bytes))) {
      out.writeInt(VERSION);
      FilmFacts f = clip.film();
      out.writeUTF(f.codec());
      for (int v : new int[] {f.width(), f.height(), f.turnedDeg(), f.timeBaseNum(), f.timeBaseDen(), f.frames()}) {
        out.writeInt(v);
      }
      out.writeDouble(f.seconds());
      out.writeDouble(f.captureFps());
      out.writeInt(clip.firstFrame());
      out.writeInt(clip.networkFrames());
      out.writeInt(clip.remarks().size());
      for (String remark : clip.remarks()) {
        out.writeUTF(remark);
      }
      Track t = clip.track();
      out.writeInt(t.frames());
      for (int i = 0; i < t.frames(); i++) {
        out.writeDouble(t.time(i));
      }
      for (BodyPoint p : BodyPoint.values()) {
        for (int i = 0; i < t.frames(); i++) {
          out.writeFloat((float) t.spot(p, i).x());
          out.writeFloat((float) t.spot(p, i).y());
          out.writeFloat((float) t.confidence(p, i));
        }
      }
      write(clip.camera(), out);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return bytes.toByteArray();
  }

  /**
   * Reads a clip.
   *
   * @throws RefusedException if the bytes are of a later version or damaged
   */
  public static FoundClip read(byte[] bytes) {
    try (DataInputStream in = new DataInputStream(new GZIPInputStream(new ByteArrayInputStream(bytes)))) {
      int version = in.readInt();
      if (version != VERSION && version != STILL_VERSION) {
        throw new RefusedException(
            "The body points were written in form " + version + "; this version reads form " + VERSION + ". Use the newer version of the program.");
      }
      String codec = in.readUTF();
      FilmFacts film =
          new FilmFacts(
              codec, in.readInt(), in.readInt(), in.readInt(), in.readInt(), in.readInt(), in.readInt(), in.readDouble(), in.readDouble());
      int first = in.readInt();
      int network = in.readInt();
      List<String> remarks = new ArrayList<>();
      for (int n = in.readInt(); n > 0; n--) {
        String remark = in.readUTF();
        remarks.add(version == STILL_VERSION ? remark.replace(NOT_TRUE, TRUE) : remark);
      }
      double[] times = new double[in.readInt()];
      for (int i = 0; i < times.length; i++) {
        times[i] = in.readDouble();
      }
      Track.Builder track = Track.at(times);
      for (BodyPoint p : BodyPoint.values()) {
        for (int i = 0; i < times.length; i++) {
          Spot spot = new Spot(in.readFloat(), in.readFloat());
          track.put(p, i, spot, in.readFloat());
        }
      }
      CameraPath camera = version == STILL_VERSION ? CameraPath.stood() : readCamera(in, film, times);
      return new FoundClip(film, first, track.build(), network, remarks, camera);
    } catch (IOException | IllegalArgumentException e) {
      throw new RefusedException("The body points of the clip are damaged (" + e.getMessage() + "). Have the clip read again.", e);
    }
  }

  private static void write(CameraPath camera, DataOutputStream out) throws IOException {
    out.writeUTF(camera.kind().name());
    out.writeInt(camera.frames());
    if (!camera.carries()) {
      return;
    }
    out.writeDouble(camera.commonFocal());
    out.writeDouble(camera.shutter_s());
    out.writeBoolean(camera.shutterFound());
    out.writeDouble(camera.swing());
    for (int i = 0; i < camera.frames(); i++) {
      CameraPath.Look l = camera.look(i);
      for (double v : new double[] {l.x(), l.y(), l.z(), l.focal(), l.drift(), l.jitter()}) {
        out.writeDouble(v);
      }
    }
  }

  private static CameraPath readCamera(DataInputStream in, FilmFacts film, double[] times) throws IOException {
    CameraPath.Kind kind = CameraPath.Kind.valueOf(in.readUTF());
    int frames = in.readInt();
    if (frames == 0) {
      return CameraPath.of(kind);
    }
    if (frames != times.length) {
      throw new IOException(frames + " frames of the camera for " + times.length + " of the athlete");
    }
    double focal = in.readDouble();
    double shutter = in.readDouble();
    boolean found = in.readBoolean();
    double swing = in.readDouble();
    CameraPath.Look[] looks = new CameraPath.Look[frames];
    for (int i = 0; i < frames; i++) {
      looks[i] =
          new CameraPath.Look(in.readDouble(), in.readDouble(), in.readDouble(), in.readDouble(), in.readDouble(), in.readDouble());
    }
    return CameraPath.followed(kind, film.width(), film.height(), focal, shutter, found, swing, times, looks);
  }
}
