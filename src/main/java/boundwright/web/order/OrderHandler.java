package boundwright.web.order;

import boundwright.quantity.LastAnswer;
import boundwright.quantity.RefusedException;
import boundwright.season.order.OrderDesk;
import boundwright.season.order.OrderPlanner;
import boundwright.season.order.OrderSettings;
import boundwright.season.order.OrderSheet;
import boundwright.season.order.OrderWords;
import boundwright.season.order.RestRule;
import boundwright.season.order.RunningOrder;
import boundwright.season.order.SessionAsk;
import boundwright.store.Workbench;
import boundwright.web.order.OrderView.Asked;
import boundwright.web.page.Figures;
import boundwright.web.page.Form;
import boundwright.web.page.Pages;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.List;

/** The running order of today's plan for those who are here. */
public final class OrderHandler {
  private static final long SEED = 1;

  private final Workbench bench;
  private final Pages pages;

  public OrderHandler(Workbench bench, Pages pages) {
    this.bench = bench;
    this.pages = pages;
  }

  /** The order as asked for, or with the numbers that were kept. */
  public void show(Context ctx) {
    Asked asked;
    try {
      asked = asked(ctx);
    } catch (RefusedException e) {
      refuse(ctx, e);
      return;
    }
    String said =
        switch (Form.text(ctx, "kept")) {
          case "run" -> "The runway page goes by this order.";
          case "own" -> "The runway page goes by how they come.";
          case "numbers" -> "Kept.";
          default -> "";
        };
    try {
      SessionAsk ask = ask(asked);
      show(ctx, 200, view(asked, ask, ordered(ask), said));
    } catch (RefusedException e) {
      show(ctx, 200, none(asked, e));
    }
  }

  /** Keeps the order for the runway page, or takes it away; keeps the numbers. */
  public void save(Context ctx) {
    LocalDate today = LocalDate.now(bench.clock());
    String action = Form.text(ctx, "action");
    if (action.equals("own")) {
      bench.order().keep(today, List.of());
      ctx.redirect("/plan/order?kept=own", HttpStatus.SEE_OTHER);
      return;
    }
    Asked asked;
    try {
      asked = asked(ctx);
      if (action.equals("run")) {
        SessionAsk ask = ask(asked);
        bench.order().keep(today, OrderDesk.ofDay(ask, ordered(ask)));
      }
      bench.order().keep(asked.settings());
    } catch (RefusedException e) {
      refuse(ctx, e);
      return;
    }
    String query = "lost=" + asked.lost() + "&closed=" + URLEncoder.encode(asked.closed(), StandardCharsets.UTF_8) + "&from=" + asked.from();
    ctx.redirect("/plan/order?" + query + "&kept=" + (action.equals("run") ? "run" : "numbers"), HttpStatus.SEE_OTHER);
  }

  private void refuse(Context ctx, RefusedException e) {
    show(ctx, 422, none(new Asked(bench.order().orderSettings(), 0, "", OrderWords.now(bench.clock()).toString()), e));
  }

  private void show(Context ctx, int status, OrderView view) {
    pages.show(ctx, status, "order/order", "Running order", "plan", view);
  }

  /** The order that was thought out last: a page is shown again after every button. */
  private final LastAnswer<SessionAsk, RunningOrder> last = new LastAnswer<>();

  private RunningOrder ordered(SessionAsk ask) {
    return last.to(ask, a -> OrderPlanner.brisk(SEED).plan(a));
  }

  private SessionAsk ask(Asked asked) {
    OrderSettings settings = asked.settings();
    SessionAsk whole =
        bench.orderDesk()
            .ask(bench.attendance().here(), bench.settings().plan(), bench.settings().settings(), settings, settings.minutes(), List.of());
    SessionAsk out = asked.lost() == 0 ? whole : whole.lost(asked.lost());
    return asked.closed().isEmpty() ? out : out.closed(asked.closed());
  }

  private OrderView view(Asked asked, SessionAsk ask, RunningOrder order, String said) {
    OrderWords words = new OrderWords(ask, order, OrderWords.time(asked.from()));
    List<Long> running = running();
    return new OrderView(
        day(), asked, closings(asked), OrderSheet.of(ask, order, words), words.ends(), words.drops(), words.laid(), !running.isEmpty(),
        running.equals(OrderDesk.ofDay(ask, order)), said);
  }

  private OrderView none(Asked asked, RefusedException why) {
    return new OrderView(
        day(), asked, closings(asked), null, String.valueOf(why.getMessage()), List.of(), List.of(), !running().isEmpty(), false, "");
  }

  private List<Long> running() {
    return bench.order().order(LocalDate.now(bench.clock()));
  }

  private List<String> closings(Asked asked) {
    return SessionAsk.closings(asked.settings().places(bench.settings().settings().facility().surface()));
  }

  private String day() {
    return "Today, " + Figures.day(LocalDate.now(bench.clock()));
  }

  /** What the form says; what it does not say is as it was kept. */
  private Asked asked(Context ctx) {
    OrderSettings k = bench.order().orderSettings();
    RestRule r = k.rest();
    OrderSettings settings =
        new OrderSettings(
            whole(ctx, "pits", k.pits()), whole(ctx, "lanes", k.lanes()), whole(ctx, "flatLanes", k.flatLanes()), k.flatSurface(),
            whole(ctx, "coaches", k.coaches()),
            Form.text(ctx, "watch").isEmpty() ? k.watch() : Form.oneOf(OrderSettings.Watch.class, "reps that are watched", Form.text(ctx, "watch")),
            whole(ctx, "minutes", k.minutes()), number(ctx, "step", k.step_s()), number(ctx, "contact", k.contact_s()),
            whole(ctx, "clearSand", k.clearSand_s()), whole(ctx, "clearFlat", k.clearFlat_s()), whole(ctx, "say", k.say_s()),
            new RestRule(
                number(ctx, "times", r.timesWork()), whole(ctx, "standing", r.standing_s()), whole(ctx, "four", r.four_s()),
                whole(ctx, "eight", r.eight_s()), whole(ctx, "full", r.full_s())));
    String from = Form.text(ctx, "from");
    String begins = (from.isEmpty() ? OrderWords.now(bench.clock()) : OrderWords.time(from)).toString();
    return new Asked(settings, whole(ctx, "lost", 0), Form.text(ctx, "closed"), begins);
  }

  private static int whole(Context ctx, String name, int otherwise) {
    String written = Form.text(ctx, name);
    return written.isEmpty() ? otherwise : Form.whole("number", written);
  }

  private static double number(Context ctx, String name, double otherwise) {
    String written = Form.text(ctx, name);
    return written.isEmpty() ? otherwise : Form.number("number", written);
  }
}
