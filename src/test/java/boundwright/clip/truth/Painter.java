package boundwright.clip.truth;

import boundwright.clip.film.Picture;
import boundwright.clip.track.BodyPoint;
import boundwright.clip.track.Joint;
import boundwright.clip.track.Spot;
import boundwright.footfall.Foot;
import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.GradientPaint;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.image.BufferedImage;

/** Paints the made-up athlete on a made-up runway: rounded limbs with light from above, skin, shirt, shorts and shoes. */
public final class Painter {
  /** What an athlete wears, and their skin and hair. */
  public record Kit(Color skin, Color shirt, Color shorts, Color shoe, Color hair) {
    public static final Kit USUAL =
        new Kit(new Color(196, 140, 108), new Color(40, 84, 150), new Color(34, 34, 44), new Color(230, 226, 80), new Color(52, 36, 26));
  }

  private final Camera camera;
  private final BufferedImage image;
  private final Graphics2D g;
  private Kit kit = Kit.USUAL;

  /** Paints athletes into a picture that is there already, as the camera sees them. */
  public Painter(Camera camera, BufferedImage into) {
    this.camera = camera;
    image = into;
    g = image.createGraphics();
    g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
  }

  public Painter(Camera camera) {
    this(camera, new BufferedImage(camera.width(), camera.high(), BufferedImage.TYPE_3BYTE_BGR));
    int w = camera.width();
    int h = camera.high();
    double horizon = camera.project(camera.x(), camera.height(), -1000).y();
    double runway = camera.project(camera.x(), 0, 0).y() - 30;
    g.setPaint(new GradientPaint(0, 0, new Color(150, 180, 215), 0, (float) horizon, new Color(214, 222, 228)));
    g.fillRect(0, 0, w, h);
    g.setColor(new Color(82, 104, 66));
    for (int x = -20; x < w; x += 37) {
      g.fill(new Ellipse2D.Double(x, horizon - 30 - (x * 7919 % 23), 60, 80));
    }
    g.setPaint(new GradientPaint(0, (float) horizon, new Color(120, 142, 84), 0, h, new Color(96, 128, 62)));
    g.fillRect(0, (int) horizon, w, h);
    g.setPaint(new GradientPaint(0, (float) runway, new Color(160, 78, 58), 0, h, new Color(140, 62, 44)));
    g.fillRect(0, (int) runway, w, 90);
  }

  public Picture picture() {
    byte[] rgb = new byte[3 * image.getWidth() * image.getHeight()];
    int at = 0;
    for (int y = 0; y < image.getHeight(); y++) {
      for (int x = 0; x < image.getWidth(); x++) {
        int p = image.getRGB(x, y);
        rgb[at++] = (byte) (p >> 16);
        rgb[at++] = (byte) (p >> 8);
        rgb[at++] = (byte) p;
      }
    }
    return new Picture(image.getWidth(), image.getHeight(), rgb);
  }

  public BufferedImage image() {
    return image;
  }

  /** Athletes added from now on wear this. */
  public Painter wearing(Kit worn) {
    kit = worn;
    return this;
  }

  /** Adds an athlete, {@code ahead} metres further along the runway. */
  public Painter add(Body body, double ahead) {
    // the camera stands on the athlete's right when they run to the right of the picture
    boolean forward = body.at(BodyPoint.RIGHT_HIP)[2] >= body.at(BodyPoint.LEFT_HIP)[2];
    Foot near = camera.toTheRight() == forward ? Foot.RIGHT : Foot.LEFT;
    double aside = (body.at(BodyPoint.LEFT_HIP)[2] + body.at(BodyPoint.RIGHT_HIP)[2]) / 2;
    Spot sole = camera.project(body.at(BodyPoint.LEFT_HIP)[0] + ahead, 0, aside);
    g.setColor(new Color(60, 30, 24, 110));
    g.fill(new Ellipse2D.Double(sole.x() - 60, sole.y() - 8, 120, 16));
    arm(body, ahead, near.other(), 0.75);
    leg(body, ahead, near.other(), 0.75);
    trunk(body, ahead);
    head(body, ahead, near);
    leg(body, ahead, near, 1);
    arm(body, ahead, near, 1);
    return this;
  }

  private Spot at(Body b, double ahead, BodyPoint p) {
    double[] w = b.at(p);
    return camera.project(w[0] + ahead, w[1], w[2]);
  }

  private double px(double metres) {
    return metres * camera.focal() / camera.distance();
  }

  private void leg(Body b, double ahead, Foot f, double light) {
    Spot hip = at(b, ahead, BodyPoint.of(Joint.HIP, f));
    Spot knee = at(b, ahead, BodyPoint.of(Joint.KNEE, f));
    Spot ankle = at(b, ahead, BodyPoint.of(Joint.ANKLE, f));
    Spot heel = at(b, ahead, BodyPoint.of(Joint.HEEL, f));
    Spot toe = at(b, ahead, BodyPoint.of(Joint.TOE, f));
    limb(knee, ankle, 0.115, 0.075, kit.skin(), light);
    limb(hip, knee, 0.17, 0.115, kit.skin(), light);
    limb(hip, hip.towards(knee, 0.5), 0.19, 0.165, kit.shorts(), light);
    limb(heel, toe, 0.075, 0.05, kit.shoe(), light);
    limb(ankle, heel.towards(toe, 0.3), 0.08, 0.08, kit.shoe(), light);
  }

  private void arm(Body b, double ahead, Foot f, double light) {
    Spot shoulder = at(b, ahead, BodyPoint.of(Joint.SHOULDER, f));
    Spot elbow = at(b, ahead, BodyPoint.of(Joint.ELBOW, f));
    Spot wrist = at(b, ahead, BodyPoint.of(Joint.WRIST, f));
    Spot knuckle = at(b, ahead, BodyPoint.of(Joint.INDEX, f)).towards(at(b, ahead, BodyPoint.of(Joint.PINKY, f)), 0.5);
    limb(shoulder, elbow, 0.105, 0.08, kit.skin(), light);
    limb(shoulder, shoulder.towards(elbow, 0.45), 0.125, 0.11, kit.shirt(), light);
    limb(elbow, wrist, 0.08, 0.055, kit.skin(), light);
    limb(wrist, knuckle, 0.06, 0.075, kit.skin(), light);
  }

  private void trunk(Body b, double ahead) {
    Spot hip = at(b, ahead, BodyPoint.LEFT_HIP).towards(at(b, ahead, BodyPoint.RIGHT_HIP), 0.5);
    Spot shoulder = at(b, ahead, BodyPoint.LEFT_SHOULDER).towards(at(b, ahead, BodyPoint.RIGHT_SHOULDER), 0.5);
    Spot ear = at(b, ahead, BodyPoint.LEFT_EAR).towards(at(b, ahead, BodyPoint.RIGHT_EAR), 0.5);
    limb(shoulder, ear, 0.11, 0.11, kit.skin(), 0.85);
    limb(hip, shoulder, 0.21, 0.24, kit.shirt(), 0.95);
    limb(hip, hip.towards(shoulder, 0.18), 0.22, 0.21, kit.shorts(), 0.95);
  }

  private void head(Body b, double ahead, Foot near) {
    Spot ear = at(b, ahead, near == Foot.RIGHT ? BodyPoint.RIGHT_EAR : BodyPoint.LEFT_EAR);
    Spot eye = at(b, ahead, near == Foot.RIGHT ? BodyPoint.RIGHT_EYE : BodyPoint.LEFT_EYE);
    Spot nose = at(b, ahead, BodyPoint.NOSE);
    Spot mouth = at(b, ahead, near == Foot.RIGHT ? BodyPoint.RIGHT_MOUTH : BodyPoint.LEFT_MOUTH);
    double s = Math.signum(nose.x() - ear.x());
    g.setColor(kit.hair());
    g.fill(new Ellipse2D.Double(ear.x() - px(0.105) - s * px(0.005), ear.y() - px(0.135), px(0.21), px(0.21)));
    g.setPaint(new GradientPaint(0, (float) (ear.y() - px(0.1)), kit.skin().brighter(), 0, (float) (ear.y() + px(0.13)), kit.skin().darker()));
    Ellipse2D face = new Ellipse2D.Double(ear.x() - px(0.085) + s * px(0.025), ear.y() - px(0.09), px(0.17), px(0.21));
    g.fill(face);
    limb(nose, nose.towards(eye, 0.4), 0.03, 0.02, kit.skin(), 1);
    g.setColor(kit.skin().darker());
    g.fill(new Ellipse2D.Double(ear.x() - px(0.018), ear.y() - px(0.03), px(0.036), px(0.06)));
    g.setColor(kit.hair());
    g.fill(new Ellipse2D.Double(eye.x() - px(0.012), eye.y() - px(0.008), px(0.024), px(0.016)));
    g.setStroke(new BasicStroke((float) px(0.012)));
    g.draw(new Line2D.Double(mouth.x() - s * px(0.02), mouth.y(), mouth.x() + s * px(0.01), mouth.y()));
  }

  /** A limb that tapers from {@code da} to {@code db} metres across, lit from above and the left. */
  private void limb(Spot a, Spot b, double da, double db, Color colour, double light) {
    double l = Math.max(1e-6, a.to(b));
    double nx = -(b.y() - a.y()) / l;
    double ny = (b.x() - a.x()) / l;
    double ra = px(da) / 2;
    double rb = px(db) / 2;
    Path2D p = new Path2D.Double();
    p.moveTo(a.x() + nx * ra, a.y() + ny * ra);
    p.lineTo(b.x() + nx * rb, b.y() + ny * rb);
    p.lineTo(b.x() - nx * rb, b.y() - ny * rb);
    p.lineTo(a.x() - nx * ra, a.y() - ny * ra);
    p.closePath();
    double side = nx * -0.4 + ny * -0.9 > 0 ? 1 : -1;
    Spot m = a.towards(b, 0.5);
    double r = Math.max(ra, rb);
    g.setPaint(
        new GradientPaint(
            (float) (m.x() + side * nx * r), (float) (m.y() + side * ny * r), shade(colour, 1.15 * light),
            (float) (m.x() - side * nx * r), (float) (m.y() - side * ny * r), shade(colour, 0.65 * light)));
    g.fill(p);
    g.fill(new Ellipse2D.Double(a.x() - ra, a.y() - ra, 2 * ra, 2 * ra));
    g.fill(new Ellipse2D.Double(b.x() - rb, b.y() - rb, 2 * rb, 2 * rb));
  }

  private static Color shade(Color c, double by) {
    return new Color(part(c.getRed() * by), part(c.getGreen() * by), part(c.getBlue() * by));
  }

  private static int part(double v) {
    return (int) Math.max(0, Math.min(255, v));
  }
}
