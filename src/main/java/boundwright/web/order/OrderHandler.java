package boundwright.web.order;

import boundwright.quantity.RefusedException;
import boundwright.runway.CoachSettings;
import boundwright.season.order.OrderDesk;
import boundwright.season.order.OrderPlanner;
import boundwright.season.order.OrderSettings;
import boundwright.season.order.OrderSheet;
import boundwright.season.order.OrderWords;
import boundwright.season.order.Place;
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
import java.time.LocalTime;
import java.time.format.DateTimeParseException;
import java.time.temporal.ChronoUnit;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.concurrent.atomic.AtomicReference;
import org.jspecify.annotations.Nullable;

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
      Asked usual = new Asked(bench.order().orderSettings(), 0, "", now().toString());
      show(ctx, 422, none(usual, List.of(), String.valueOf(e.getMessage())));
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
      SessionAsk whole = whole(asked);
      RunningOrder order = ordered(changed(whole, asked));
      show(ctx, 200, view(asked, whole, order, said));
    } catch (RefusedException e) {
      show(ctx, 200, none(asked, List.of(), String.valueOf(e.getMessage())));
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
        SessionAsk ask = changed(whole(asked), asked);
        bench.order().keep(today, OrderDesk.ofDay(ask, ordered(ask)));
      }
      bench.order().keep(asked.settings());
    } catch (RefusedException e) {
      Asked usual = new Asked(bench.order().orderSettings(), 0, "", now().toString());
      show(ctx, 422, none(usual, List.of(), String.valueOf(e.getMessage())));
      return;
    }
    String query = "lost=" + asked.lost() + "&closed=" + URLEncoder.encode(asked.closed(), StandardCharsets.UTF_8) + "&from=" + asked.from();
    ctx.redirect("/plan/order?" + query + "&kept=" + (action.equals("run") ? "run" : "numbers"), HttpStatus.SEE_OTHER);
  }

  private void show(Context ctx, int status, OrderView view) {
    pages.show(ctx, status, "order/order", "Running order", "plan", view);
  }

  private record Ordered(SessionAsk ask, RunningOrder order) {}

  /** The order that was thought out last: a page is shown again after every button. */
  private final AtomicReference<@Nullable Ordered> last = new AtomicReference<>();

  private RunningOrder ordered(SessionAsk ask) {
    Ordered known = last.get();
    if (known != null && known.ask.equals(ask)) {
      return known.order;
    }
    RunningOrder order = OrderPlanner.brisk(SEED).plan(ask);
    last.set(new Ordered(ask, order));
    return order;
  }

  private LocalTime now() {
    return LocalTime.now(bench.clock()).truncatedTo(ChronoUnit.MINUTES);
  }

  private SessionAsk whole(Asked asked) {
    CoachSettings settings = bench.settings().settings();
    return bench.orderDesk()
        .ask(bench.attendance().here(), bench.settings().plan(), settings, asked.settings(), asked.settings().minutes(), List.of());
  }

  private static SessionAsk changed(SessionAsk whole, Asked asked) {
    SessionAsk out = asked.lost() == 0 ? whole : whole.lost(asked.lost());
    return asked.closed().isEmpty() ? out : out.closed(asked.closed());
  }

  private OrderView view(Asked asked, SessionAsk whole, RunningOrder order, String said) {
    SessionAsk ask = changed(whole, asked);
    OrderWords words = new OrderWords(ask, order, time(asked.from()));
    Set<String> closings = new LinkedHashSet<>();
    whole.places().forEach(p -> closings.add(p.surface().label()));
    whole.places().stream().map(Place::name).forEach(closings::add);
    List<Long> running = bench.order().order(LocalDate.now(bench.clock()));
    return new OrderView(
        day(), asked, List.copyOf(closings), OrderSheet.of(ask, order, words), words.ends(), words.drops(),
        words.laid(), !running.isEmpty(),
        running.equals(OrderDesk.ofDay(ask, order)), said);
  }

  private OrderView none(Asked asked, List<String> closings, String why) {
    boolean running = !bench.order().order(LocalDate.now(bench.clock())).isEmpty();
    return new OrderView(day(), asked, closings, null, why, List.of(), List.of(), running, false, "");
  }

  private String day() {
    return "Today, " + Figures.day(LocalDate.now(bench.clock()));
  }

  private static LocalTime time(String written) {
    try {
      return LocalTime.parse(written);
    } catch (DateTimeParseException e) {
      throw new RefusedException("The time '" + written + "' cannot be read. Write it as 17:05.", e);
    }
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
    String begins = from.isEmpty() ? now().toString() : time(from).toString();
    return new Asked(settings, whole(ctx, "lost", 0), Form.text(ctx, "closed"), begins);
  }

  private static int whole(Context ctx, String name, int otherwise) {
    String written = Form.text(ctx, name);
    return written.isEmpty() ? otherwise : Form.whole(name, written);
  }

  private static double number(Context ctx, String name, double otherwise) {
    String written = Form.text(ctx, name);
    return written.isEmpty() ? otherwise : Form.number(name, written);
  }
}
