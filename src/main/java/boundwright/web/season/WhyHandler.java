package boundwright.web.season;

import boundwright.season.SeasonRepository.Kept;
import boundwright.season.desk.WhyDesk;
import boundwright.season.why.DayReasons;
import boundwright.season.why.Unmet;
import boundwright.web.page.Form;
import boundwright.web.page.Pages;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;

/** Says why: a part of the page that asks for it, a page of its own where there are no scripts. */
public final class WhyHandler {
  private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("d MMM", Locale.ENGLISH);

  private final Pages pages;
  private final SeasonHandler season;
  private final WhyDesk desk;

  public WhyHandler(Pages pages, SeasonHandler season, WhyDesk desk) {
    this.pages = pages;
    this.season = season;
    this.desk = desk;
  }

  /** Registers its addresses. */
  public void add(RoutesConfig routes) {
    routes.get("/season/why", this::day);
    routes.get("/season/wishes", this::wishes);
  }

  /** Why an athlete's day is as it is. */
  void day(Context ctx) {
    Kept kept = season.asked(ctx);
    LocalDate date = Form.anyDate(Form.text(ctx, "day"));
    DayReasons r = desk.day(kept.id(), Form.id(Form.text(ctx, "athlete")), date);
    show(
        ctx, "Why " + r.athlete() + ", " + DAY.format(date), "/season/week?season=" + kept.id() + "&of=" + date,
        r.shaped().stream().map(s -> new WhyView.Reason("", s)).toList());
  }

  /** The wishes that are not met, and what stands against each. */
  void wishes(Context ctx) {
    Kept kept = season.asked(ctx);
    List<WhyView.Reason> all =
        desk.unmet(kept.id()).stream().map(u -> new WhyView.Reason(u.athlete() + ", " + DAY.format(u.from()) + ": " + u.wish(), stands(u))).toList();
    show(ctx, "Wishes not met", "/season?season=" + kept.id(), all.isEmpty() ? List.of(new WhyView.Reason("", "None: all are met.")) : all);
  }

  private static String stands(Unmet u) {
    String s = u.stands();
    return Character.toUpperCase(s.charAt(0)) + s.substring(1) + ".";
  }

  private void show(Context ctx, String title, String back, List<WhyView.Reason> reasons) {
    pages.show(ctx, 200, Pages.isPartial(ctx) ? "season/reasons" : "season/why", title, "season", new WhyView(title, back, reasons));
  }
}
