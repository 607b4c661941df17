package boundwright.clip.truth;

import boundwright.clip.Box;
import boundwright.clip.film.Picture;
import boundwright.clip.track.Spot;
import java.util.Random;

/**
 * What a phone held by hand films of a runway: it turns after an athlete who runs past, tilts, zooms and shakes, its shutter
 * goes down the rows, and it may swing on an arm or travel along. Every frame's camera is known exactly, so it is a truth
 * outside the solution that is to find it: a frame is looked up in a {@link Scenery} row by row.
 *
 * <p>Places are along the runway [m], 0 opposite the camera, and across it, away from the camera [m].
 *
 * @param width of the picture [px]
 * @param height of it [px]
 * @param focal focal length at the beginning [px]
 * @param distance of the camera from the athlete's line [m]
 * @param eye height of the camera [m]
 * @param from where the athlete is in the first frame [m]
 * @param to where in the last [m]
 * @param speed of the athlete [m/s]
 * @param fps frames a second
 * @param zoom focal length of the last frame over that of the first
 * @param shake amplitude of the hand's tremor [px]
 * @param shutter_s from the first row to the last [s]
 * @param arm radius of the arc on which the phone swings [m]; 0 turns about itself
 * @param travel the camera travels along with the athlete by this share of the way, 0 to 1
 * @param seed of shake and noise
 */
public record PannedFilm(
    int width, int height, double focal, double distance, double eye, double from, double to, double speed, double fps, double zoom,
    double shake, double shutter_s, double arm, double travel, long seed) {

  /** A phone that turns through about 67 degrees after an athlete 15 m away who runs 20 m. */
  public static PannedFilm usual(long seed) {
    return new PannedFilm(1280, 720, 1000, 15, 1.5, -10, 10, 8, 60, 1, 2, 0, 0, 0, seed);
  }

  /** The same with another zoom, shake and shutter. */
  public PannedFilm with(double zoomed, double shaken, double shutter) {
    return new PannedFilm(width, height, focal, distance, eye, from, to, speed, fps, zoomed, shaken, shutter, arm, travel, seed);
  }

  /** The same with a phone on an arm, or one that travels along. */
  public PannedFilm moving(double armRadius, double travelling) {
    return new PannedFilm(width, height, focal, distance, eye, from, to, speed, fps, zoom, shake, shutter_s, armRadius, travelling, seed);
  }

  /** The same on another way of the athlete. */
  public PannedFilm way(double begin, double end) {
    return new PannedFilm(width, height, focal, distance, eye, begin, end, speed, fps, zoom, shake, shutter_s, arm, travel, seed);
  }

  /** The same at another rate. */
  public PannedFilm at(double framesPerSecond) {
    return new PannedFilm(width, height, focal, distance, eye, from, to, speed, framesPerSecond, zoom, shake, shutter_s, arm, travel, seed);
  }

  /** How many frames. */
  public int frames() {
    return (int) ((to - from) / speed * fps) + 1;
  }

  /** Time of a frame [s]. */
  public double time(int frame) {
    return frame / fps;
  }

  /** Where the athlete is at a time [m]. */
  public double athlete(double t) {
    return from + speed * t;
  }

  /** The camera at an instant: place along the runway and in depth, turn, tilt and roll [rad], focal length [px]. */
  private record Eye(double x, double z, double turn, double tilt, double roll, double focal) {}

  private double tremor(double t, int k) {
    Random r = new Random(seed * 31 + k);
    double sum = 0;
    for (int i = 0; i < 4; i++) {
      double hz = 1.5 + 7 * r.nextDouble();
      sum += Math.sin(2 * Math.PI * (hz * t + r.nextDouble())) / 2;
    }
    return shake / focal * sum;
  }

  private Eye eye(double t) {
    Random r = new Random(seed);
    double seconds = (to - from) / speed;
    double share = Math.max(0, Math.min(1, t / seconds));
    // the hand lags behind and catches up
    double lag = 0.5 * Math.min(1, Math.abs(to - from) / 4) * Math.sin(2 * Math.PI * (0.7 * t + r.nextDouble()));
    double at = athlete(t) + lag;
    double x = travel * (at - from);
    double turn = Math.atan2((1 - travel) * at + travel * from, distance) + tremor(t, 1);
    double tilt = 0.04 + 0.01 * r.nextGaussian() + tremor(t, 2);
    double roll = 0.01 * r.nextGaussian() + 0.4 * tremor(t, 3);
    return new Eye(x + arm * Math.sin(turn), arm * (Math.cos(turn) - 1), turn, tilt, roll, focal * Math.pow(zoom, share));
  }

  /** Rotation from the camera's (right, down, ahead) to (along, down, depth). */
  private static double[] turned(Eye e) {
    double c = Math.cos(e.roll);
    double s = Math.sin(e.roll);
    double[] roll = {c, -s, 0, s, c, 0, 0, 0, 1};
    c = Math.cos(e.tilt);
    s = Math.sin(e.tilt);
    double[] tilt = {1, 0, 0, 0, c, s, 0, -s, c};
    c = Math.cos(e.turn);
    s = Math.sin(e.turn);
    double[] turn = {c, 0, s, 0, 1, 0, -s, 0, c};
    return times(turn, times(tilt, roll));
  }

  private static double[] times(double[] a, double[] b) {
    double[] out = new double[9];
    for (int i = 0; i < 3; i++) {
      for (int j = 0; j < 3; j++) {
        out[3 * i + j] = a[3 * i] * b[j] + a[3 * i + 1] * b[3 + j] + a[3 * i + 2] * b[6 + j];
      }
    }
    return out;
  }

  /** The scenery from where the camera stands; contrast as in {@link Scenery}. */
  public Object scenery(double contrast, boolean wall) {
    return new Scenery(eye, distance, contrast, wall);
  }

  /** Where a place is seen in a frame [px]: along, across and above the runway [m]. */
  public Spot see(int frame, double along, double across, double above) {
    Spot at = see(eye(time(frame)), along, across, above);
    for (int round = 0; round < 4 && shutter_s > 0; round++) {
      at = see(eye(time(frame) + (at.y() / height - 0.5) * shutter_s), along, across, above);
    }
    return at;
  }

  private Spot see(Eye e, double along, double across, double above) {
    double x = along - e.x;
    double y = eye - above;
    double z = distance + across - e.z;
    double[] r = turned(e);
    double qx = r[0] * x + r[3] * y + r[6] * z;
    double qy = r[1] * x + r[4] * y + r[7] * z;
    double qz = r[2] * x + r[5] * y + r[8] * z;
    return new Spot(width / 2.0 + e.focal * qx / qz, height / 2.0 + e.focal * qy / qz);
  }

  /** The athlete's box in a frame [px]: 1.9 m high and a metre wide. */
  public Box athleteBox(int frame) {
    double at = athlete(time(frame));
    Spot low = see(frame, at - 0.5, 0, 0);
    Spot top = see(frame, at + 0.5, 0, 1.9);
    return new Box(low.x(), top.y(), top.x() - low.x(), low.y() - top.y());
  }

  /** A frame with sensor noise, and a dark figure where the athlete is. */
  public Picture picture(Object scenery, int frame) {
    Scenery ground = (Scenery) scenery;
    byte[] rgb = new byte[3 * width * height];
    boolean rows = shutter_s > 0;
    Eye e = eye(time(frame));
    double[] r = turned(e);
    for (int y = 0; y < height; y++) {
      if (rows) {
        e = eye(time(frame) + ((y + 0.5) / height - 0.5) * shutter_s);
        r = turned(e);
      }
      double v = (y + 0.5 - height / 2.0) / e.focal;
      boolean moved = e.x != 0 || e.z != 0;
      for (int x = 0; x < width; x++) {
        double u = (x + 0.5 - width / 2.0) / e.focal;
        double px = r[0] * u + r[1] * v + r[2];
        double py = r[3] * u + r[4] * v + r[5];
        double pz = r[6] * u + r[7] * v + r[8];
        if (moved) {
          // the same place seen from where the scenery was painted
          double far = depth(ground, py / pz, e.z) - e.z;
          px = e.x + px / pz * far;
          py = py / pz * far;
          pz = e.z + far;
        }
        ground.look(px / pz, py / pz, rgb, 3 * (y * width + x));
      }
    }
    figure(rgb, frame);
    noise(rgb, frame);
    return new Picture(width, height, rgb);
  }

  /** Depth of what is seen, from the scenery's own place. */
  private double depth(Scenery ground, double slope, double moved) {
    double onGround = slope > 0.001 ? eye / slope + moved : 1e9;
    return Math.min(onGround, ground.depth(-1));
  }

  private void figure(byte[] rgb, int frame) {
    Box b = athleteBox(frame);
    for (int y = (int) Math.max(0, b.y()); y < Math.min(height, b.y() + b.height()); y++) {
      double swing = 0.2 * b.width() * Math.sin(0.04 * y + 0.7 * frame);
      int left = (int) (b.x() + 0.3 * b.width() + swing);
      int right = (int) (b.x() + 0.7 * b.width() + swing);
      for (int x = Math.max(0, left); x < Math.min(width, right); x++) {
        int at = 3 * (y * width + x);
        rgb[at] = 50;
        rgb[at + 1] = (byte) (60 + (y / 9 % 2) * 50);
        rgb[at + 2] = 120;
      }
    }
  }

  private void noise(byte[] rgb, int frame) {
    long s = seed * 0x9e3779b97f4a7c15L + frame * 0xbf58476d1ce4e5b9L + 1;
    for (int i = 0; i < rgb.length; i++) {
      s ^= s << 13;
      s ^= s >>> 7;
      s ^= s << 17;
      // three bytes of it added up: nearly normal, standard deviation about 3 grey levels
      int n = (int) (s & 31) + (int) (s >>> 8 & 31) + (int) (s >>> 16 & 31) - 46;
      rgb[i] = (byte) Math.max(0, Math.min(255, (rgb[i] & 0xff) + n / 5));
    }
  }
}
