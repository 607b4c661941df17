package boundwright.web.season;

import boundwright.quantity.RefusedException;
import boundwright.season.Away;
import boundwright.season.SeasonPlan;
import boundwright.season.SeasonRepository.Kept;
import boundwright.season.Span;
import boundwright.season.desk.MendDesk;
import boundwright.season.desk.Proposal;
import boundwright.store.Workbench;
import boundwright.web.page.Form;
import boundwright.web.page.Pages;
import boundwright.web.page.Sent;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.time.LocalDate;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/** Plans, publishes, mends and undoes. */
public final class SeasonPlanHandler {
  private final Workbench bench;
  private final Pages pages;
  private final SeasonHandler season;
  private final SeasonDeeds deeds;

  public SeasonPlanHandler(Workbench bench, Pages pages, SeasonHandler season, SeasonDeeds deeds) {
    this.bench = bench;
    this.pages = pages;
    this.season = season;
    this.deeds = deeds;
  }

  /** Registers its addresses. */
  public void add(RoutesConfig routes) {
    new WhyHandler(pages, season, deeds.why()).add(routes);
    new MoveHandler(bench, pages, season, deeds).add(routes);
    new SureHandler(pages, season, deeds).add(routes);
    routes.post("/season/plan", this::plan);
    routes.get("/season/plan/progress", this::progress);
    routes.post("/season/plan/stop", this::stop);
    routes.post("/season/publish", this::publish);
    routes.post("/season/drop", this::drop);
    routes.post("/season/mend", this::mend);
    routes.post("/season/undo", this::undo);
  }

  /** Begins a search. */
  void plan(Context ctx) {
    change(
        ctx,
        kept -> {
          deeds.search().start(kept.id(), Form.has(ctx, "seconds") ? Form.whole("time", Form.text(ctx, "seconds")) : 20);
          return "";
        });
  }

  /** How far it is; the whole page once it is over. */
  void progress(Context ctx) {
    Kept kept = season.asked(ctx);
    DeedsView.Search search = deeds.searching(kept.id());
    if (search != null && search.going()) {
      pages.show(ctx, 200, "season/search", "Season", "season", search);
    } else if (Pages.isPartial(ctx)) {
      ctx.header("HX-Refresh", "true");
      ctx.status(HttpStatus.NO_CONTENT);
    } else {
      ctx.redirect("/season?season=" + kept.id(), HttpStatus.SEE_OTHER);
    }
  }

  /** Ends it with the best so far. */
  void stop(Context ctx) {
    change(
        ctx,
        kept -> {
          deeds.search().stop(kept.id());
          return "";
        });
  }

  /** Publishes the proposal that the page showed. */
  void publish(Context ctx) {
    change(
        ctx,
        kept -> {
          Proposal p = deeds.proposals().asked(kept.id(), number(ctx));
          SeasonPlan plan = bench.together(() -> deeds.desk().accept(p));
          deeds.proposals().drop(kept.id(), p.number());
          return "version-" + plan.version();
        });
  }

  /** Drops it. */
  void drop(Context ctx) {
    change(
        ctx,
        kept -> {
          deeds.proposals().drop(kept.id(), number(ctx));
          return "";
        });
  }

  /** Proposes the smallest change after what happened. */
  void mend(Context ctx) {
    change(
        ctx,
        kept -> {
          deeds.mends().propose(kept.id(), missed(ctx), gone(ctx), closed(ctx));
          return "";
        });
  }

  /** Puts the version before back. */
  void undo(Context ctx) {
    change(
        ctx,
        kept -> {
          int newest = Form.whole("version", Form.text(ctx, "version"));
          return "version-" + bench.together(() -> deeds.desk().undo(kept.id(), newest)).version();
        });
  }

  private void change(Context ctx, Function<Kept, String> deed) {
    Kept kept = season.asked(ctx);
    try {
      String done = deed.apply(kept);
      ctx.redirect("/season?season=" + kept.id() + (done.isEmpty() ? "" : "&done=" + done), HttpStatus.SEE_OTHER);
    } catch (RefusedException e) {
      season.refused(ctx, kept, String.valueOf(e.getMessage()), Sent.of(ctx, String.valueOf(e.getMessage())));
    }
  }

  private static long number(Context ctx) {
    String text = Form.text(ctx, "proposal");
    return text.matches("\\d{1,18}") ? Long.parseLong(text) : 0;
  }

  private static MendDesk.@Nullable Missed missed(Context ctx) {
    String text = Form.text(ctx, "missed");
    int space = text.indexOf(' ');
    if (text.isEmpty()) {
      return null;
    }
    return new MendDesk.Missed(Form.id(space < 0 ? "" : text.substring(0, space)), Form.anyDate(text.substring(space + 1)));
  }

  private static MendDesk.@Nullable Gone gone(Context ctx) {
    String who = Form.text(ctx, "away");
    if (who.isEmpty()) {
      return null;
    }
    LocalDate from = Form.anyDate(Form.text(ctx, "from"));
    LocalDate to = Form.text(ctx, "to").isEmpty() ? from : Form.anyDate(Form.text(ctx, "to"));
    return new MendDesk.Gone(Form.id(who), new Away(new Span(from, to), Form.has(ctx, "held") ? Away.Why.HELD : Away.Why.AWAY));
  }

  private static MendDesk.@Nullable Closed closed(Context ctx) {
    String venue = Form.text(ctx, "closed");
    return venue.isEmpty() ? null : new MendDesk.Closed(venue, Form.anyDate(Form.text(ctx, "closedOn")));
  }
}
