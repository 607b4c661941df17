package boundwright.clip.truth;

import boundwright.clip.track.BodyPoint;
import boundwright.clip.track.Spot;
import java.awt.Color;
import java.awt.GradientPaint;
import java.awt.Graphics2D;
import java.awt.Rectangle;
import java.awt.RenderingHints;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Path2D;
import java.awt.image.BufferedImage;
import java.awt.image.DataBufferByte;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.function.DoubleFunction;

/**
 * A made-up training ground of any width, painted once from things that stand at fixed places; athletes are painted into it and taken out again,
 * so that a frame costs what the athletes cost. Grass with tufts, a runway with lines, grit and worn places, a hedge with trees and posts.
 */
public final class PaintedPlace {
  /** What there is to see. */
  public enum Kind {
    /** Grass, hedge, trees, posts, lines, grit. */
    RICH,
    /** The same without grit, tufts and leaves: a smooth runway before a smooth hedge. */
    PLAIN,
    /** A wall without anything on it, and the runway's two lines. */
    WALL
  }

  /** Half a runway is so wide [m]: 1.22 m is the least (World Athletics, read). */
  private static final double HALF = 0.61;
  private static final double HEDGE = 9;

  private final Camera camera;
  private final BufferedImage image;
  private final byte[] still;
  private final byte[] rgb;
  private final List<Rectangle> dirty = new ArrayList<>();

  /** Paints the place. */
  public PaintedPlace(Camera camera, Kind kind, long seed) {
    this.camera = camera;
    image = new BufferedImage(camera.width(), camera.high(), BufferedImage.TYPE_3BYTE_BGR);
    paint(kind, new Random(seed));
    still = data(image).clone();
    rgb = new byte[still.length];
    for (int i = 0; i < rgb.length; i += 3) {
      turn(i);
    }
  }

  private static byte[] data(BufferedImage image) {
    return ((DataBufferByte) image.getRaster().getDataBuffer()).getData();
  }

  private void turn(int i) {
    byte[] bgr = data(image);
    rgb[i] = bgr[i + 2];
    rgb[i + 1] = bgr[i + 1];
    rgb[i + 2] = bgr[i];
  }

  /** A frame with nobody or some people; the bytes (red, green, blue) are used again. */
  public byte[] rgb(List<DoubleFunction<Body>> people, double t, double shutter_s) {
    return rgb(people.stream().map(p -> new Person(p, Painter.Kit.USUAL)).toList(), List.of(t), shutter_s);
  }

  /** Somebody in the picture. */
  public record Person(DoubleFunction<Body> at, Painter.Kit kit) {}

  /** The same with what each wears, each at a time of their own; one time stands for all. */
  public byte[] rgb(List<Person> people, List<Double> times, double shutter_s) {
    for (Rectangle r : dirty) {
      restore(r);
    }
    List<Rectangle> fresh = new ArrayList<>();
    for (int i = 0; i < people.size(); i++) {
      fresh.add(add(people.get(i), times.get(Math.min(i, times.size() - 1)), shutter_s));
    }
    List<Rectangle> both = new ArrayList<>(dirty);
    both.addAll(fresh);
    for (Rectangle r : both) {
      for (int y = r.y; y < r.y + r.height; y++) {
        for (int x = r.x; x < r.x + r.width; x++) {
          turn(3 * (y * camera.width() + x));
        }
      }
    }
    dirty.clear();
    dirty.addAll(fresh);
    return rgb;
  }

  private void restore(Rectangle r) {
    for (int y = r.y; y < r.y + r.height; y++) {
      int at = 3 * (y * camera.width() + r.x);
      System.arraycopy(still, at, data(image), at, 3 * r.width);
    }
  }

  private Rectangle box(Body... bodies) {
    double x0 = Double.POSITIVE_INFINITY;
    double x1 = Double.NEGATIVE_INFINITY;
    double y0 = x0;
    double y1 = x1;
    for (Body b : bodies) {
      for (BodyPoint p : BodyPoint.values()) {
        double[] w = b.at(p);
        Spot s = camera.project(w[0], w[1], w[2]);
        x0 = Math.min(x0, s.x());
        x1 = Math.max(x1, s.x());
        y0 = Math.min(y0, s.y());
        y1 = Math.max(y1, s.y());
      }
      y1 = Math.max(y1, camera.project(b.at(BodyPoint.LEFT_HIP)[0], 0, b.at(BodyPoint.LEFT_HIP)[2]).y());
    }
    int m = (int) (0.35 * camera.focal() / camera.distance()) + 66;
    return new Rectangle((int) x0 - m, (int) y0 - m, (int) (x1 - x0) + 2 * m, (int) (y1 - y0) + 2 * m).intersection(new Rectangle(0, 0, camera.width(), camera.high()));
  }

  private Rectangle add(Person person, double t, double shutter_s) {
    Body mid = person.at.apply(t);
    if (shutter_s == 0) {
      Rectangle r = box(mid);
      if (!r.isEmpty()) {
        new Painter(camera, image).wearing(person.kit).add(mid, 0);
      }
      return r.isEmpty() ? new Rectangle() : r;
    }
    Body before = person.at.apply(t - shutter_s / 2);
    Body after = person.at.apply(t + shutter_s / 2);
    Rectangle r = box(before, mid, after);
    if (r.isEmpty()) {
      return new Rectangle();
    }
    byte[] under = cut(r);
    int[] sum = new int[under.length];
    for (Body b : List.of(before, mid, after)) {
      put(r, under);
      new Painter(camera, image).wearing(person.kit).add(b, 0);
      byte[] now = cut(r);
      for (int i = 0; i < sum.length; i++) {
        sum[i] += now[i] & 0xff;
      }
    }
    for (int i = 0; i < sum.length; i++) {
      under[i] = (byte) ((sum[i] + 1) / 3);
    }
    put(r, under);
    return r;
  }

  private byte[] cut(Rectangle r) {
    byte[] out = new byte[3 * r.width * r.height];
    for (int y = 0; y < r.height; y++) {
      System.arraycopy(data(image), 3 * ((r.y + y) * camera.width() + r.x), out, 3 * y * r.width, 3 * r.width);
    }
    return out;
  }

  private void put(Rectangle r, byte[] bytes) {
    for (int y = 0; y < r.height; y++) {
      System.arraycopy(bytes, 3 * y * r.width, data(image), 3 * ((r.y + y) * camera.width() + r.x), 3 * r.width);
    }
  }

  // --- the place itself; sideways is counted from the athlete's line, away from the camera positive

  private Spot at(double x, double up, double away) {
    return camera.project(x, up, camera.toTheRight() ? -away : away);
  }

  private void paint(Kind kind, Random random) {
    Graphics2D g = image.createGraphics();
    g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
    int w = camera.width();
    int h = camera.high();
    double half = 0.6 * w / camera.focal() * (camera.distance() + HEDGE);
    double x0 = camera.x() - half;
    double x1 = camera.x() + half;
    float horizon = (float) at(camera.x(), camera.height(), 1000).y();
    if (kind == Kind.WALL) {
      g.setColor(new Color(196, 194, 188));
      g.fillRect(0, 0, w, h);
      band(g, x0, x1, -40, 3, new Color(170, 168, 164));
    } else {
      g.setPaint(new GradientPaint(0, 0, new Color(150, 180, 215), 0, horizon, new Color(214, 222, 228)));
      g.fillRect(0, 0, w, h);
      band(g, x0, x1, -0.98 * camera.distance(), HEDGE, new Color(106, 132, 70));
      hedge(g, x0, x1, kind, random);
      if (kind == Kind.RICH) {
        grit(g, x0, x1, HALF + 0.3, HEDGE - 0.5, 60, new Color(80, 108, 48), new Color(140, 160, 90), random);
        grit(g, x0, x1, -0.8 * camera.distance(), -HALF - 0.3, 60, new Color(80, 108, 48), new Color(140, 160, 90), random);
      }
    }
    band(g, x0, x1, -HALF, HALF, new Color(150, 70, 52));
    if (kind == Kind.RICH) {
      grit(g, x0, x1, -HALF, HALF, 90, new Color(118, 52, 40), new Color(176, 98, 78), random);
    }
    band(g, x0, x1, HALF, HALF + 0.05, new Color(232, 232, 226));
    band(g, x0, x1, -HALF - 0.05, -HALF, new Color(232, 232, 226));
    g.dispose();
  }

  private void band(Graphics2D g, double x0, double x1, double near, double far, Color colour) {
    Path2D p = new Path2D.Double();
    Spot a = at(x0, 0, near);
    p.moveTo(a.x(), a.y());
    for (double[] c : new double[][] {{x1, near}, {x1, far}, {x0, far}}) {
      Spot s = at(c[0], 0, c[1]);
      p.lineTo(s.x(), s.y());
    }
    p.closePath();
    g.setColor(colour);
    g.fill(p);
  }

  /** Small flat things on the ground, so many in a metre of runway. */
  private void grit(Graphics2D g, double x0, double x1, double near, double far, int perMetre, Color dark, Color light, Random random) {
    for (int k = 0; k < perMetre * (x1 - x0); k++) {
      double x = x0 + (x1 - x0) * random.nextDouble();
      double away = near + (far - near) * random.nextDouble();
      Spot s = at(x, 0, away);
      if (!camera.sees(s)) {
        continue;
      }
      double px = camera.focal() / (camera.distance() + away) * (0.01 + 0.06 * random.nextDouble() * random.nextDouble());
      g.setColor(random.nextBoolean() ? dark : light);
      g.fill(new Ellipse2D.Double(s.x() - px, s.y() - 0.4 * px, 2 * px, Math.max(1, 0.8 * px)));
    }
  }

  private void hedge(Graphics2D g, double x0, double x1, Kind kind, Random random) {
    double px = camera.focal() / (camera.distance() + HEDGE);
    double step = kind == Kind.RICH ? 0.5 : 1.2;
    for (double x = x0; x < x1; x += step) {
      Spot foot = at(x, 0, HEDGE);
      double r = px * (0.9 + (kind == Kind.RICH ? 0.5 * random.nextDouble() : 0));
      int green = kind == Kind.RICH ? random.nextInt(36) : 0;
      g.setColor(new Color(62 + green, 88 + green, 52 + green / 2));
      g.fill(new Ellipse2D.Double(foot.x() - r, foot.y() - 1.6 * r, 2 * r, 1.8 * r));
    }
    if (kind == Kind.RICH) {
      for (int k = 0; k < 90 * (x1 - x0); k++) {
        double x = x0 + (x1 - x0) * random.nextDouble();
        Spot s = at(x, 1.6 * random.nextDouble(), HEDGE);
        double r = px * (0.02 + 0.07 * random.nextDouble());
        int c = random.nextInt(90);
        g.setColor(new Color(30 + c, 52 + c, 28 + c / 2));
        g.fill(new Ellipse2D.Double(s.x() - r, s.y() - r, 2 * r, 1.4 * r));
      }
      for (double x = x0 + 2 * random.nextDouble(); x < x1; x += 3 + 4 * random.nextDouble()) {
        Spot foot = at(x, 0, HEDGE + 6);
        Spot top = at(x, 3.5 + 3 * random.nextDouble(), HEDGE + 6);
        double wide = 0.4 * (foot.y() - top.y());
        g.setColor(new Color(84, 66, 48));
        g.fill(new Rectangle((int) (foot.x() - 0.06 * wide), (int) top.y(), (int) Math.max(2, 0.12 * wide), (int) (foot.y() - top.y())));
        for (int k = 0; k < 60; k++) {
          double r = wide * (0.06 + 0.14 * random.nextDouble());
          int c = random.nextInt(70);
          g.setColor(new Color(40 + c, 70 + c, 34 + c / 2));
          g.fill(new Ellipse2D.Double(foot.x() + wide * (random.nextDouble() - 0.5) * 1.6 - r, top.y() + wide * (random.nextDouble() - 0.4) - r, 2 * r, 2 * r));
        }
      }
    }
  }
}
