package boundwright.picture.film;

import boundwright.clip.reading.ClipReading;
import boundwright.clip.reading.ReadContact;
import boundwright.clip.track.BodyPoint;
import boundwright.clip.track.Track;
import boundwright.picture.StripPaths;
import boundwright.picture.strip.SeenStrip;
import boundwright.picture.strip.StripSvg;
import boundwright.quantity.Estimate;
import boundwright.quantity.LengthUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * The long photograph over the house's strip, foot under foot, and under each foot what was read there. One picture, the same on screen and paper.
 *
 * @param width units of the drawing
 * @param photoHigh height of the photograph in it
 * @param from left edge of the photograph in the athlete's plane [m]
 * @param to its right edge [m]
 * @param reach how high it is [m]
 * @param under the strip, or null where the clip has no lengths
 * @param feet what stands under each foot
 * @param turned whether the photograph is turned round, because the athlete ran to the left
 */
public record LongPicture(
    double width, double photoHigh, double from, double to, LongPhoto.Reach reach, SeenStrip.@Nullable Under under, List<Foot> feet, boolean turned) {
  private static final double PLAIN_WIDTH = 720;
  /** Beside the outermost feet where there is no strip [m]. */
  private static final double BESIDE_M = 1.0;
  private static final double SIZE = 9.5;
  private static final double LINE = 12.5;
  private static final double COLUMN = 62;
  private static final String INK = "#1f1a17";
  private static final String SOFT = "#574b41";
  private static final String[] NAMES = {"ground", "trunk", "free thigh", "foot"};

  /**
   * Figures of one contact.
   *
   * @param x where it stands in the drawing
   * @param values as many as there are names; empty where a value was not read
   */
  public record Foot(double x, List<String> values) {}

  /** Takes a copy. */
  public LongPicture {
    feet = List.copyOf(feet);
  }

  /** The picture of a reading; empty where no contact shows enough of the athlete. */
  public static Optional<LongPicture> of(ClipReading reading, @Nullable Double markToSand_m, LengthUnit unit) {
    LongPhoto.Reach reach = LongPhoto.reach(reading).orElse(null);
    if (reach == null || reading.contacts().isEmpty()) {
      return Optional.empty();
    }
    SeenStrip.Under under = SeenStrip.under(reading, markToSand_m, unit);
    double width = under == null ? PLAIN_WIDTH : under.strip().width();
    double from = under == null ? ends(reading, true) - BESIDE_M : under.from();
    double to = under == null ? ends(reading, false) + BESIDE_M : under.to();
    List<Foot> feet = new ArrayList<>();
    for (int i = 0; i < reading.contacts().size(); i++) {
      ReadContact r = reading.contacts().get(i);
      double at = (r.contact().place_m().p50() - from) / (to - from) * width;
      if (at > 0 && at < width && (reading.number(i) > 0 || under == null) && !r.contact().bothFeet()) {
        feet.add(new Foot(StripPaths.round(at), figures(r)));
      }
    }
    return Optional.of(new LongPicture(width, StripPaths.round(reach.height() * width / (to - from)), from, to, reach, under, feet, runsLeft(reading)));
  }

  private static double ends(ClipReading reading, boolean first) {
    double[] x = reading.contacts().stream().mapToDouble(r -> r.contact().place_m().p50()).sorted().toArray();
    return first ? x[0] : x[x.length - 1];
  }

  /** Whether the athlete runs to the left of the film's picture. */
  public static boolean runsLeft(ClipReading reading) {
    Track px = reading.athlete().pixels();
    Track m = reading.athlete().metres();
    double same = 0;
    // within a frame, because a camera that follows keeps the athlete in one place of the picture
    for (int i = 0; i < px.frames(); i++) {
      same += sameWay(px, m, i);
    }
    return same < 0;
  }

  private static double sameWay(Track px, Track m, int frame) {
    double mx = 0;
    double mm = 0;
    int n = 0;
    for (BodyPoint p : BodyPoint.values()) {
      if (px.seen(p, frame) && m.seen(p, frame)) {
        mx += px.spot(p, frame).x();
        mm += m.spot(p, frame).x();
        n++;
      }
    }
    double sum = 0;
    for (BodyPoint p : BodyPoint.values()) {
      if (n > 0 && px.seen(p, frame) && m.seen(p, frame)) {
        sum += (px.spot(p, frame).x() - mx / n) * (m.spot(p, frame).x() - mm / n);
      }
    }
    return Math.signum(sum);
  }

  private static List<String> figures(ReadContact r) {
    Estimate ground = r.contact().duration_s();
    return List.of(
        ground == null ? "" : String.format(Locale.ROOT, "%.3f ± %.3f s", ground.p50(), ground.halfWidth()), degrees(r.trunkLeanDeg()),
        degrees(r.thighDeg()), degrees(r.strikeDeg()));
  }

  private static String degrees(double v) {
    return Double.isNaN(v) ? "" : Math.round(v) + "°";
  }

  private boolean crowded() {
    double before = Double.NEGATIVE_INFINITY;
    for (Foot f : feet) {
      if (f.x - before < COLUMN) {
        return true;
      }
      before = f.x;
    }
    return false;
  }

  /** Height of the whole drawing. */
  public double height() {
    double strip = under == null ? 0 : under.strip().height();
    return photoHigh + strip + 8 + NAMES.length * LINE * (crowded() ? 2 : 1) + (crowded() ? 8 : 0) + 6;
  }

  /** What is to be read from the picture, in sentences. */
  public String said() {
    StringBuilder out = new StringBuilder("The rep as one photograph, travel to the right. ");
    for (int k = 0; k < feet.size(); k++) {
      out.append("Contact ").append(k + 1).append(": ");
      for (int i = 0; i < NAMES.length; i++) {
        String v = feet.get(k).values.get(i);
        out.append(NAMES[i]).append(' ').append(v.isEmpty() ? "not read" : v).append(i + 1 < NAMES.length ? ", " : ". ");
      }
    }
    return out.toString().strip();
  }

  /** The whole picture as one {@code svg} element; {@code photo} is where the photograph is to be fetched, or its bytes as a data address. */
  public String svg(String photo) {
    StringBuilder out = new StringBuilder(20_000);
    double h = height();
    out.append("<svg xmlns=\"http://www.w3.org/2000/svg\" xmlns:xlink=\"http://www.w3.org/1999/xlink\" class=\"long-picture\" role=\"img\" viewBox=\"0 0 ")
        .append(n(width)).append(' ').append(n(h)).append("\" width=\"").append(n(width)).append("\" height=\"").append(n(h))
        .append("\" font-family=\"Bitter, Georgia, serif\">\n<title>The rep in one picture</title>\n<desc>").append(said()).append("</desc>\n")
        .append("<image xlink:href=\"").append(photo).append("\" href=\"").append(photo).append("\" x=\"0\" y=\"0\" width=\"").append(n(width))
        .append("\" height=\"").append(n(photoHigh)).append("\" preserveAspectRatio=\"none\"/>\n");
    double y = photoHigh;
    if (under != null) {
      out.append("<svg x=\"0\" y=\"").append(n(y)).append("\" width=\"").append(n(width)).append("\" height=\"").append(under.strip().heightText())
          .append("\">").append(StripSvg.of(under.strip())).append("</svg>\n");
      y += under.strip().height();
    }
    figures(out, y + 8 + SIZE);
    return out.append("</svg>\n").toString();
  }

  private void figures(StringBuilder out, double y) {
    boolean two = crowded();
    double lane = NAMES.length * LINE + 8;
    for (int second = 0; second < (two ? 2 : 1); second++) {
      for (int i = 0; i < NAMES.length; i++) {
        text(out, 2, y + second * lane + i * LINE, "start", SOFT, "400", NAMES[i]);
      }
    }
    for (int k = 0; k < feet.size(); k++) {
      double down = y + (two && k % 2 == 1 ? lane : 0);
      double x = Math.max(84, Math.min(width - 34, feet.get(k).x));
      for (int i = 0; i < NAMES.length; i++) {
        text(out, x, down + i * LINE, "middle", INK, i == 0 ? "700" : "400", feet.get(k).values.get(i));
      }
    }
  }

  private static void text(StringBuilder out, double x, double y, String anchor, String ink, String weight, String said) {
    if (!said.isEmpty()) {
      out.append("<text x=\"").append(n(x)).append("\" y=\"").append(n(y)).append("\" font-size=\"").append(n(SIZE)).append("\" text-anchor=\"")
          .append(anchor).append("\" font-weight=\"").append(weight).append("\" fill=\"").append(ink).append("\">").append(said).append("</text>\n");
    }
  }

  private static String n(double v) {
    return StripPaths.number(v);
  }
}
