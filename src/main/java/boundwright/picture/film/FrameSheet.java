package boundwright.picture.film;

import boundwright.picture.BodyPicture;
import boundwright.picture.StripPaths;
import java.util.List;

/**
 * One frame with the athlete's points over it and, beneath, its figures: for the athlete to keep.
 *
 * @param picture the frame
 * @param head what it shows, in a line
 * @param lines the figures, a line each
 */
public record FrameSheet(BodyPicture picture, String head, List<String> lines) {
  private static final double WIDTH = 480;
  private static final String INK = "#1f1a17";
  private static final String LIGHT = "#faf6ec";

  /** Takes a copy. */
  public FrameSheet {
    lines = List.copyOf(lines);
  }

  private double high() {
    return WIDTH * picture.view().height() / picture.view().width();
  }

  /** Width of the drawing. */
  public double width() {
    return WIDTH;
  }

  /** Height of the drawing. */
  public double height() {
    return high() + 34 + 17 * lines.size() + 8;
  }

  /** The sheet as one {@code svg} element; {@code still} is the frame's picture as a data address, or empty where it is gone. */
  public String svg(String still) {
    StringBuilder out = new StringBuilder(8_000);
    String w = n(WIDTH);
    out.append("<svg xmlns=\"http://www.w3.org/2000/svg\" xmlns:xlink=\"http://www.w3.org/1999/xlink\" viewBox=\"0 0 ").append(w).append(' ')
        .append(n(height())).append("\" width=\"").append(w).append("\" height=\"").append(n(height()))
        .append("\" font-family=\"Bitter, Georgia, serif\">\n<rect x=\"0\" y=\"0\" width=\"").append(w).append("\" height=\"").append(n(height()))
        .append("\" fill=\"").append(LIGHT).append("\"/>\n<svg x=\"0\" y=\"0\" width=\"").append(w).append("\" height=\"").append(n(high()))
        .append("\" viewBox=\"").append(picture.view().box()).append("\" overflow=\"hidden\">\n");
    if (!still.isEmpty()) {
      out.append("<image xlink:href=\"").append(still).append("\" x=\"0\" y=\"0\" width=\"").append(picture.width()).append("\" height=\"")
          .append(picture.height()).append("\" preserveAspectRatio=\"none\"/>\n");
    }
    double unit = picture.view().width() / WIDTH;
    for (BodyPicture.Bone b : picture.bones()) {
      line(out, b, LIGHT, 5 * unit, "none");
    }
    for (BodyPicture.Bone b : picture.bones()) {
      line(out, b, INK, ("across".equals(b.style()) ? 1 : 2) * unit, "left".equals(b.style()) ? n(5 * unit) + " " + n(4 * unit) : "none");
    }
    for (BodyPicture.Dot d : picture.dots()) {
      boolean left = d.style().startsWith("left");
      out.append("<circle cx=\"").append(n(d.x())).append("\" cy=\"").append(n(d.y())).append("\" r=\"").append(n(picture.view().dot()))
          .append("\" fill=\"").append(!d.sure() ? "none" : left ? LIGHT : INK).append("\" stroke=\"").append(left || !d.sure() ? INK : LIGHT)
          .append("\" stroke-width=\"").append(n(1.5 * unit)).append("\"/>\n");
    }
    out.append("</svg>\n");
    text(out, high() + 24, 16, "700", head);
    for (int i = 0; i < lines.size(); i++) {
      text(out, high() + 24 + 20 + 17 * i, 13, "400", lines.get(i));
    }
    return out.append("</svg>\n").toString();
  }

  private static void line(StringBuilder out, BodyPicture.Bone b, String ink, double wide, String dash) {
    out.append("<path d=\"M").append(n(b.x1())).append(' ').append(n(b.y1())).append('L').append(n(b.x2())).append(' ').append(n(b.y2()))
        .append("\" fill=\"none\" stroke=\"").append(ink).append("\" stroke-width=\"").append(n(wide)).append("\" stroke-dasharray=\"").append(dash)
        .append("\" stroke-linecap=\"round\"/>\n");
  }

  private static void text(StringBuilder out, double y, int size, String weight, String said) {
    out.append("<text x=\"10\" y=\"").append(n(y)).append("\" font-size=\"").append(size).append("\" font-weight=\"").append(weight).append("\" fill=\"")
        .append(INK).append("\">").append(said.replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;")).append("</text>\n");
  }

  private static String n(double v) {
    return StripPaths.number(v);
  }
}
