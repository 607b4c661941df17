package boundwright.card;

import boundwright.picture.PictureFixtures;
import boundwright.runway.CoachSettings;
import gg.jte.ContentType;
import gg.jte.TemplateEngine;
import gg.jte.output.StringOutput;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;

/** Writes cards of every kind, to be looked at: {@code java ... CardGallery OUT_DIR}. */
final class CardGallery {
  private CardGallery() {}

  public static void main(String[] args) throws Exception {
    Path dir = Path.of(args[0]);
    CardPdf pdf = new CardPdf();
    for (Paper paper : Paper.values()) {
      Files.write(dir.resolve("report-" + paper + ".pdf"), pdf.renderReport(PictureFixtures.report(), paper));
      Files.write(dir.resolve("bare-" + paper + ".pdf"), pdf.renderReport(PictureFixtures.bare(Fixtures.FEET), paper));
    }
    StringOutput page = new StringOutput();
    TemplateEngine.createPrecompiled(null, ContentType.Html, null, "boundwright.pages").render("card/report.jte", Map.of("report", PictureFixtures.report()), page);
    Files.writeString(dir.resolve("report.html"), html(page.toString()));
    for (Paper paper : Paper.values()) {
      for (CoachSettings settings : new CoachSettings[] {CoachSettings.DEFAULT, Fixtures.FEET}) {
        for (int n : new int[] {1, 5}) {
          SessionCard card = Fixtures.cards().of(Fixtures.athletes(n), Fixtures.PLAN, settings, "Invented squad, invented place: for trying out.");
          String name = (n == 1 ? "athlete-" : "squad-") + paper + "-" + settings.unit();
          long t = System.nanoTime();
          byte[] out = pdf.render(card, paper);
          System.out.println(name + " " + (System.nanoTime() - t) / 1_000_000 + " ms, " + out.length / 1000 + " kB");
          Files.write(dir.resolve(name + ".pdf"), out);
          if (paper == Paper.A5) {
            StringOutput html = new StringOutput();
            TemplateEngine.createPrecompiled(null, ContentType.Html, null, "boundwright.pages").render("card/card.jte", Map.of("card", card), html);
            Files.writeString(dir.resolve(name + ".html"), html(html.toString()));
          }
        }
      }
    }
  }

  private static String html(String body) throws Exception {
    return "<!doctype html><meta charset=utf-8><meta name=viewport content='width=device-width'><style>@font-face{font-family:Bitter;src:url("
                    + Path.of("src/main/resources/fonts/Bitter_400Regular.ttf").toUri() + ")}@font-face{font-family:Bitter;font-weight:700;src:url("
                    + Path.of("src/main/resources/fonts/Bitter_700Bold.ttf").toUri() + ")}body{font:16px Bitter;background:#faf6ec;margin:12px}"
                    + Files.readString(Path.of("src/main/resources/web/strip.css")) + Files.readString(Path.of("src/main/resources/web/card.css")) + "</style>" + body;
  }
}
