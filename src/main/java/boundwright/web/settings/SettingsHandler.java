package boundwright.web.settings;

import boundwright.athlete.Facility;
import boundwright.athlete.Surface;
import boundwright.athlete.person.EndAge;
import boundwright.load.Season;
import boundwright.load.SeasonStart;
import boundwright.quantity.LengthUnit;
import boundwright.quantity.RefusedException;
import boundwright.runway.CoachSettings;
import boundwright.runway.MarkSettings;
import boundwright.store.Workbench;
import boundwright.technique.Teaching;
import boundwright.web.page.Form;
import boundwright.web.page.Pages;
import boundwright.web.page.TwoHands;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.Function;

/** The coach's settings. */
public final class SettingsHandler {
  private final Workbench bench;
  private final Pages pages;

  public SettingsHandler(Workbench bench, Pages pages) {
    this.bench = bench;
    this.pages = pages;
  }

  /** The settings as they are kept. */
  public void show(Context ctx) {
    page(ctx, 200, kept(saved(ctx)));
  }

  private SettingsView kept(String said) {
    CoachSettings now = bench.settings().kept();
    LengthUnit unit = now.unit();
    Map<String, String> fields = fields(now, unit);
    fields.put("films", filmsNow());
    fields.put("endAge", bench.people().endAge().name());
    fields.put("wholeFootFrom", wholeFootNow());
    return new SettingsView(unit, fields, Map.of(), said, season(), TwoHands.was(fields(now, unit)));
  }

  private static String saved(Context ctx) {
    return switch (Form.text(ctx, "saved")) {
      case "" -> "";
      case "both" -> "The settings are kept, with what somebody else changed meanwhile in other fields.";
      default -> "The settings are kept.";
    };
  }

  /** The fields of the form as it shows them in this unit. */
  private static Map<String, String> fields(CoachSettings now, LengthUnit unit) {
    Map<String, String> fields = new LinkedHashMap<>();
    fields.put("unit", now.unit().name());
    fields.put("chance", String.valueOf(now.marks().chance()));
    fields.put("sandMargin", unit.write(now.marks().sandMargin_m()));
    fields.put("clearMargin", unit.write(now.marks().clearMargin_m()));
    fields.put("setContacts", String.valueOf(now.setContacts()));
    fields.put("place", now.facility().name());
    fields.put("runway", unit.write(now.facility().runway_m()));
    fields.put("pit", unit.write(now.facility().pit_m()));
    fields.put("flat", unit.write(now.facility().flat_m()));
    fields.put("surface", now.facility().surface().name());
    return fields;
  }

  /** Takes the form. Every field that cannot be read is named beside itself. */
  public void save(Context ctx) {
    LengthUnit shown = Form.has(ctx, "shown") ? Form.oneOf(LengthUnit.class, "unit", Form.text(ctx, "shown")) : bench.settings().kept().unit();
    bench.together(
        () -> {
          Map<String, String> now = fields(bench.settings().kept(), shown);
          TwoHands both = TwoHands.merge(ctx, now);
          save(ctx, shown, both, now);
          return both;
        });
  }

  private void save(Context ctx, LengthUnit unit, TwoHands both, Map<String, String> now) {
    Map<String, String> refused = new LinkedHashMap<>();
    for (String name : both.both()) {
      refused.put(name, "Kept meanwhile by somebody else: " + now.get(name) + ". You wrote: " + both.fields().get(name) + ". What stands here holds when you save again.");
    }
    Reader in = new Reader(ctx, refused);
    LengthUnit newUnit = in.read("unit", LengthUnit.METRES, t -> Form.oneOf(LengthUnit.class, "unit", t));
    double chance = in.read("chance", 0.9, t -> new MarkSettings(Form.number("chance", t), 0, 0).chance());
    double sand = in.read("sandMargin", 0.3, t -> new MarkSettings(0.9, unit.read("margin into the sand", t), 0).sandMargin_m());
    double clear = in.read("clearMargin", 0.3, t -> new MarkSettings(0.9, 0, unit.read("margin before the sand", t)).clearMargin_m());
    int set = in.read("setContacts", 10, t -> Form.whole("number of contacts", t));
    String place = Form.text(ctx, "place");
    if (place.isEmpty() || place.length() > 80) {
      refused.put("place", "The place's name has 1 to 80 characters; this one has " + place.length() + ". Call it as you do.");
    }
    Facility d = Facility.DEFAULT;
    double runway = in.read("runway", d.runway_m(), t -> new Facility("", unit.read("runway", t), d.pit_m(), d.flat_m(), d.surface()).runway_m());
    double pit = in.read("pit", d.pit_m(), t -> new Facility("", d.runway_m(), unit.read("sand", t), d.flat_m(), d.surface()).pit_m());
    double flat = in.read("flat", d.flat_m(), t -> new Facility("", d.runway_m(), d.pit_m(), unit.read("level ground", t), d.surface()).flat_m());
    Surface surface = in.read("surface", Surface.TRACK, t -> Form.oneOf(Surface.class, "surface", t));
    if (refused.isEmpty()) {
      try {
        bench
            .settings()
            .keep(new CoachSettings(newUnit, new MarkSettings(chance, sand, clear), new Facility(place, runway, pit, flat, surface), set));
        ctx.redirect("/settings?saved=" + (both.theirs().isEmpty() ? "1" : "both"), HttpStatus.SEE_OTHER);
        return;
      } catch (RefusedException e) {
        refused.put("setContacts", String.valueOf(e.getMessage()));
      }
    }
    Map<String, String> written = new LinkedHashMap<>();
    ctx.formParamMap().forEach((name, values) -> written.put(name, Form.text(ctx, name)));
    written.put("films", filmsNow());
    written.put("endAge", bench.people().endAge().name());
    written.put("wholeFootFrom", wholeFootNow());
    page(ctx, 422, new SettingsView(unit, written, refused, "Nothing was changed yet: correct what is marked below.", season(), TwoHands.was(now)));
  }

  private String filmsNow() {
    return bench.clips().keepFilms() ? "keep" : "drop";
  }

  /** Whether films are kept after they were read. */
  public void films(Context ctx) {
    bench.clips().keepFilms(!Form.text(ctx, "films").equals("drop"));
    ctx.redirect("/settings?saved=1", HttpStatus.SEE_OTHER);
  }

  /** At which birthday what a guardian agreed to ends. */
  public void consent(Context ctx) {
    bench.people().keep(Form.oneOf(EndAge.class, "birthday", Form.text(ctx, "endAge")));
    ctx.redirect("/settings?saved=1", HttpStatus.SEE_OTHER);
  }

  private String wholeFootNow() {
    Integer from = bench.looks().teaching().wholeFootFrom();
    return from == null ? "" : String.valueOf(from);
  }

  /** From which approach the whole foot is taught; empty for none. */
  public void teaching(Context ctx) {
    String from = Form.text(ctx, "wholeFootFrom");
    try {
      bench.looks().keep(new Teaching(from.isEmpty() ? null : (Integer) Form.whole("number of approach steps", from)));
      ctx.redirect("/settings?saved=1", HttpStatus.SEE_OTHER);
    } catch (RefusedException e) {
      SettingsView kept = kept("");
      Map<String, String> fields = new LinkedHashMap<>(kept.fields());
      fields.put("wholeFootFrom", from);
      page(
          ctx,
          422,
          new SettingsView(
              kept.unit(), fields, Map.of("wholeFootFrom", String.valueOf(e.getMessage())),
              "Nothing was changed yet: correct what is marked below.", season(), kept.was()));
    }
  }

  private String season() {
    return SeasonStart.ofSquad(bench.load().seasons(), LocalDate.now(bench.clock())).map(Season::label).orElse("not set");
  }

  private void page(Context ctx, int status, SettingsView view) {
    pages.show(ctx, status, "settings/settings", "Settings", "settings", view);
  }

  /** Reads field after field and collects the refusals. */
  private record Reader(Context ctx, Map<String, String> refused) {
    <T> T read(String name, T otherwise, Function<String, T> how) {
      try {
        return how.apply(Form.text(ctx, name));
      } catch (RefusedException e) {
        refused.put(name, String.valueOf(e.getMessage()));
        return otherwise;
      }
    }
  }
}
