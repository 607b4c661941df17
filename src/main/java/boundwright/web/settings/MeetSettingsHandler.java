package boundwright.web.settings;

import boundwright.approach.aim.AimSettings;
import boundwright.approach.run.RunUpSettings;
import boundwright.jump.JumpSettings;
import boundwright.meet.MeetSettings;
import boundwright.quantity.LengthUnit;
import boundwright.quantity.RefusedException;
import boundwright.store.Workbench;
import boundwright.web.page.Figures;
import boundwright.web.page.Form;
import boundwright.web.page.Pages;
import boundwright.web.page.TwoHands;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.Map;

/** What a coach can set for the jump and the meet. The rules of a new meet are those of the last one that was set here. */
public final class MeetSettingsHandler {
  private final Workbench bench;
  private final Pages pages;

  public MeetSettingsHandler(Workbench bench, Pages pages) {
    this.bench = bench;
    this.pages = pages;
  }

  /** The settings as they are kept. */
  public void show(Context ctx) {
    LengthUnit unit = unit();
    Map<String, String> fields = fields(unit);
    String said = Form.has(ctx, "saved") ? "The settings are kept." : "";
    page(ctx, 200, new SettingsView(unit, fields, Map.of(), said, "", TwoHands.was(fields)));
  }

  /** The fields of the form as it shows them in this unit. */
  private Map<String, String> fields(LengthUnit unit) {
    MeetSettings s = bench.meets().settings();
    Map<String, String> fields = new LinkedHashMap<>();
    fields.put("classThreshold", Figures.whole(s.jump().classThreshold()));
    fields.put("rhythm", unit.writeSmall(s.runUp().rhythm_m()));
    fields.put("checkSteps", String.valueOf(s.runUp().checkSteps()));
    fields.put("earlyStep", String.valueOf(s.runUp().earlyStep()));
    fields.put("noMark", unit.write(s.aim().noMarkBelow_m()));
    fields.put("rivalSpread", unit.writeSmall(s.aim().rivalSd_m()));
    fields.put("rivalFouls", String.valueOf(s.aim().rivalFouls()));
    return fields;
  }

  /** Takes the form; the sentence stands beside it when a value cannot be. */
  public void save(Context ctx) {
    LengthUnit unit = Form.has(ctx, "shown") ? Form.oneOf(LengthUnit.class, "unit", Form.text(ctx, "shown")) : unit();
    bench.together(
        () -> {
          save(ctx, unit, fields(unit));
          return ctx;
        });
  }

  private void save(Context ctx, LengthUnit unit, Map<String, String> now) {
    try {
      TwoHands both = TwoHands.merge(ctx, now);
      if (!both.both().isEmpty()) {
        throw new RefusedException(both.asked(now, (field, value) -> value));
      }
      // all fields are read before any is judged, so that what cannot be read is said first
      double threshold = Form.number("class threshold", Form.text(ctx, "classThreshold"));
      double rhythm = unit.readSmall("spread that is worth training", Form.text(ctx, "rhythm"));
      int check = Form.whole("number of steps out", Form.text(ctx, "checkSteps"));
      int early = Form.whole("step of the early mark", Form.text(ctx, "earlyStep"));
      double noMark = unit.read("value of no mark", Form.text(ctx, "noMark"));
      double spread = unit.readSmall("spread of a rival's marks", Form.text(ctx, "rivalSpread"));
      double fouls = Form.number("foul chance of a rival", Form.text(ctx, "rivalFouls"));
      bench
          .meets()
          .keep(
              new MeetSettings(
                  new JumpSettings(threshold),
                  new RunUpSettings(rhythm, check, early),
                  new AimSettings(noMark, spread, fouls),
                  bench.meets().settings().rules()));
      ctx.redirect("/settings/meet?saved=1", HttpStatus.SEE_OTHER);
    } catch (RefusedException e) {
      Map<String, String> written = new HashMap<>();
      ctx.formParamMap().forEach((name, values) -> written.put(name, Form.text(ctx, name)));
      page(ctx, 422, new SettingsView(unit, written, Map.of("form", String.valueOf(e.getMessage())), "Nothing was changed yet: correct what is said below.", "", TwoHands.was(now)));
    }
  }

  private void page(Context ctx, int status, SettingsView view) {
    pages.show(ctx, status, "settings/meet", "The jump and the meet", "settings", view);
  }

  private LengthUnit unit() {
    return bench.settings().settings().unit();
  }
}
