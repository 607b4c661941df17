package boundwright.web.season;

import boundwright.quantity.Notes;
import boundwright.season.SeasonInput;
import boundwright.season.SeasonPlan;
import boundwright.season.SeasonRepository.Kept;
import boundwright.season.SessionKind;
import boundwright.season.desk.Proposal;
import boundwright.season.sheet.WeekSheet;
import boundwright.store.Workbench;
import boundwright.web.page.Form;
import boundwright.web.page.Pages;
import boundwright.web.page.Turned;
import io.javalin.http.Context;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** A week on the screen. Who may change the season sees what waits to be published in it; everybody else what is published. */
final class WeekHandler {
  private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("d MMM yyyy", Locale.ENGLISH);
  private static final DateTimeFormatter WEEKDAY = DateTimeFormatter.ofPattern("EEEE, d MMM", Locale.ENGLISH);

  private final Workbench bench;
  private final Pages pages;
  private final SeasonDeeds deeds;

  WeekHandler(Workbench bench, Pages pages, SeasonDeeds deeds) {
    this.bench = bench;
    this.pages = pages;
    this.deeds = deeds;
  }

  /** The day asked for, or today, within the season. */
  static LocalDate of(Context ctx, Kept kept, LocalDate today) {
    String text = Form.text(ctx, "of");
    return SeasonHandler.within(kept, text.isEmpty() ? today : Form.anyDate(text));
  }

  void show(Context ctx, Kept kept) {
    LocalDate today = LocalDate.now(bench.clock());
    LocalDate of = of(ctx, kept, today);
    SeasonPlan published = bench.seasons().published(kept.id()).orElseThrow(() -> new Turned(404, "No plan of " + kept.name() + " is published yet."));
    boolean all = pages.mayAll(ctx);
    Proposal waits = all ? deeds.proposals().of(kept.id()).filter(p -> p.base() == published.version()).orElse(null) : null;
    SeasonInput input = waits == null ? deeds.desk().input(kept.id()) : waits.input();
    WeekSheet sheet = WeekSheet.of(input, waits == null ? published : waits.plan(), of);
    boolean thisWeek = sheet.days().contains(today);
    boolean opened = false;
    List<WeekView.Day> days = new ArrayList<>();
    for (int d = 0; d < 7; d++) {
      int day = d;
      LocalDate date = sheet.days().get(d);
      boolean open = all && !date.isBefore(today);
      List<WeekView.Line> lines =
          sheet.rows().stream()
              .filter(r -> !r.cells().get(day).free())
              .map(r -> line(kept, r, r.cells().get(day), date, open, waits == null))
              .toList();
      boolean unfolded = thisWeek ? date.equals(today) : !opened && !lines.isEmpty();
      opened |= unfolded;
      days.add(new WeekView.Day(date, WEEKDAY.format(date), date.equals(today), unfolded, Notes.counted(lines.size(), "athlete"), sheet.meets().get(d), lines));
    }
    pages.show(
        ctx, 200, "season/week", "Week", "season",
        new WeekView(
            kept.id(), kept.name(), "Week of " + DAY.format(sheet.days().get(0)), of.minusWeeks(1), of.plusWeeks(1), sheet.days().get(0), days,
            waits == null ? null : new WeekView.Draft(waits.number(), SeasonDeeds.changed(waits), waits.against())));
  }

  private static WeekView.Line line(Kept kept, WeekSheet.Row row, WeekSheet.Cell cell, LocalDate date, boolean open, boolean published) {
    String to = "?season=" + kept.id() + "&athlete=" + row.id() + "&day=" + date;
    boolean session = open && !cell.kind().isEmpty();
    return new WeekView.Line(
        row.athlete(), cell, session && published ? "/season/why" + to : "", session && !cell.kind().equals(SessionKind.MEET.label()) ? "/season/move" + to : "");
  }
}
