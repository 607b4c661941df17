package boundwright.web.files;

import boundwright.athlete.Athlete;
import boundwright.card.CardPdf;
import boundwright.card.Paper;
import boundwright.card.plain.PlainReport;
import boundwright.card.plain.PlainReport.Reader;
import boundwright.card.plain.PlainReports;
import boundwright.demo.DemoSquad;
import boundwright.quantity.LengthUnit;
import boundwright.quantity.RefusedException;
import boundwright.store.Workbench;
import boundwright.web.page.Addresses;
import boundwright.web.page.Form;
import boundwright.web.page.Pages;
import io.javalin.http.Context;
import java.time.LocalDate;

/** What the athlete, those at home and the club are given to read, on the screen and as a PDF. */
public final class ReportHandler {
  private final Workbench bench;
  private final Pages pages;
  private final PlainReports reports;

  public ReportHandler(Workbench bench, Pages pages) {
    this.bench = bench;
    this.pages = pages;
    this.reports =
        new PlainReports(new PlainReports.Sources(bench.athletes(), bench.reps(), bench.workLog(), bench.looks(), bench.tests(), bench.meets()));
  }

  /** A page to read. */
  public void athlete(Context ctx) {
    PlainReport report = ofAthlete(ctx);
    pages.show(ctx, 200, "files/report", report.reader().label(), "squad", new ReportView(report.reader().label(), report, ctx.path() + "/report.pdf", null));
  }

  /** The same as a PDF. */
  public void athletePdf(Context ctx) {
    send(ctx, ofAthlete(ctx));
  }

  /** The squad's; days that are none stay where they were written. */
  public void club(Context ctx) {
    String label = Reader.CLUB.label();
    try {
      LocalDate last = day(ctx, "to", today());
      LocalDate first = day(ctx, "from", last.minusWeeks(PlainReports.CLUB_WEEKS));
      PlainReport report = reports.forClub(first, last, today(), unit(), footnote());
      String pdf = "/squad-report/report.pdf?from=" + first + "&to=" + last;
      pages.show(ctx, 200, "files/report", label, "settings", new ReportView(label, report, pdf, new ReportView.Span(first.toString(), last.toString(), "")));
    } catch (RefusedException e) {
      ReportView.Span span = new ReportView.Span(Form.text(ctx, "from"), Form.text(ctx, "to"), String.valueOf(e.getMessage()));
      pages.show(ctx, 422, "files/report", label, "settings", new ReportView(label, null, "", span));
    }
  }

  /** The same as a PDF. */
  public void clubPdf(Context ctx) {
    LocalDate last = day(ctx, "to", today());
    send(ctx, reports.forClub(day(ctx, "from", last.minusWeeks(PlainReports.CLUB_WEEKS)), last, today(), unit(), footnote()));
  }

  private PlainReport ofAthlete(Context ctx) {
    Athlete athlete = Addresses.athlete(ctx, bench);
    LocalDate today = today();
    String reader = ctx.pathParam("reader");
    if (reader.equals(Reader.ATHLETE.key())) {
      return reports.forAthlete(athlete, unit(), today, footnote());
    }
    if (reader.equals(Reader.HOME.key())) {
      return reports.forHome(athlete, unit(), today, footnote());
    }
    throw new RefusedException("There is no report for '" + reader + "'. There is one for the athlete and one for those at home.");
  }

  private static LocalDate day(Context ctx, String field, LocalDate otherwise) {
    return Form.has(ctx, field) ? Form.anyDate(Form.text(ctx, field)) : otherwise;
  }

  private LengthUnit unit() {
    return bench.settings().settings().unit();
  }

  private String footnote() {
    return bench.invented() ? DemoSquad.NOTE : "";
  }

  private static void send(Context ctx, PlainReport report) {
    byte[] bytes = CardPdf.shared().renderPlain(report, Form.oneOf(ctx, "paper", Paper.class, Paper.A4));
    Pages.pdf(ctx, Form.fileName(report.title() + " " + report.reader().key()), bytes);
  }

  private LocalDate today() {
    return LocalDate.now(bench.clock());
  }
}
