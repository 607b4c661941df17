package boundwright.web.meet;

import boundwright.card.CardPdf;
import boundwright.card.MeetDayCard;
import boundwright.card.Paper;
import boundwright.demo.DemoSquad;
import boundwright.meet.MeetSheet;
import boundwright.meet.day.MeetDay;
import boundwright.quantity.LengthUnit;
import boundwright.quantity.RefusedException;
import boundwright.store.Workbench;
import boundwright.web.page.Form;
import boundwright.web.page.Pages;
import boundwright.web.page.Sent;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;

/** The day of a meet: its times, the likely wind, the start marks moved for it, and the sheet on paper. */
public final class MeetDayHandler {
  private final Workbench bench;
  private final Pages pages;

  public MeetDayHandler(Workbench bench, Pages pages) {
    this.bench = bench;
    this.pages = pages;
  }

  /** The page. */
  public void show(Context ctx) {
    show(ctx, 200, MeetHandler.sheet(ctx, bench), Sent.NOTHING);
  }

  /** Keeps times and wind; sent again they are the same. */
  public void keep(Context ctx) {
    MeetSheet sheet = MeetHandler.sheet(ctx, bench);
    try {
      String wind = Form.text(ctx, "wind");
      String give = Form.text(ctx, "give");
      bench
          .meetDays()
          .keep(
              new MeetDay(
                  sheet.id(),
                  MeetDay.time(Form.text(ctx, "starts")),
                  Form.whole("number of minutes from the call room to the start", Form.text(ctx, "call")),
                  Form.whole("number of minutes of warm-up", Form.text(ctx, "warm")),
                  wind.isEmpty() ? null : (Double) Form.number("wind", wind),
                  give.isEmpty() ? MeetDay.USUAL_GIVE : Form.number("doubt of the wind", give),
                  Form.text(ctx, "note")));
      ctx.redirect("/meet/" + sheet.id() + "/day?kept=1", HttpStatus.SEE_OTHER);
    } catch (RefusedException e) {
      show(ctx, 422, sheet, Sent.of(ctx, String.valueOf(e.getMessage())));
    }
  }

  /** The sheet on paper; A5 unless the address asks for A4. */
  public void pdf(Context ctx) {
    MeetSheet sheet = MeetHandler.sheet(ctx, bench);
    Paper paper = Form.oneOf(ctx, "paper", Paper.class, Paper.A5);
    byte[] bytes = new MeetDayCard(CardPdf.shared()).render(bench.dayDesk().sheet(sheet), unit(), paper, bench.invented() ? DemoSquad.NOTE : "");
    Pages.pdf(ctx, "meet-day-" + Form.fileName(sheet.name()), bytes);
  }

  private void show(Context ctx, int status, MeetSheet sheet, Sent sent) {
    MeetDayView view = new MeetDayView(bench.dayDesk().sheet(sheet), unit(), sent, Form.has(ctx, "kept") ? "Kept." : "");
    pages.show(ctx, status, "meet/day", sheet.name() + ": the day", "meet", view);
  }

  private LengthUnit unit() {
    return bench.settings().settings().unit();
  }
}
