package boundwright.picture.strip;

import boundwright.picture.StripPaths;
import boundwright.picture.strip.RunwayStrip.Arc;
import boundwright.picture.strip.RunwayStrip.Row;
import boundwright.picture.strip.RunwayStrip.Tape;
import boundwright.picture.strip.RunwayStrip.Text;
import boundwright.picture.strip.RunwayStrip.Whisker;

/**
 * Writes a strip as SVG. In Java and not in a template, because page, paper and the phone without a connection draw the same picture.
 */
public final class StripSvg {
  private static final String INK = "#1f1a17";
  private static final String BRICK = "#a8452f";
  private static final String LIGHT = "#faf6ec";
  private static final String WHITE = "#ffffff";

  private final RunwayStrip strip;
  private final StringBuilder out = new StringBuilder(12_000);

  private StripSvg(RunwayStrip strip) {
    this.strip = strip;
  }

  /** The strip as one {@code svg} element, ready to stand in a page. */
  public static String of(RunwayStrip strip) {
    return new StripSvg(strip).written();
  }

  private String written() {
    put("<svg xmlns=\"http://www.w3.org/2000/svg\" class=\"strip ", strip.form().cssClass(), "\" role=\"img\" viewBox=\"0 0 ",
        strip.widthText(), " ", strip.heightText(), "\" width=\"", strip.widthText(), "\" height=\"", strip.heightText(),
        "\" font-family=\"Bitter, Georgia, serif\" fill=\"none\">\n");
    put("<title>", escaped(strip.title()), "</title>\n<desc>", escaped(strip.said()), "</desc>\n");
    strip.rows().forEach(this::row);
    return out.append("</svg>\n").toString();
  }

  private void row(Row row) {
    put("<svg x=\"0\" y=\"", row.y(), "\" width=\"", row.width(), "\" height=\"", row.height(), "\" viewBox=\"", row.viewBox(),
        "\" overflow=\"hidden\">\n");
    ground(row);
    marks(row);
    flightsAndFeet(row);
    row.whiskers().forEach(this::whisker);
    row.texts().forEach(this::text);
    put("</svg>\n");
  }

  private void ground(Row row) {
    rect(row.x(), row.top(), row.width(), row.bottom() - row.top(), strip.flat() ? "#ded5b9" : BRICK, "");
    put("<path d=\"M", row.x(), " ", row.top(), "H", row.right(), "M", row.x(), " ", row.bottom(), "H", row.right(), "\" stroke=\"", INK,
        "\" stroke-width=\"0.6\"/>\n");
    Double sand = row.sandX();
    double high = row.bottom() - row.top() + 14;
    if (sand != null) {
      rect(sand, row.top() - 7, row.right() - sand, high, "#efe3c8", "");
      put("<path d=\"M", row.right(), " ", row.top() - 7, "H", sand, "V", row.bottom() + 7, "H", row.right(), "\" stroke=\"", INK,
          "\" stroke-width=\"0.8\"/>\n");
      row.grains().forEach(d -> put("<circle cx=\"", d.x(), "\" cy=\"", d.y(), "\" r=\"", d.r(), "\" fill=\"#b9a676\"/>"));
      put("\n");
    }
    put("<g fill=\"", strip.flat() ? BRICK : LIGHT, "\" fill-opacity=\"", strip.bandOpacity(), "\">\n");
    row.bands().forEach(b -> put("<path d=\"", b.path(), "\"/>"));
    put("\n</g>\n");
    if (sand != null) {
      for (Whisker w : row.whiskers()) {
        if (w.landing()) {
          double left = Math.max(w.left(), sand);
          rect(left, row.top() - 7, Math.max(0, w.right() - left), high, BRICK, " fill-opacity=\"0.10\"");
        }
      }
    }
  }

  private void marks(Row row) {
    if (row.breakPath() != null) {
      put("<path d=\"", row.breakPath(), "\" fill=\"", WHITE, "\" stroke=\"", INK, "\" stroke-width=\"0.6\"/>");
    }
    put("\n<g stroke=\"", INK, "\" stroke-width=\"0.7\">\n");
    row.ticks().forEach(t -> put("<path d=\"M", t.x(), " ", t.y(), "v", t.length(), "\"/>"));
    put("\n</g>\n");
    row.tapes().forEach(this::tape);
    if (row.bracket() != null) {
      put("<path class=\"strip-window\" d=\"", row.bracket().path(), "\" stroke=\"", INK, "\" stroke-width=\"2\"/>");
    }
    put("\n");
  }

  private void tape(Tape tape) {
    put("<rect x=\"", tape.x() - 2.5, "\" y=\"", tape.y(), "\" width=\"5\" height=\"", tape.height(), "\" fill=\"",
        tape.hollow() ? "none" : WHITE, "\" stroke=\"", tape.hollow() ? WHITE : INK, "\" stroke-width=\"", tape.hollow() ? 1.3 : 0.6,
        "\"/>\n");
    put("<path d=\"M", tape.x(), " ", tape.y(), "V", tape.stemTop(), "H", tape.flagTo(), "\" stroke=\"", INK, "\" stroke-width=\"0.7\"/>\n");
  }

  private void flightsAndFeet(Row row) {
    for (Arc arc : row.arcs()) {
      boolean jump = arc.kind() == Arc.Kind.JUMP;
      put("<path d=\"", arc.path(), "\" stroke=\"", INK, "\" stroke-width=\"", jump ? 2.2 : 1.1, "\" stroke-dasharray=\"",
          jump ? "5 3" : "none", "\"/>\n");
    }
    put("<g stroke=\"", INK, "\" stroke-width=\"1.1\">\n");
    row.prints().forEach(p -> put("<path d=\"", p.path(), "\" fill=\"", p.filled() ? INK : LIGHT, "\"/>"));
    put("\n</g>\n");
  }

  private void whisker(Whisker w) {
    double top = w.y() - 1.7;
    put("<path d=\"M", w.left(), " ", top, "v3.4M", w.left(), " ", w.y(), "H", w.right(), "M", w.right(), " ", top, "v3.4\" stroke=\"", INK,
        "\" stroke-width=\"", w.landing() ? 1.5 : 0.7, "\"/>\n");
    put("<circle cx=\"", w.middle(), "\" cy=\"", w.y(), "\" r=\"1.9\" fill=\"", w.filled() ? INK : WHITE, "\" stroke=\"", INK,
        "\" stroke-width=\"0.7\"/>\n");
  }

  private void text(Text t) {
    put("<text x=\"", t.x(), "\" y=\"", t.y(), "\" font-size=\"", t.size(), "\" text-anchor=\"", t.anchor(), "\" font-weight=\"",
        t.tone() == Text.Tone.FIGURE ? "700" : "400", "\" letter-spacing=\"", t.tone() == Text.Tone.CAPTION ? 1.2 : 0.0, "\" fill=\"",
        t.tone() == Text.Tone.COUNT && !strip.flat() ? LIGHT : INK, "\">", escaped(t.said()), "</text>\n");
  }

  private void rect(double x, double y, double width, double height, String fill, String more) {
    put("<rect x=\"", x, "\" y=\"", y, "\" width=\"", width, "\" height=\"", height, "\" fill=\"", fill, "\"", more, "/>\n");
  }

  private void put(Object... parts) {
    for (Object part : parts) {
      out.append(part instanceof Double d ? StripPaths.number(d) : (String) part);
    }
  }

  private static String escaped(String text) {
    return text.replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;");
  }
}
