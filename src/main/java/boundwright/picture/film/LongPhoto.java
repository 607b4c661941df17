package boundwright.picture.film;

import boundwright.clip.FoundClip;
import boundwright.clip.reading.ClipReading;
import boundwright.clip.scale.PlaneMap;
import boundwright.clip.track.Spot;
import boundwright.clip.track.Track;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.IntFunction;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageWriteParam;
import javax.imageio.ImageWriter;
import org.jspecify.annotations.Nullable;

/**
 * One long photograph of a rep, made from its film: the runway as the camera saw it, drawn out so that a metre is as wide everywhere, and in it the
 * athlete as they touch down at each contact. Chronophotography on one plate is an old technique of motion study (Marey, 1882; memory).
 *
 * <p>Every point of the photograph is a place in the athlete's upright plane; its colour is fetched from the frame that shows it: near the athlete's
 * limbs from the frame of that touchdown, elsewhere from a frame in which the athlete is away from it. Where no frame shows a place it stays
 * empty.
 */
public final class LongPhoto {
  /** Above the highest head and below the ground [m]. */
  private static final double OVER_M = 0.25;
  private static final double UNDER_M = 0.35;
  private static final int WIDEST_PX = 2600;
  private static final int EMPTY = 0xfaf6ec;
  /** An athlete is away from a place at this distance [m]; a frame is kept until another one is this much better. */
  private static final double AWAY_M = 1.2;
  private static final double KEEP_M = 0.4;
  private static final double PLACES_M = 0.25;

  /** The bytes of a frame's stored picture, by the film's own number; null where it is gone. */
  public interface Stored extends IntFunction<byte @Nullable []> {}

  private record Layer(BufferedImage image, PlaneMap map, double shrunk, Figure figure) {
    int colour(double x, double y) {
      Spot p = map.toPicture(new Spot(x, y));
      double u = p.x() * shrunk;
      double v = p.y() * shrunk;
      int w = image.getWidth();
      int h = image.getHeight();
      if (!(u >= 0 && v >= 0 && u < w - 1 && v < h - 1)) {
        return -1;
      }
      int iu = (int) u;
      int iv = (int) v;
      double fu = u - iu;
      double fv = v - iv;
      return mixed(
          mixed(image.getRGB(iu, iv), image.getRGB(iu + 1, iv), fu), mixed(image.getRGB(iu, iv + 1), image.getRGB(iu + 1, iv + 1), fu), fv);
    }

    boolean shows(double x, double y) {
      Spot p = map.toPicture(new Spot(x, y));
      double u = p.x() * shrunk;
      double v = p.y() * shrunk;
      return u >= 0 && v >= 0 && u < image.getWidth() - 1 && v < image.getHeight() - 1;
    }
  }

  private final FoundClip clip;
  private final ClipReading reading;
  private final Stored stored;
  private final FrameMaps maps;
  private final Track metres;
  private final List<Layer> athletes = new ArrayList<>();
  private final List<Layer> places = new ArrayList<>();

  private LongPhoto(FoundClip clip, ClipReading reading, Stored stored) {
    this.clip = clip;
    this.reading = reading;
    this.stored = stored;
    maps = new FrameMaps(reading);
    metres = reading.athlete().metres();
  }

  /**
   * How high the photograph must be.
   *
   * @param ground height of the athlete's ground in the plane [m]
   * @param top upper edge [m]
   * @param bottom lower edge [m]
   */
  public record Reach(double ground, double top, double bottom) {
    /** From edge to edge [m]. */
    public double height() {
      return top - bottom;
    }
  }

  /** How high the photograph must be to show the athlete at every contact; empty where no contact's frame shows enough of them. */
  public static Optional<Reach> reach(ClipReading reading) {
    double top = Double.NEGATIVE_INFINITY;
    List<Double> low = new ArrayList<>();
    for (int i = 0; i < reading.contacts().size(); i++) {
      Figure f = new Figure(reading.athlete(), reading.frameAt(reading.begin(i)));
      if (f.seen()) {
        top = Math.max(top, f.top());
        low.add(f.bottom());
      }
    }
    if (low.isEmpty()) {
      return Optional.empty();
    }
    low.sort(null);
    double ground = low.get(low.size() / 2);
    return Optional.of(new Reach(ground, top + OVER_M, ground - UNDER_M));
  }

  /**
   * The photograph.
   *
   * @param from left edge in the plane [m]
   * @param to right edge [m]
   * @param stored pictures of the film's frames
   * @return a JPEG, or empty where too few pictures are left
   */
  public static Optional<byte[]> jpeg(FoundClip clip, ClipReading reading, double from, double to, Reach reach, Stored stored) {
    LongPhoto photo = new LongPhoto(clip, reading, stored);
    photo.gather();
    return photo.athletes.isEmpty() ? Optional.empty() : Optional.of(photo.draw(from, to, reach));
  }

  private void gather() {
    List<Integer> taken = new ArrayList<>();
    for (int i = 0; i < reading.contacts().size(); i++) {
      int frame = reading.frameAt(reading.begin(i));
      layer(frame).ifPresent(athletes::add);
      taken.add(frame);
    }
    places.addAll(athletes);
    double last = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < metres.frames(); i++) {
      if (metres.time(i) - last >= PLACES_M && !taken.contains(i) && maps.of(i).isPresent()) {
        Optional<Layer> more = layer(i);
        if (more.isPresent()) {
          places.add(more.get());
          last = metres.time(i);
        }
      }
    }
  }

  private Optional<Layer> layer(int frame) {
    byte[] bytes = stored.apply(clip.firstFrame() + frame);
    Optional<PlaneMap> map = maps.of(frame);
    Figure figure = new Figure(reading.athlete(), frame);
    if (bytes == null || map.isEmpty() || !figure.seen()) {
      return Optional.empty();
    }
    try {
      BufferedImage image = ImageIO.read(new ByteArrayInputStream(bytes));
      return image == null ? Optional.empty() : Optional.of(new Layer(image, map.get(), (double) image.getWidth() / clip.film().width(), figure));
    } catch (IOException e) {
      throw new UncheckedIOException("a picture of the film could not be read", e);
    }
  }

  private byte[] draw(double from, double to, Reach reach) {
    Layer middle = athletes.get(athletes.size() / 2);
    double fine = middle.map.pixelsPerMetre(new Spot(middle.figure.middle(), reach.ground + 1)) * middle.shrunk;
    double perMetre = Math.min(WIDEST_PX / (to - from), fine * 1.25);
    int w = (int) Math.round((to - from) * perMetre);
    int h = (int) Math.round(reach.height() * perMetre);
    BufferedImage out = new BufferedImage(w, h, BufferedImage.TYPE_INT_RGB);
    int place = 0;
    for (int px = 0; px < w; px++) {
      double x = from + (px + 0.5) / perMetre;
      place = place(x, reach, place);
      for (int py = 0; py < h; py++) {
        double y = reach.top - (py + 0.5) / perMetre;
        out.setRGB(px, py, colour(x, y, place));
      }
    }
    return coded(out);
  }

  /** The frame that shows a place best without the athlete, the present one unless another is clearly better. */
  private int place(double x, Reach reach, int now) {
    int best = now;
    double most = score(places.get(now), x, reach) + KEEP_M;
    for (int i = 0; i < places.size(); i++) {
      double s = score(places.get(i), x, reach);
      if (s > most) {
        most = s;
        best = i;
      }
    }
    return best;
  }

  private static double score(Layer l, double x, Reach reach) {
    boolean all = l.shows(x, reach.ground) && l.shows(x, reach.ground + 1);
    return Math.min(AWAY_M, l.figure.aside(x)) - (all ? 0 : 10);
  }

  private int colour(double x, double y, int place) {
    int base = places.get(place).colour(x, y);
    for (int i = 0; base < 0 && i < places.size(); i++) {
      // a place at the picture's edge, or above it: what any frame shows without the athlete
      base = places.get(i).figure.shows(x, y) > 0 ? -1 : places.get(i).colour(x, y);
    }
    base = base < 0 ? EMPTY : base;
    double most = 0;
    int over = base;
    for (Layer l : athletes) {
      double share = l.figure.shows(x, y);
      if (share > most) {
        int c = l.colour(x, y);
        if (c >= 0) {
          most = share;
          over = c;
        }
      }
    }
    return mixed(base, over, most);
  }

  private static int mixed(int a, int b, double share) {
    int s = (int) (256 * share);
    int red = ((a >> 16 & 0xff) * (256 - s) + (b >> 16 & 0xff) * s) >> 8;
    int green = ((a >> 8 & 0xff) * (256 - s) + (b >> 8 & 0xff) * s) >> 8;
    int blue = ((a & 0xff) * (256 - s) + (b & 0xff) * s) >> 8;
    return red << 16 | green << 8 | blue;
  }

  private static byte[] coded(BufferedImage image) {
    ImageWriter writer = ImageIO.getImageWritersByFormatName("jpeg").next();
    ImageWriteParam how = writer.getDefaultWriteParam();
    how.setCompressionMode(ImageWriteParam.MODE_EXPLICIT);
    how.setCompressionQuality(0.88f);
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    try (var to = ImageIO.createImageOutputStream(out)) {
      writer.setOutput(to);
      writer.write(null, new IIOImage(image, null, null), how);
    } catch (IOException e) {
      throw new UncheckedIOException("the photograph could not be written", e);
    } finally {
      writer.dispose();
    }
    return out.toByteArray();
  }
}
