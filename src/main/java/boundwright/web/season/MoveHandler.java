package boundwright.web.season;

import boundwright.quantity.RefusedException;
import boundwright.season.SeasonInput;
import boundwright.season.SeasonRepository.Kept;
import boundwright.season.Session;
import boundwright.season.desk.MoveDesk;
import boundwright.season.why.Move;
import boundwright.store.Workbench;
import boundwright.web.page.Form;
import boundwright.web.page.Pages;
import boundwright.web.page.Sent;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.time.temporal.TemporalAdjusters;
import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;

/** Says where a session may go, and puts it there: a part of the week's page, and a page of its own where there are no scripts. */
public final class MoveHandler {
  private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("EEE d MMM", Locale.ENGLISH);

  private final Workbench bench;
  private final Pages pages;
  private final SeasonHandler season;
  private final SeasonDeeds deeds;

  public MoveHandler(Workbench bench, Pages pages, SeasonHandler season, SeasonDeeds deeds) {
    this.bench = bench;
    this.pages = pages;
    this.season = season;
    this.deeds = deeds;
  }

  /** Registers its addresses. */
  public void add(RoutesConfig routes) {
    routes.get("/season/move", this::days);
    routes.post("/season/move", this::put);
  }

  /** What the rules say of each day of a week. */
  void days(Context ctx) {
    Kept kept = season.asked(ctx);
    LocalDate from = Form.anyDate(Form.text(ctx, "day"));
    LocalDate of = Form.has(ctx, "of") ? Form.anyDate(Form.text(ctx, "of")) : from;
    LocalDate monday = of.with(TemporalAdjusters.previousOrSame(DayOfWeek.MONDAY));
    long athlete = Form.id(Form.text(ctx, "athlete"));
    SeasonInput input = deeds.desk().input(kept.id());
    MoveDesk.Answers a = deeds.moves().answers(kept.id(), athlete, from, IntStream.range(0, 7).mapToObj(monday::plusDays).toList());
    MoveView view =
        new MoveView(
            kept.id(), a.athlete() + ", " + DAY.format(from), SeasonDeeds.told(input, a.session()), athlete, from, a.draft(), monday.minusDays(7), monday.plusDays(7),
            a.moves().stream().map(m -> day(input, a.session(), m)).toList());
    pages.show(ctx, 200, Pages.isPartial(ctx) ? "season/movedays" : "season/move", "Move a session", "season", view);
  }

  private static MoveView.Day day(SeasonInput input, Session session, Move m) {
    Session there = m.there();
    Session here = m.here();
    String then = there == null || there.equals(session) ? "" : SeasonDeeds.told(input, there) + ".";
    String swap = here == null ? "" : " Changes places with " + SeasonDeeds.told(input, here) + ".";
    return new MoveView.Day(m.date(), DAY.format(m.date()), m.answer().name().toLowerCase(Locale.ROOT), answer(m.answer()), m.said(), (then + swap).strip());
  }

  private static String answer(Move.Answer answer) {
    return switch (answer) {
      case HERE -> "here now";
      case ALLOWED -> "may go here";
      case COSTS -> "may go here, at a cost";
      case REFUSED -> "refused";
    };
  }

  /** Puts it down: a draft, to be published as every other. */
  void put(Context ctx) {
    Kept kept = season.asked(ctx);
    try {
      LocalDate from = Form.anyDate(Form.text(ctx, "day"));
      LocalDate to = Form.anyDate(Form.text(ctx, "to"));
      bench.together(() -> deeds.moves().put(kept.id(), Form.id(Form.text(ctx, "draft")), Form.id(Form.text(ctx, "athlete")), from, to));
      ctx.redirect("/season/week?season=" + kept.id() + "&of=" + to, HttpStatus.SEE_OTHER);
    } catch (RefusedException e) {
      season.refused(ctx, kept, String.valueOf(e.getMessage()), Sent.of(ctx, String.valueOf(e.getMessage())));
    }
  }
}
