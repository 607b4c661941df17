package boundwright.picture;

import boundwright.athlete.Athlete;
import boundwright.athlete.Profile;
import boundwright.athlete.Surface;
import boundwright.card.Fixtures;
import boundwright.flight.FlightModel;
import boundwright.flight.RunUp;
import boundwright.footfall.Sequence;
import boundwright.picture.strip.RunwayStrip;
import boundwright.quantity.Estimate;
import boundwright.quantity.LengthUnit;
import boundwright.runway.CoachSettings;
import boundwright.runway.MarkAdvice;
import boundwright.runway.MarkAdvisor;
import gg.jte.ContentType;
import gg.jte.TemplateEngine;
import gg.jte.output.StringOutput;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;

/** Writes every kind of strip into one page, to be looked at: {@code java ... StripGallery OUT.html}. */
final class StripGallery {
  private StripGallery() {}

  public static void main(String[] args) throws Exception {
    TemplateEngine engine = TemplateEngine.createPrecompiled(null, ContentType.Html, null, "boundwright.pages");
    for (RunwayStrip.Width width : RunwayStrip.Width.values()) {
      StringBuilder out = new StringBuilder("<!doctype html><meta charset=utf-8><style>@font-face{font-family:Bitter;src:url(" + Path.of("src/main/resources/fonts/Bitter_400Regular.ttf").toUri() + ")}@font-face{font-family:Bitter;font-weight:700;src:url("+ Path.of("src/main/resources/fonts/Bitter_700Bold.ttf").toUri() + ")}body{margin:0;background:#faf6ec;font:12px Bitter}svg.strip{width:" + width.units() + "px}p{margin:12px 0 0}</style>");
      for (String letters : new String[] {"R", "RL", "RRL", "RRL x2", "RL x5", "R x6", "L x10", "RRLL RRLL RR", "RRL x5", "RL x15", "R x30", "RRLL x10", "RL x30", "R x60"}) {
        for (int steps : letters.equals("RRL x2") ? new int[] {0, 4, 12} : new int[] {letters.length() % 2 == 0 ? 4 : 0}) {
          show(engine, out, letters + " " + steps, RunwayStrip.of(Fixtures.advice(letters, steps, letters.length() > 5 ? 0.02 : 0.03), LengthUnit.METRES, width));
        }
      }
      show(engine, out, "closed", RunwayStrip.of(Fixtures.advice("RRL x3", 6, 0.08), LengthUnit.METRES, width));
      for (String letters : new String[] {"RRL", "RRL x2", "RL x5", "RRLL x10"}) {
        for (int steps : new int[] {0, 6}) {
          Athlete athlete = Fixtures.athlete(0);
          MarkAdvice advice =
              MarkAdvisor.advise(
                  FlightModel.prior(Profile.bare(athlete)), new RunUp(Estimate.normal(1.4 * steps, steps * 0.1), Estimate.normal(4, 0.3), 0), Sequence.parse(letters), steps,
                  Surface.TRACK, CoachSettings.DEFAULT, LocalDate.of(2026, 3, 3));
          show(engine, out, "prior " + letters + " " + steps, RunwayStrip.of(advice, LengthUnit.METRES, width));
        }
      }
      show(engine, out, "feet", RunwayStrip.of(Fixtures.advice("RRL RRL", 8), LengthUnit.FEET_INCHES, width));
      show(engine, out, "feet standing", RunwayStrip.of(Fixtures.advice("RL x5", 0), LengthUnit.FEET_INCHES, width));
      show(engine, out, "flat", RunwayStrip.ofFlat(Fixtures.advice("RL x5", 4), LengthUnit.METRES, width));
      show(engine, out, "flat ft", RunwayStrip.ofFlat(Fixtures.advice("RRLL x5", 0), LengthUnit.FEET_INCHES, width));
      Files.writeString(Path.of(args[0] + "-" + width.name().toLowerCase(java.util.Locale.ROOT) + ".html"), out);
    }
  }

  private static void show(TemplateEngine engine, StringBuilder out, String name, RunwayStrip strip) {
    StringOutput html = new StringOutput();
    engine.render("picture/strip.jte", strip, html);
    out.append("<p>").append(name).append(" — ").append(html.toString().length() / 1000).append(" kB</p>").append(html);
  }
}
