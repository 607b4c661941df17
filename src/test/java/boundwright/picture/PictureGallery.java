package boundwright.picture;

import boundwright.picture.strip.RunwayStrip;
import gg.jte.ContentType;
import gg.jte.TemplateEngine;
import gg.jte.output.StringOutput;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** Writes every picture into pages of three for each width, to be looked at: {@code java ... PictureGallery OUT_PREFIX}. */
final class PictureGallery {
  private PictureGallery() {}

  public static void main(String[] args) throws Exception {
    TemplateEngine engine = TemplateEngine.createPrecompiled(null, ContentType.Html, null, "boundwright.pages");
    for (RunwayStrip.Width width : RunwayStrip.Width.values()) {
      String head = ("<!doctype html><meta charset=utf-8><style>@font-face{font-family:Bitter;src:url(" + Path.of("src/main/resources/fonts/Bitter_400Regular.ttf").toUri() + ")}@font-face{font-family:Bitter;font-weight:700;src:url(" + Path.of("src/main/resources/fonts/Bitter_700Bold.ttf").toUri() + ")}body{margin:8px;background:#faf6ec;font:12px Bitter}svg.strip{width:" + width.units() + "px;margin:0 0 26px;display:block}</style>");
      StringBuilder out = new StringBuilder(head);
      int n = 0;
      for (PictureFixtures.Shown s : PictureFixtures.all(width)) {
        StringOutput html = new StringOutput();
        engine.render(s.template(), Map.of("picture", s.picture()), html);
        out.append(html);
        n++;
        if (n % 3 == 0) {
          Files.writeString(Path.of(args[0] + "-" + width.name().toLowerCase(Locale.ROOT) + n / 3 + ".html"), out);
          out = new StringBuilder(head);
        }
      }
      Files.writeString(Path.of(args[0] + "-" + width.name().toLowerCase(Locale.ROOT) + (n / 3 + 1) + ".html"), out);
    }
    System.out.println(List.of(args));
  }
}
