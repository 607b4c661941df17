package boundwright.web.jump;

import boundwright.approach.weather.DayWeather;
import boundwright.quantity.RefusedException;
import boundwright.store.Workbench;
import boundwright.web.page.Form;
import boundwright.web.page.Pages;
import boundwright.web.page.Sent;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.time.LocalDate;

/** The weather of days: kept, replaced and taken out. */
public final class WeatherHandler {
  private final Workbench bench;
  private final Pages pages;

  public WeatherHandler(Workbench bench, Pages pages) {
    this.bench = bench;
    this.pages = pages;
  }

  /** The page. */
  public void show(Context ctx) {
    show(ctx, 200, Sent.NOTHING);
  }

  /** Keeps a day's weather; sent again it is the same. */
  public void keep(Context ctx) {
    try {
      bench.weather().keep(new DayWeather(Form.date(Form.text(ctx, "date"), today()), WeatherForm.read(ctx), Form.text(ctx, "note")));
      ctx.redirect("/weather?kept=1", HttpStatus.SEE_OTHER);
    } catch (RefusedException e) {
      show(ctx, 422, Sent.of(ctx, String.valueOf(e.getMessage())));
    }
  }

  /** Takes a day's weather out. */
  public void remove(Context ctx) {
    try {
      bench.weather().remove(Form.anyDate(ctx.pathParam("day")));
      ctx.redirect("/weather?removed=1", HttpStatus.SEE_OTHER);
    } catch (RefusedException e) {
      show(ctx, 422, Sent.of(ctx, String.valueOf(e.getMessage())));
    }
  }

  private void show(Context ctx, int status, Sent sent) {
    String said = Form.has(ctx, "kept") ? "Kept." : Form.has(ctx, "removed") ? "Taken out." : "";
    pages.show(ctx, status, "jump/weather", "Weather", "squad", new WeatherView(bench.weather().days(), bench.weatherDesk().reps(today()).words(), sent, said, today().toString()));
  }

  private LocalDate today() {
    return LocalDate.now(bench.clock());
  }
}
